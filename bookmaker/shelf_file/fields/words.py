"""Field types of the shelf file that are words: titles, names, yes and no, colours; and how a value is refused."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field, WithJsonSchema
from pydantic_core import PydanticCustomError

from ...ground.colours.plain_names import PLAIN_NAMES
from ...ground.drawing import Colour
from ...ground.ids import LONGEST, slug
from ...ground.problems import near_match
from ...ground.quantities import show
from ...ground.typefaces.names import BUNDLED
from ...ground.visible import is_seen
from .entry import Names, NamesFile

__all__ = [
    "ByName",
    "CaptionsFile",
    "DoneSteps",
    "Flag",
    "Ink",
    "Lines",
    "PdfFile",
    "PictureFile",
    "PictureFolder",
    "ProfileFile",
    "SpaceName",
    "StockName",
    "StockNames",
    "SurfaceName",
    "Text",
    "TextFile",
    "ThingId",
    "Title",
    "TypefaceName",
    "read_text",
    "read_title",
    "refuse",
]

LONGEST_TITLE = 300
LONGEST_LINES, MOST_LINES = 1000, 30
"""Characters and lines of a text that stands on a page of its own."""

JOINERS = "\u200c\u200d\u200e\u200f\u00ad"
"""Invisible signs that belong to writing: joiners, direction marks, the soft hyphen."""


def refuse(
    message: str, remedy: str, limit: str = "", instead: Mapping[str, object] | None = None
) -> PydanticCustomError:
    """The error a field type raises; `remedy` says what to write instead.

    Where the keys of a group do not go together, `instead` says with which the rest can be read all the same, so
    that what else is wrong can be told too; a key that is None is left out.
    """
    said = {"message": message, "remedy": remedy, "limit": limit, "instead": instead}
    return PydanticCustomError("maker", "{message}", said)


def read_text(value: object, instead: str = "") -> str:
    """One value as text; a list or mapping in its place is refused, with what may be written `instead`."""
    if isinstance(value, str):
        return value
    if value is None:
        raise refuse("is empty", "write a value or leave the line out")
    if isinstance(value, (int, float)):
        return str(value)
    form = "a list" if isinstance(value, (list, tuple)) else "a group of keys"
    raise refuse(f"is {form} where one value belongs", f"write one value on the line{instead}")


def read_title(value: object) -> str:
    """Some visible text, white space tidied."""
    return _visible(" ".join(_read_words(value).split()), LONGEST_TITLE)


def _read_words(value: object) -> str:
    """One value as text that may hold any sign: between quotation marks, where it begins with a bracket."""
    match value:
        case [str() as word]:
            return read_text(value, f'; or, if it is a text, put it in quotes: "[{show(word)}]"')
        case {**keys} if [*keys.values()] == [None]:
            return read_text(value, f'; or, if it is a text, put it in quotes: "{{{show(str(*keys))}}}"')
    return read_text(value)


def _read_lines(value: object) -> str:
    lines = [" ".join(line.split()) for line in _read_words(value).strip().split("\n")]
    if len(lines) > MOST_LINES:
        raise refuse(f"has {len(lines)} lines", f"write at most {MOST_LINES}", f"{MOST_LINES} lines")
    _visible(" ".join(lines), LONGEST_LINES)
    return "\n".join(lines)


def _visible(text: str, longest: int) -> str:
    """The text, if it has letters, not too many of them, and nothing that cannot be seen."""
    _check_seen(text, "write at least one letter")
    if len(text) > longest:
        raise refuse(f"has {len(text)} characters", f"write at most {longest}", f"{longest} characters")
    hidden = next((sign for sign in text if not sign.isprintable() and sign not in JOINERS), "")
    if hidden:
        raise refuse(f"holds the control character U+{ord(hidden):04X}", "write visible letters only")
    return text


def _check_seen(text: str, remedy: str) -> None:
    if not text.strip():
        raise refuse("is empty", remedy)
    if not is_seen(text):
        raise refuse("holds nothing that can be seen", remedy)


def _read_written(value: object) -> str:
    text = _read_words(value)
    _check_seen(text, "write a value or leave the line out")
    return text


def _read_names(value: object) -> object:
    if isinstance(value, dict) and not all(is_seen(str(name)) for name in value):
        raise refuse("has a name in which nothing can be seen", "write names of at least one letter")
    return value


Text = Annotated[str, BeforeValidator(_read_written)]
"""One value, not empty, kept as it was written."""

Title = Annotated[str, BeforeValidator(read_title)]
"""A title or a name: some visible text, at most 300 characters, white space tidied."""

Lines = Annotated[str, BeforeValidator(_read_lines)]
"""A few lines of visible text; where they end is kept, other white space is tidied."""


def _read_id(value: object) -> str:
    text = _read_written(value)
    if text != slug(text) or len(text) > LONGEST:
        meant = slug(text)[:LONGEST].rstrip("-")
        raise refuse(f"{show(text)} is not an id", f"write small letters and digits joined by hyphens, such as {meant}")
    return text


ThingId = Annotated[str, BeforeValidator(_read_id), WithJsonSchema({"type": "string", "examples": ["harbour-atlas"]})]
"""What a thing goes by: small letters and digits of any script, joined by hyphens."""

StockName = Annotated[str, BeforeValidator(_read_written), Names("stock")]
"""The name of a stock, as under ``stocks``."""


def _read_stock_names(value: object) -> tuple[str, ...]:
    names = value if isinstance(value, (list, tuple)) else (value,)
    return tuple(_read_written(name) for name in names)


StockNames = Annotated[
    tuple[str, ...],
    BeforeValidator(_read_stock_names),
    Names("stock"),
    WithJsonSchema({"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}),
]
"""One or several of them."""

SpaceName = Annotated[str, BeforeValidator(_read_written), Names("space")]
"""The name of a space, as under ``spaces``."""

SurfaceName = Annotated[str, BeforeValidator(_read_written), Names("surface")]
"""The name of a surface of the room, as under ``surfaces``."""

TextFile = Annotated[str, BeforeValidator(_read_written), NamesFile("text")]
"""The path of a text."""

CaptionsFile = Annotated[str, BeforeValidator(_read_written), NamesFile("captions")]
"""The path of a text with captions, or a word that stands for others."""

PictureFile = Annotated[str, BeforeValidator(_read_written), NamesFile("picture")]
"""The path of a picture."""

PictureFolder = Annotated[str, BeforeValidator(_read_written), NamesFile("folder")]
"""The path of a folder of pictures."""

PdfFile = Annotated[str, BeforeValidator(_read_written), NamesFile("PDF")]
"""The path of a PDF."""

TypefaceName = Annotated[str, BeforeValidator(_read_written), NamesFile("font"), Field(examples=[*BUNDLED])]
"""The name of a bundled typeface, or the path of a font file."""

ProfileFile = Annotated[str, BeforeValidator(_read_written), NamesFile("profile")]
"""The path of a printer's profile."""

