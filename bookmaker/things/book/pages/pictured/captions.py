"""Captions of pictures: from the names of their files, or from a text file with one line for each."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NoReturn

from .....ground.files import Wanted, read_file
from .....ground.problems import Problem, Severity, ShelfFileError
from .....ground.typefaces import Typeface
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for, listed
from .....typesetting.lines.fount import Style
from .....typesetting.page import PageFrame

__all__ = ["caption_face", "captions_of", "letters_missing"]

FROM_NAMES = "names"

A_FILE = "the path of a text file with one line for each picture"

CAPTIONS = Wanted(
    "file of captions",
    1_000_000,  # two thousand captions of a page each
    "write one line for each picture",
    instead=f"write names, or {A_FILE}",
    elsewhere=f"write names, or {A_FILE}",
)


def captions_of(wanted: str | None, stems: Sequence[str], folder: Path) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """A caption for each picture, and what is to be said of them; none at all if none are wanted.

    Raises:
        ShelfFileError: the file of captions cannot be used.
    """
    if wanted is None:
        return (), ()
    if wanted.strip() == FROM_NAMES:
        return tuple(map(_spoken, stems)), ()
    written = _lines(folder / wanted, wanted)
    captions = [*written[: len(stems)], *[""] * (len(stems) - len(written))]
    return tuple(captions), tuple(_count(wanted, len(written), len(stems)))


def caption_face(own: Family | None, frame: PageFrame, captions: Sequence[str]) -> Typeface:
    """What captions are set in: typefaces of their own, or those of the text; in italic, if that has their letters."""
    words = "".join(captions)
    family = family_for(own, frame, words)
    slanted = family.get(Style.ITALIC)
    return family[Style.ROMAN] if slanted is None or slanted.missing(words) else slanted


def letters_missing(face: Typeface, captions: Sequence[str], remedy: str) -> Iterator[Problem]:
    """An error that names the letters of captions which their typeface does not have."""
    missing = face.missing("".join(captions))
    if missing:
        told = f"the typeface of captions, {face.name}, has no glyph for {listed(missing)}"
        yield Problem(told, remedy, field=("captions",))


def _spoken(stem: str) -> str:
    """The name of a picture as people say it, without the number that settles its order.

    >>> _spoken("03 - the_skerry_at dusk")
    'the skerry at dusk'
    """
    return " ".join(re.sub(r"^[\d\s._-]+", "", stem).replace("_", " ").split())


def _lines(path: Path, written: str) -> list[str]:
    """The lines of a text file, without empty ones at its end."""
    try:
        text = read_file(path, CAPTIONS, written, ("captions",)).data.decode("utf-8-sig")
    except UnicodeDecodeError:
        _refuse(f"{path.name} is not plain text in UTF-8", "save it as plain text in UTF-8")
    visible = ("".join(sign if sign.isprintable() else " " for sign in line) for line in text.splitlines())
    lines = [" ".join(line.split()) for line in visible]
    while lines and not lines[-1]:
        lines.pop()
    return lines


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("captions",)),))


def _count(name: str, lines: int, pictures: int) -> Iterator[Problem]:
    if lines != pictures:
        what = "line" if lines == 1 else "lines"
        yield Problem(
            f"{name} has {lines} {what} for {pictures} {'picture' if pictures == 1 else 'pictures'}",
            "write one line for each picture, in the order of their names; leave a line empty for no caption",
            Severity.WARNING,
            field=("captions",),
        )
