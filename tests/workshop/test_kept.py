"""A workshop that remembers answers as a fresh one does, whatever was edited in between, to the byte."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Mapping
from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker import make
from bookmaker.ground.problems import ShelfFileError
from bookmaker.typesetting.standing_type import StandingType
from bookmaker.workshop import Checked, Workshop
from bookmaker.writers.plan_json import check_report, dump
from tests.kit.recording import record

DEMO = Path(__file__).parents[2] / "demo"

HEAD = """\
shelf: The Ferry Office
stocks:
  page: {caliper: 90 um, grain: long}
  cover: {caliper: 160 um, grain: long}
  board: {caliper: 0.5 mm}
spaces:
  wall: {width: 60 mm, height: 30 mm, depth: 20 mm}
slipcases:
  set: {stock: cover, books: [Tolls, Tides]}
books:
"""

SIZES = {"small": "{height: 20 mm, width: 14 mm}", "large": "{height: 22 mm, width: 15 mm}"}


def book(title: str, size: str, block: str, more: str) -> str:
    """A book on one line of the list."""
    cover = "cover: {kind: wrap, stock: cover}"
    return f"  - {{title: {title}, size: {SIZES[size]}, space: wall, block: {{{block}}}, {cover}, {more}}}\n"


BOOKS = {
    "Tolls": book("Tolls", "small", "kind: accordion, stock: page, pages: 16", "inside: {kind: ruled}"),
    "Tides": book("Tides", "small", "kind: leaves, stock: page", "inside: {kind: text, file: tides.txt, size: 2.4 pt}"),
    "Rope": book("Rope", "large", "kind: dummy, thickness: fill", "design: {style: cloth}"),
    "Buoys": book("Buoys", "large", "kind: accordion, stock: page, pages: 24", "design: {colour: '#336699'}"),
}

TEXT = "The ferry waits for nobody. It goes when the bell has rung twice, and the bell is never late.\n\n"


class Desk:
    """A shelf in a folder, and the edits that a maker may make in it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.books = dict(BOOKS)
        self.text = TEXT * 6
        self.save()

    @property
    def path(self) -> Path:
        """The shelf file."""
        return self.folder / "shelf.yaml"

    def save(self, broken: str = "") -> None:
        """Everything as it is now."""
        self.path.write_text(HEAD + "".join(self.books.values()) + broken, encoding="utf-8")
        (self.folder / "tides.txt").write_text(self.text, encoding="utf-8")

    def edit(self, kind: str, chance: Random) -> None:
        """One edit of a kind."""
        names = [*self.books]
        one, other = chance.choice(names), chance.choice(names)
        if kind == "retitle":
            word = chance.choice(["Rigging", "Ледоход", "Sails and Oars"])
            self.books["Buoys"] = BOOKS["Buoys"].replace("title: Buoys", f"title: {word}")
        elif kind == "pages":
            self.books["Tolls"] = BOOKS["Tolls"].replace("16}", f"{chance.choice([16, 20, 32])}}}")
        elif kind == "colour":
            self.books["Buoys"] = BOOKS["Buoys"].replace("336699", f"{chance.randrange(0x1000000):06x}")
        elif kind == "swap":
            names[names.index(one)], names[names.index(other)] = other, one
            self.books = {name: self.books[name] for name in dict.fromkeys(names)}
        elif kind == "text":
            self.text += TEXT * chance.randint(1, 3)
        elif kind == "remove" and len(names) > 3 and "Rope" in names:
            del self.books["Rope"]
        elif kind == "insert":
            self.books = {"Rope": BOOKS["Rope"], **self.books}
        self.save("  - [\n" if kind == "break" else "")


EDITS = ("retitle", "pages", "colour", "swap", "text", "remove", "insert", "break", "mend")


def answer(ask: Callable[[], object]) -> str:
    """What comes of asking: nothing, or the words of a refusal."""
    try:
        ask()
    except ShelfFileError as refusal:
        return str(refusal)
    return ""


