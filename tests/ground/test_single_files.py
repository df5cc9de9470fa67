"""Single files, such as the ruler page and a profile: whole or not at all, and never over what is the maker's."""

from __future__ import annotations

import errno
import io
import os
from contextlib import suppress
from pathlib import Path

import pypdf
import pytest

from bookmaker.ground.output import check_replaceable, new_files, put_file
from bookmaker.ground.output.seals import UNSEALED, has_seal, is_sealed, sealed, with_seal
from bookmaker.ground.problems import OutputError
from bookmaker.paper.papers import find_format
from bookmaker.ruler import write_ruler
from tests.kit.output_runs import contents
from tests.kit.special_files import NO_FILES, lay
from tests.kit.stops import Killed, stopped

PROFILE = b"# Printer profile\nname: inkjet\n"


@pytest.fixture(scope="module")
def page() -> bytes:
    written = io.BytesIO()
    write_ruler(written, find_format("A4"))
    return written.getvalue()


def refusal(target: Path, data: bytes = PROFILE) -> str:
    with pytest.raises(OutputError) as caught:
        put_file(target, data)
    return str(caught.value)


def test_a_sealed_pdf_is_as_good_as_before(page: bytes) -> None:
    with_it = with_seal(page)
    assert is_sealed(with_it)
    assert len(with_it) - len(page) == len("\n% bookmaker seal ") + 64
    plain, marked = pypdf.PdfReader(io.BytesIO(page)), pypdf.PdfReader(io.BytesIO(with_it), strict=True)
    assert [one.get_contents() for one in plain.pages] == [one.get_contents() for one in marked.pages]


@pytest.mark.parametrize("at", [0, 100, -200, -90, -70, -3])
def test_a_seal_breaks_with_any_byte(page: bytes, at: int) -> None:
    whole = bytearray(with_seal(page))
    whole[at] ^= 1
    assert not is_sealed(bytes(whole))
    assert not is_sealed(with_seal(page) + b"\n")


def test_a_file_that_speaks_of_seals_has_none() -> None:
    said = f"# bookmaker seal {UNSEALED}\n".encode()
    assert has_seal(said)
    assert not is_sealed(said)
    assert is_sealed(sealed(said))


def test_a_file_is_written_with_its_parents_and_replaced(tmp_path: Path) -> None:
    target = tmp_path / "new" / "inkjet.yaml"
    put_file(target, PROFILE)
    put_file(target, PROFILE + b"sheet: A4\n")
    assert contents(tmp_path) == {"new": b"", "new/inkjet.yaml": with_seal(PROFILE + b"sheet: A4\n")}


@pytest.mark.parametrize(("mask", "rights"), [(0o022, 0o644), (0o077, 0o600)])
def test_a_file_has_the_rights_that_new_files_get(tmp_path: Path, mask: int, rights: int) -> None:
    before = os.umask(mask)
    try:
        put_file(tmp_path / "a.yaml", PROFILE)
    finally:
        os.umask(before)
    assert (tmp_path / "a.yaml").stat().st_mode & 0o7777 == rights


def test_what_is_the_makers_is_not_replaced(tmp_path: Path, page: bytes) -> None:
    lost = "name another file: this one would be lost"
    target = tmp_path / "mine.yaml"
    target.write_bytes(b"shelf: Mine\n")
    assert refusal(target) == f"{target} is not a file that bookmaker wrote; {lost}"
    target.write_bytes(PROFILE)
    assert refusal(target) == f"{target} is not a file that bookmaker wrote; {lost}"
    target.write_bytes(with_seal(PROFILE).replace(b"inkjet", b"laser"))
    assert refusal(target) == f"{target} was changed since bookmaker wrote it; {lost}"
    target.write_bytes(with_seal(PROFILE))
    assert refusal(target, page) == f"{target} is a file of another sort; {lost}"
    target.chmod(0o444)
    assert refusal(target) == f"{target} is write-protected; allow writing to it, or name another file"
    assert contents(tmp_path) == {"mine.yaml": with_seal(PROFILE)}


