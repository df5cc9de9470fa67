"""The text of a book as its author left it: a plain text file, read and tidied.

Paragraphs are separated by blank lines; line ends inside them are spaces.
"""

from __future__ import annotations

import codecs
import re
import stat
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn

from ..errors import Problem, Severity, ShelfFileError
from ..typefaces import Typeface

__all__ = ["LARGEST_FILE", "Manuscript", "read_manuscript"]

LARGEST_FILE = 20_000_000
"""Bytes; three million words, far more than any book here can hold."""

MOST_NAMED = 5
"""So many missing characters are named one by one."""

NO_BREAK_SPACES = "\u00a0\u2007\u202f"
"""White space at which no line may end."""

BOUND_WORD = re.compile(rf"[\S{NO_BREAK_SPACES}]+")

JOINERS = "\u200c\u200d"
"""Invisible characters that shape the letters around them; all other invisible ones are left out."""

SAVE_AS_TEXT = "save it as plain text in UTF-8"


@dataclass(frozen=True, slots=True)
class Manuscript:
    """A text ready to be set.

    In `text` words are parted by single spaces and paragraphs by line feeds; nothing else is white space
    but no-break spaces. `problems` are those that do not keep it from being set.
    """

    name: str
    text: str
    problems: tuple[Problem, ...] = ()

    @property
    def words(self) -> int:
        """How many words it has."""
        return self.text.count(" ") + self.text.count("\n") + 1


def read_manuscript(path: Path, typeface: Typeface | None = None) -> Manuscript:
    """Read a text file; one that is to be set in a typeface is checked for letters which that does not have.

    Raises:
        ShelfFileError: the file is missing, not plain text in UTF-8, empty, too large, or in a script that
            is read from right to left.
    """
    name = path.name
    raw = _decoded(name, _bytes(path)).replace("\r\n", "\n").replace("\r", "\n")
    if "\0" in raw:
        _refuse(f"{name} has a null byte in line {_line_of(raw, chr(0))}: it is not plain text", SAVE_AS_TEXT)
    raw = unicodedata.normalize("NFC", raw)
    kept, notes = _without_hidden(name, raw)
    text = "\n".join(_paragraphs(kept))
    if not text:
        _refuse(f"{name} has no words in it", "write a text into it, or choose kind: blank")
    signs = _signs(kept, raw)
    backwards = next((sign for sign in signs if unicodedata.bidirectional(sign) in {"R", "AL"}), None)
    if backwards:
        _refuse(
            f"{name} has letters read from right to left ({_named(backwards, raw)}), which cannot be set yet",
            "give these pages as pictures",
        )
    missing = typeface.missing("".join(signs)) if typeface else []
    return Manuscript(name, text, (*notes, *_missing_glyphs(name, missing, raw, typeface)))


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("file",)),))


def _bytes(path: Path) -> bytes:
    name = path.name
    try:
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            _refuse(f"{name} is a folder, not a text", "write the name of one text file")
        if not stat.S_ISREG(status.st_mode):
            _refuse(f"{name} is not a file", "write the name of a text file")
        if status.st_size > LARGEST_FILE:
            _refuse(
                f"{name} has {status.st_size / 1e6:.1f} MB, more than {LARGEST_FILE / 1e6:.0f} MB",
                "split it into volumes, one book each",
            )
        return path.read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        _refuse(f"there is no text {name}", "write its path as seen from the folder of the shelf file")
    except (OSError, ValueError) as failure:
        reason = getattr(failure, "strerror", None) or failure
        _refuse(f"{name} cannot be read ({reason})", "allow reading it, or copy it beside the shelf file")


def _decoded(name: str, data: bytes) -> str:
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        _refuse(f"{name} is saved as UTF-16", SAVE_AS_TEXT)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as failure:
        line = data.count(b"\n", 0, failure.start) + 1
        _refuse(
            f"{name} is not UTF-8: byte {failure.start + 1} (line {line}) is 0x{data[failure.start]:02X}",
            SAVE_AS_TEXT,
        )


def _without_hidden(name: str, text: str) -> tuple[str, list[Problem]]:
    """The text without control and other invisible characters, and what to say of those."""
    hidden = {sign for sign in set(text) - set(JOINERS) if unicodedata.category(sign) in {"Cc", "Cf"}}
    spaces = {sign for sign in hidden if sign.isspace()}
    control = {sign for sign in hidden - spaces if unicodedata.category(sign) == "Cc"}
    kept = text.translate({ord(sign): None for sign in hidden - spaces})
    notes = []
    if "\t" in spaces:
        notes.append(Problem(f"{name} has tabs, set as spaces", severity=Severity.NOTE, field=("file",)))
    if control:
        first = min(control, key=text.index)
        count = sum(text.count(sign) for sign in control)
        said = f"{name} has {count} control {'characters' if count > 1 else 'character'}, left out"
        where = f"the first is U+{ord(first):04X} in line {_line_of(text, first)}"
        notes.append(Problem(f"{said}; {where}", severity=Severity.WARNING, field=("file",)))
    return kept, notes


def _line_of(text: str, sign: str) -> int:
    return text.count("\n", 0, text.index(sign)) + 1


def _paragraphs(text: str) -> Iterator[str]:
    """Each paragraph with its words parted by single spaces."""
    # str.split is fast, but parts words at no-break spaces too
    words_of = _bound_words if any(space in text for space in NO_BREAK_SPACES) else str.split
    words: list[str] = []
    for line in (*text.split("\n"), ""):
        found = words_of(line)
        if found:
            words += found
        elif words:
            yield " ".join(words)
            words = []


def _bound_words(line: str) -> list[str]:
    return [word for word in BOUND_WORD.findall(line) if not word.isspace()]


def _signs(text: str, raw: str) -> list[str]:
    """The visible characters of a text, in the order in which they first appear."""
    return sorted((sign for sign in set(text) if not sign.isspace() and sign not in JOINERS), key=raw.index)


def _named(sign: str, raw: str) -> str:
    return f"{sign} U+{ord(sign):04X}, line {_line_of(raw, sign)}"


def _missing_glyphs(name: str, missing: list[str], raw: str, typeface: Typeface | None) -> Iterator[Problem]:
    if not missing or typeface is None:
        return
    named = [_named(sign, raw) for sign in missing[:MOST_NAMED]]
    if len(missing) > MOST_NAMED:
        named.append(f"and {len(missing) - MOST_NAMED} more")
    yield Problem(
        f"{name}: the typeface {typeface.name} has no glyph for " + "; ".join(named),
        "write face: with the path of a typeface that has them, or write the text without them",
        field=("file",),
    )