def files_in(folder: Path) -> Mapping[str, bytes]:
    """All files of a folder by name."""
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


@given(st.lists(st.sampled_from(EDITS), min_size=2, max_size=5), st.integers(0, 10**6))
@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_after_any_edits_files_are_the_bytes_of_a_fresh_run(
    tmp_path_factory: pytest.TempPathFactory, edits: list[str], seed: int
) -> None:
    folder, chance = tmp_path_factory.mktemp("desk"), Random(seed)
    desk, kept = Desk(folder), Workshop()
    kept.check(desk.path)
    for edit in edits:
        desk.edit(edit, chance)
        warm = answer(lambda: kept.make(desk.path, folder / "warm"))
        with StandingType().used():
            cold = answer(lambda: make(desk.path, folder / "cold"))
        assert warm == cold
        assert files_in(folder / "warm") == files_in(folder / "cold") if not warm else True


def drawn(checked: Checked) -> object:
    """Everything that an answer says: numbers, problems, and what is drawn for every piece."""
    art = {
        piece.id: [record(side).marks for side in (piece.art, piece.reverse)]
        for draft in checked.drafts.values()
        for piece in draft.pieces
    }
    return dump(check_report(checked)), [str(problem) for problem in checked.problems], art


def test_edits_of_the_demo_answer_as_a_fresh_run(tmp_path: Path) -> None:
    shutil.copytree(DEMO, tmp_path / "demo")
    path = tmp_path / "demo" / "shelf.yaml"
    kept, chance = Workshop(), Random(3)
    before = kept.check(path)
    lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
    titles = [number for number, line in enumerate(lines) if line.startswith("  - title: ")]
    for _ in range(2):
        number = chance.choice(titles)
        lines[number] = lines[number].rstrip("\n") + " Revisited\n"
        path.write_text("".join(lines), encoding="utf-8")
        warm = kept.check(path)
        with StandingType().used():
            assert drawn(warm) == drawn(Workshop().check(path))
    same = [id for id in before.drafts if warm.drafts.get(id) is before.drafts[id]]
    assert len(same) >= len(before.drafts) - 12, "only what changed, and neighbours, is drawn again"


def test_edits_of_papers_boxes_and_frames_answer_as_a_fresh_run(tmp_path: Path) -> None:
    shutil.copytree(DEMO, tmp_path / "demo")
    path, letter = tmp_path / "demo" / "reading-room.yaml", tmp_path / "demo" / "texts" / "letter-from-the-light.txt"
    kept = Workshop()
    before = kept.check(path)
    letter.write_text(letter.read_text(encoding="utf-8").replace("heron", "gull"), encoding="utf-8")
    text = path.read_text(encoding="utf-8").replace("Boat Late", "Boat Lost").replace("Flor de Gannow", "Fumo")
    path.write_text(text.replace("profile: beaded", "profile: hollow"), encoding="utf-8")
    warm = kept.check(path)
    with StandingType().used():
        assert drawn(warm) == drawn(Workshop().check(path))
    changed = {id for id, draft in warm.drafts.items() if draft is not before.drafts[id]}
    assert changed == {"from-orrin", "to-maud", "gazette", "cigars", "storm"}


def test_what_did_not_change_is_not_made_again(tmp_path: Path) -> None:
    desk, kept = Desk(tmp_path), Workshop()
    first, second = kept.check(desk.path), kept.check(desk.path)
    assert all(second.drafts[id] is draft for id, draft in first.drafts.items())
    desk.edit("text", Random(1))
    third = kept.check(desk.path)
    changed = {id for id, draft in third.drafts.items() if draft is not first.drafts[id]}
    assert "tides" in changed
    assert not {"tolls", "buoys"} & changed


def test_a_file_that_comes_back_is_read_again(tmp_path: Path) -> None:
    desk, kept = Desk(tmp_path), Workshop()
    kept.check(desk.path)
    (tmp_path / "tides.txt").unlink()
    assert "tides.txt" in answer(lambda: kept.check(desk.path))
    desk.save()
    assert kept.check(desk.path).sound
