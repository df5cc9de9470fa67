"""Files of typefaces: those that come with bookmaker in ``fonts/``, and the maker's own."""

from __future__ import annotations

import copyreg
import io
import logging
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from typing import NoReturn

from fontTools.ttLib import TTFont

from ..demands import demand, unsummed
from ..files import SourceFile, Wanted, read_file
from ..problems import Problem, ShelfFileError
from ..quantities import show
from .names import BUNDLED, meant_face
from .soundness import UnsoundFontError, look_over
from .trial import BLANKLESS, USELESS, try_out
from .typeface import FETCH_AGAIN, Typeface

__all__ = ["bundled", "load_typeface"]

# What fontTools remarks about odd font files is no message for makers: a file is usable or refused.
logging.getLogger("fontTools").addHandler(logging.NullHandler())

FONT = Wanted(
    "font file",
    64_000_000,  # the largest with all signs of Chinese have half of it
    "choose a TTF or OTF file of one style",
    instead="write the name of one TTF or OTF file",
)


EMBEDDING_FORBIDDEN = 0x0002
"""The `fsType` value of a typeface that may not be embedded (OpenType, OS/2 table)."""


def load_typeface(path: Path, written: str = "") -> Typeface:
    """Read a font file; `written` is its path as the shelf file has it. It is looked over and tried out first.

    Raises:
        ShelfFileError: the file cannot be read, or is no sound TrueType or OpenType font with outlines.
    """
    file = read_file(path, FONT, written)
    if _fonts_folder() not in path.parents:  # those are known
        demand("fonts", key=file.digest, name=path.name)
        _try(file)
    return _typeface_of(file)


@lru_cache(maxsize=64)
def _try(file: SourceFile) -> None:
    """Look a font of the maker's over, and let another process use it first."""
    _check_format(file.path, file.data)
    try:
        look_over(file.data)
        with _tables(file):
            pass  # whoever may not be printed need not be tried
        try_out(file.data)
    except UnsoundFontError as found:
        remedy = "choose another typeface" if str(found) in (BLANKLESS, USELESS) else FETCH_AGAIN
        _refuse(f"{file.path.name} {found}", remedy)


@lru_cache(maxsize=64)
def _typeface_of(file: SourceFile) -> Typeface:
    path, data = file.path, file.data
    _check_format(path, data)
    with _tables(file) as tables:
        return Typeface(path, data, tables)


@contextmanager
def _tables(file: SourceFile) -> Iterator[TTFont]:
    """The tables of a font that can be printed; whatever goes wrong with them inside the block is a refusal."""
    path, data = file.path, file.data
    try:
        tables = TTFont(io.BytesIO(data), lazy=True)
        if any(table.offset + table.length > len(data) for table in tables.reader.tables.values()):
            _refuse(f"{path.name} is damaged", FETCH_AGAIN)  # cut short; else it would be found when it is printed
        if "glyf" not in tables and "CFF " not in tables:
            _refuse(f"{path.name} has no outlines to print", "choose a TTF or OTF file with outlines")
        if "OS/2" in tables and tables["OS/2"].fsType & 0x000F == EMBEDDING_FORBIDDEN:
            _refuse(f"{path.name} may not be embedded in a PDF", "choose a typeface whose licence allows it")
        yield tables
    except ShelfFileError:
        raise
    except Exception:  # a damaged file can make the tables' readers raise anything
        _refuse(f"{path.name} is damaged", FETCH_AGAIN)


def _check_format(path: Path, data: bytes) -> None:
    """Refuse what is not a single TrueType or OpenType font, by its first four bytes."""
    start = data[:4]
    if start == b"ttcf":
        _refuse(f"{path.name} is a collection of fonts", "choose a file that holds one font, TTF or OTF")
    if start in (b"wOFF", b"wOF2"):
        _refuse(f"{path.name} is a font for web pages", "choose the same typeface as a TTF or OTF file")
    if start not in (b"\0\1\0\0", b"true", b"OTTO"):
        _refuse(f"{path.name} is not a font file", "choose a TTF or OTF file")


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy),))


@lru_cache(maxsize=len(BUNDLED))
def bundled(name: str) -> Typeface:
    """One of the typefaces that come with bookmaker, by what it is for: "text", "sans bold", …

    Raises:
        ShelfFileError: there is no typeface of that name.
    """
    if name not in BUNDLED:
        _refuse(f"{show(name)!r} is not a typeface of bookmaker", meant_face(name))
    with unsummed():
        return load_typeface(_fonts_folder() / BUNDLED[name])


def _fonts_folder() -> Path:
    """Inside the package where it is installed, beside it in a checkout."""
    package = Path(__file__).parents[2]
    inside = package / "fonts"
    return inside if inside.is_dir() else package.parent / "fonts"


def _by_its_path(typeface: Typeface) -> tuple[Callable[[Path], Typeface], tuple[Path]]:
    return load_typeface, (typeface.path,)


# The same file is the same object wherever it is loaded in a process; pickled, it travels by its path.
copyreg.pickle(Typeface, _by_its_path)