ByName = BeforeValidator(_read_names)
"""Marks a group whose keys are names that the maker gives."""


def _read_flag(value: object) -> bool:
    text = read_text(value).strip().casefold()
    if text in {"yes", "true", "on"}:
        return True
    if text in {"no", "false", "off"}:
        return False
    raise refuse(f"{show(text)} is neither yes nor no", "write yes or no")


Flag = Annotated[bool, BeforeValidator(_read_flag), WithJsonSchema({"type": "boolean"})]
"""Yes or no."""


DONE = ("printed", "cut", "measured")


def _read_done(value: object) -> tuple[str, ...]:
    """One or several, in a list or between commas."""
    said = value if isinstance(value, (list, tuple)) else read_text(value).split(",")
    steps = tuple(dict.fromkeys(read_text(one).strip().casefold() for one in said))
    unknown = next((one for one in steps if one not in DONE), None)
    if unknown is not None:
        raise refuse(f"{show(unknown)} cannot be ticked off", f"write some of {', '.join(DONE)}")
    return steps


DoneSteps = Annotated[
    tuple[str, ...],
    BeforeValidator(_read_done),
    WithJsonSchema({"anyOf": [{"enum": [*DONE]}, {"type": "array", "items": {"enum": [*DONE]}}]}),
]
"""What is done of a thing."""


def _read_ink(value: object) -> Colour:
    if isinstance(value, Colour):
        return value
    try:
        return Colour.from_hex(read_text(value).strip())
    except ValueError:
        written = show(str(value))
        straight = "straight quotes" if set(written) & set("“”„‘’«»") else "quotes"
        words = (written, written.split()[-1] if written.split() else "")
        meant = next((PLAIN_NAMES[name] for word in words if (name := near_match(word, PLAIN_NAMES))), "")
        remedy = "write " + (f'"{meant}" for it' if meant else 'red, green and blue as "#7a1f2b"') + f", in {straight}"
        raise refuse(f"{written} is not a colour", f"{remedy}; bookmaker manual colours lists more") from None


Ink = Annotated[
    Colour, BeforeValidator(_read_ink), WithJsonSchema({"type": "string", "pattern": "^#[0-9a-fA-F]{3,6}$"})
]
"""A colour, written ``"#rrggbb"``."""