@pytest.mark.parametrize("what", NO_FILES)
def test_what_is_no_file_is_not_replaced_and_nothing_followed(tmp_path: Path, what: str) -> None:
    target = tmp_path / "ruler.pdf"
    lay(what, target)
    before = [(path.name, path.lstat().st_mode) for path in sorted(tmp_path.iterdir())]
    told = "is a link, which is not followed; name the file itself, or another one"
    if not target.is_symlink():
        told = f"is {what}, not a file that bookmaker wrote; name a file to write"
    assert refusal(target).endswith(told)
    assert [(path.name, path.lstat().st_mode) for path in sorted(tmp_path.iterdir())] == before


def test_a_link_to_a_file_of_ours_is_not_followed(tmp_path: Path) -> None:
    put_file(tmp_path / "inkjet.yaml", PROFILE)
    (tmp_path / "link.yaml").symlink_to("inkjet.yaml")
    assert "is a link, which is not followed" in refusal(tmp_path / "link.yaml")


def test_a_file_of_the_maker_named_like_a_part_of_ours_stays(tmp_path: Path) -> None:
    for name in (".ruler.yaml.part", ".ruler.yaml", "ruler.yaml~"):
        (tmp_path / name).write_text("mine")
    put_file(tmp_path / "ruler.yaml", PROFILE)
    assert {name: data for name, data in contents(tmp_path).items() if data == b"mine"} == dict.fromkeys(
        (".ruler.yaml.part", ".ruler.yaml", "ruler.yaml~"), b"mine"
    )


@pytest.mark.parametrize("after", [False, True])
@pytest.mark.parametrize("trouble", [KeyboardInterrupt(), OSError(errno.ENOSPC, "No space left on device"), Killed()])
def test_a_stop_at_any_call_leaves_the_old_file_or_the_new(tmp_path: Path, trouble: BaseException, after: bool) -> None:
    with stopped() as watch:
        put_file(tmp_path / "counted" / "a.yaml", PROFILE)
    old, new = with_seal(PROFILE), with_seal(PROFILE + b"sheet: A4\n")
    for at in range(1, watch.count + 1):
        place = tmp_path / str(at)
        put_file(place / "a.yaml", PROFILE)
        with suppress(KeyboardInterrupt, Killed, OutputError), stopped(at, trouble, after=after):
            put_file(place / "a.yaml", PROFILE + b"sheet: A4\n")
        assert (place / "a.yaml").read_bytes() in {old, new}
        if isinstance(trouble, OSError) and not after:
            assert [path.name for path in place.iterdir()] == ["a.yaml"]


def test_a_refused_file_leaves_no_folder(tmp_path: Path) -> None:
    full = OSError(errno.ENOSPC, "No space left on device")
    with stopped() as watch:
        put_file(tmp_path / "counted" / "b" / "a.yaml", PROFILE)
    for at in range(1, watch.count + 1):
        with suppress(OutputError), stopped(at, full):
            put_file(tmp_path / "a" / "b" / "a.yaml", PROFILE)
            (tmp_path / "a" / "b" / "a.yaml").unlink()
            (tmp_path / "a" / "b").rmdir()
            (tmp_path / "a").rmdir()
    assert [path.name for path in tmp_path.iterdir()] == ["counted"]


def test_names_that_no_file_can_have(tmp_path: Path) -> None:
    for name in ("x" * 256, "a\0b", "file/a"):
        (tmp_path / "file").touch()
        assert "cannot be written" in refusal(tmp_path / name)
    assert contents(tmp_path) == {"file": b""}


def test_new_files_come_all_or_none_and_over_nothing(tmp_path: Path) -> None:
    files = {"a.yaml": b"one", "b.txt": b"two"}
    new_files(tmp_path / "x" / "y", files)
    assert contents(tmp_path / "x" / "y") == files
    with pytest.raises(OutputError, match="is not an empty folder; name a new one"):
        new_files(tmp_path / "x" / "y", files)
    with stopped() as watch:
        new_files(tmp_path / "counted", files)
    for at in range(1, watch.count + 1):
        with suppress(OutputError), stopped(at, OSError(errno.ENOSPC, "No space left on device")):
            new_files(tmp_path / str(at), files)
        assert contents(tmp_path / str(at)) == (files if (tmp_path / str(at)).exists() else {})


def test_a_target_that_is_free_may_be_written(tmp_path: Path) -> None:
    check_replaceable(tmp_path / "free", b"%PDF-")
    put_file(tmp_path / "taken", PROFILE)
    check_replaceable(tmp_path / "taken", PROFILE[:5])
