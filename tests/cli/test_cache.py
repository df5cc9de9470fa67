"""Set texts in the user's cache folder: found by the next run; the same bytes with and without, whatever is there."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from bookmaker.typesetting import standing_type
from bookmaker.typesetting.lines.paragraphs import Lines
from tests.kit.command_line import bookmaker
from tests.kit.output_runs import Tree, contents

SENTENCE = "The keeper trims the lamp *at dusk* and writes down the wind, the sea and the state of the sky. "

SHELF = """\
shelf: Long Evenings
stocks:
  page: {caliper: 75 um, grain: long}
  cover: {caliper: 160 um}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: cover}
books:
  - title: Fog
    block: {kind: accordion, stock: page}
    inside: {kind: text, file: fog.md, drop_capital: 2, running_heads: yes}
  - title: Rain
    block: {kind: accordion, stock: page, pages: 40}
    inside: {kind: text, file: rain.txt, size: fit}
"""


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder for caches, if the system asks the environment for it; even short texts are kept there."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr("platformdirs.user_cache_path", lambda *_, **__: tmp_path / "cache" / "bookmaker")
    monkeypatch.setattr(standing_type, "LONG", 10)
    return tmp_path / "cache"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    return write(tmp_path, 30)


def write(folder: Path, paragraphs: int) -> Path:
    """A shelf with two texts of so many paragraphs."""
    text = [f"{SENTENCE * (1 + number % 4)}{number}" for number in range(paragraphs)]
    (folder / "fog.md").write_text("\n\n".join(["# Fog", *text, "# More", *text]), encoding="utf-8")
    (folder / "rain.txt").write_text("\n\n".join(text).replace("*", ""), encoding="utf-8")
    (folder / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    return folder / "shelf.yaml"


def made(shelf: Path, name: str, *options: str) -> Tree:
    """What a run writes."""
    assert bookmaker("make", str(shelf), "--into", str(shelf.parent / name), *options).code == 0
    return contents(shelf.parent / name)


def kept(cache: Path) -> Tree:
    """What stands in the cache."""
    return {name: data for name, data in contents(cache).items() if name.endswith(".kept")}


def test_a_second_run_sets_nothing_and_writes_the_same(
    shelf: Path, cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    without = made(shelf, "without", "--no-cache")
    assert not cache.exists()
    first = made(shelf, "first")
    found = kept(cache)
    texts = [value for value in found.values() if value.partition(b"\n")[2].startswith(b"{")]
    assert (len(texts), len(found) > len(texts)) == (2, True)  # the others are extents and sizes
    set_anew: list[str] = []
    broken = Lines.broken

    def told(self: Lines, words: list[str], *rest: object) -> object:
        set_anew.append(" ".join(words))
        return broken(self, words, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(Lines, "broken", told)
    again = made(shelf, "again")
    assert set_anew == []
    assert without == first == again
    assert kept(cache) == found
    made(shelf, "anew", "--no-cache")
    assert set_anew


def test_what_is_broken_or_foreign_in_the_cache_is_set_anew(shelf: Path, cache: Path) -> None:
    without, first = made(shelf, "without", "--no-cache"), made(shelf, "first")
    files = sorted(cache.rglob("*.kept"))
    for number, file in enumerate(files):
        file.write_bytes([file.read_bytes()[:-7], b"", b"\x80\x04nobody", file.read_bytes() + b" "][number % 4])
    assert without == first == made(shelf, "again")
    assert sorted(cache.rglob("*.kept")) == files


def test_a_sound_file_of_another_form_is_set_anew(shelf: Path, cache: Path) -> None:
    """Whoever knows the checksum can write what he likes: it must still have the form of a set text."""
    from bookmaker.ground.kept.disk import KeptOnDisk

    without, _ = made(shelf, "without", "--no-cache"), made(shelf, "first")
    for file in cache.rglob("*.kept"):
        KeptOnDisk(file.parent, 10**6).put(file.stem, b'{"a": [[["fog", null, 0, 1, 0]], [], []]}')
    assert without == made(shelf, "again")


def test_a_cache_that_cannot_be_written_is_done_without(shelf: Path, cache: Path) -> None:
    without = made(shelf, "without", "--no-cache")
    cache.write_text("in the way")
    assert without == made(shelf, "with")


def test_a_change_of_the_text_or_its_type_is_seen(shelf: Path, cache: Path) -> None:
    made(shelf, "first")
    text = shelf.parent / "fog.md"
    text.write_text(text.read_text().partition("# More")[0])
    assert made(shelf, "changed") == made(shelf, "fresh", "--no-cache")
    shelf.write_text(shelf.read_text().replace("drop_capital: 2", "drop_capital: 3, size: 2.4 pt"))
    assert made(shelf, "larger") == made(shelf, "fresh larger", "--no-cache")
    assert kept(cache)


def test_nothing_is_kept_without_a_home(shelf: Path, cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("platformdirs.user_cache_path", lambda *_, **__: Path("~/.cache/bookmaker"))
    monkeypatch.chdir(shelf.parent)
    made(shelf, "out")
    assert not (shelf.parent / "~").exists()
    assert not cache.exists()


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere the folder for caches is not named by the environment")
def test_two_runs_at_once_and_one_after_them_agree(tmp_path: Path) -> None:
    """Whole processes with the real threshold: a text of some 14 000 words."""
    shelf = write(tmp_path, 150)
    (tmp_path / "rain.txt").write_text(SENTENCE)
    environment = os.environ | {"XDG_CACHE_HOME": str(tmp_path / "cache")}

    def run(*options: str) -> subprocess.Popen[bytes]:
        command = [sys.executable, "-m", "bookmaker", "check", "--json", str(shelf), *options]
        return subprocess.Popen(command, env=environment, stdout=subprocess.PIPE)

    one, other = (process.communicate()[0] for process in (run(), run()))
    assert kept(tmp_path / "cache")
    assert one
    assert one == other == run().communicate()[0] == run("--no-cache").communicate()[0]
