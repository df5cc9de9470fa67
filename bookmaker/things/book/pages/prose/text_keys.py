"""What a maker may write about pages of text."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from .....ground.quantities import NotAMeasure, read_number, show, split_number, tidy
from .....ground.units import from_pt, print_pt
from .....shelf_file.fields.entry import Entry
from .....shelf_file.fields.measures import FIT, Margin, Tracking, TypeSize, TypeSizeOrFit
from .....shelf_file.fields.words import Flag, TextFile, Title, TypefaceName, read_text, refuse
from .....typesetting.figures import Figures
from .....typesetting.languages import meant_language
from .....typesetting.lines.hyphens import known_language
from .....typesetting.lines.solid import is_solid
from .....typesetting.punctuation import AS_WRITTEN, Punctuation, is_punctuated, punctuation_of
from ..part import Part

__all__ = ["UNPARTED", "BookLanguage", "PageMargins", "TextKeys"]

TIGHTEST, LOOSEST = 0.8, 3.0
DEEPEST = 5
THINNEST, THICKEST = 0.5, 3.0
"""Dots; thinner is hardly printed, and thicker is another typeface."""

UNPARTED = "none"
"""The language of words that are left whole."""


def _read_leading(value: object) -> float:
    if isinstance(value, float):
        return value
    limit = f"{TIGHTEST:g} to {LOOSEST:g}"
    remedy = f"write how many times the size of type it is from line to line, from {limit}, such as 1.25"
    try:
        number, unit = split_number(tidy(read_text(value), "1.25"))
        ratio = float(read_number(number)) if number else 0.0
    except NotAMeasure as problem:
        raise refuse(problem.message, remedy) from None
    if unit == "%" and TIGHTEST <= ratio / 100 <= LOOSEST:
        raise refuse(f"{value} is a percentage", f"write {ratio / 100:g}, a multiple of the size of type")
    if unit:
        raise refuse(f"{show(str(value))} is not a plain number", remedy)
    if not TIGHTEST <= ratio <= LOOSEST:
        raise refuse(f"{value} is out of range", remedy, limit)
    return ratio


def _read_dots(value: object) -> float:
    if isinstance(value, float):
        return value
    written = read_text(value)
    limit = f"{THINNEST:g} to {THICKEST:g} dots"
    remedy = f"write how many printer dots thin strokes are to be thick, from {limit}, such as 1 dot"
    try:
        number, unit = split_number(tidy(written, "1 dot"))
        dots = float(read_number(number)) if number else 0.0
    except NotAMeasure as problem:
        raise refuse(problem.message, remedy) from None
    if unit not in {"dot", "dots"}:
        raise refuse(f"{show(written)} is no weight of type in dots", remedy)
    if not THINNEST <= dots <= THICKEST:
        raise refuse(f"{written} is out of range", remedy, limit)
    return dots


def _read_language(value: object) -> str:
    written = read_text(value).strip()
    if written.casefold() in {UNPARTED, "no"}:
        return UNPARTED
    if known_language(written) is None and not is_punctuated(written):
        raise refuse(f"the language {show(written)!r} is not known here", meant_language(written))
    return written


def _read_depth(value: object) -> int:
    written = read_text(value).strip().casefold()
    if written in {"no", "0"}:
        return 0
    if not (written.isascii() and written.isdigit() and 2 <= int(written) <= DEEPEST):
        raise refuse(f"{written!r} cannot be the depth of a drop capital", f"write lines from 2 to {DEEPEST}, or no")
    return int(written)


Leading = Annotated[
    float,
    BeforeValidator(_read_leading),
    WithJsonSchema({"type": "number", "minimum": TIGHTEST, "maximum": LOOSEST}),
]
"""Baseline to baseline as a multiple of the size of type."""

Dots = Annotated[float, BeforeValidator(_read_dots), WithJsonSchema({"type": "string", "examples": ["1 dot"]})]
"""A thickness in printer dots."""

Language = Annotated[str, BeforeValidator(_read_language), WithJsonSchema({"type": "string", "examples": ["en"]})]
"""A language tag (BCP 47) whose patterns or whose punctuation is known, or none."""


def _read_language_of_book(value: object) -> str:
    language = _read_language(value)
    return "" if language == UNPARTED else language


BookLanguage = Annotated[
    str, BeforeValidator(_read_language_of_book), WithJsonSchema({"type": "string", "examples": ["en"]})
]
"""The same for a whole book; empty for none."""

LinesDeep = Annotated[
    int,
    BeforeValidator(_read_depth),
    WithJsonSchema({"anyOf": [{"type": "integer", "minimum": 2, "maximum": DEEPEST}, {"enum": [False, "no"]}]}),
]
"""Depth of a drop capital in lines; 0 for none."""


class PageMargins(Entry):
    """The white around the text, mirrored on facing pages."""

    inner: Margin = Field(description="at the spine")
    top: Margin = Field(description="at the head")
    outer: Margin = Field(description="at the fore-edge")
    bottom: Margin = Field(description="at the tail")


class TextKeys(Part):
    """The keys of a text, and what they say to the rest of the book."""

    kind: Literal["text"] = "text"
    file: TextFile = Field(
        description="text file in UTF-8, plain with blank lines between paragraphs, or Markdown (.md)"
    )
    size: TypeSizeOrFit = Field(from_pt(2.2), description="size of type, such as 2.2 pt, or fit: as large as fits")
    smallest: TypeSize | None = Field(
        None, description="with size: fit, no smaller; or 1.2 pt, or more where the face needs it"
    )
    largest: TypeSize | None = Field(None, description="with size: fit, no larger; or 24 letters to a line")
    leading: Leading = Field(1.25, description="from line to line, as a multiple of the size, such as 1.25")
    face: TypefaceName = Field("text", description="name of a bundled typeface, or path of a TTF or OTF file")
    italic_face: TypefaceName | None = Field(
        None, description="the same for emphasis, where the face has no italic here"
    )
    bold_face: TypefaceName | None = Field(None, description="the same for strong emphasis")
    weight: Dots | None = Field(None, description="how thick its hairlines are at least, in printer dots: 1 dot")
    tracking: Tracking | None = Field(
        None, description="space between letters, in percent of their size: 2 %; by their size if left out"
    )
    figures: Figures = Field(Figures.AS_DRAWN, description="old style, lining or tabular, if the face has them")
    language: Language = Field("en", description="language of the text, for hyphens: en, en-GB, de, el, ru; or none")
    punctuation: Literal["by language", "as written"] = Field(
        "by language", description="whether typed quotation marks, dashes and points become those of the language"
    )
    justified: Flag | None = Field(None, description="yes: all lines end at the margin; no: ragged; as they are long")
    setting: Literal["horizontal", "vertical"] = Field(
        "horizontal", description="vertical: Japanese or Chinese lines run down the page, from the right"
    )
    hanging: Flag = Field(True, description="punctuation stands out into the margins, yes or no")
    chapters: Literal["new page", "recto", "run on"] = Field("new page", description="where chapters begin")
    drop_capital: LinesDeep = Field(0, description="how many lines deep the first letter of a chapter is, or no")
    pictures: Literal["plates", "figures"] = Field(
        "plates", description="pictures of a Markdown text: plates on pages of their own, or figures in the text"
    )
    notes: Literal["chapter", "foot", "text"] = Field(
        "chapter",
        description="where notes stand: at the end of their chapter, at the foot of their page, after the text",
    )
    running_heads: Flag = Field(False, description="title and chapter over the text, yes or no")
    running_title: Title | None = Field(None, description="short title for running heads, in place of the book's")
    margins: PageMargins | None = Field(None, description="white around the text; by ninths if left out")
    numbers: Flag = Field(True, description="page numbers, yes or no")
    has_size = True

    @property
    def begins_recto(self) -> bool:
        """A text whose chapters do begins on a recto too, if its maker does not say otherwise."""
        return self.begins == "recto" or (self.chapters == "recto" and "begins" not in self.model_fields_set)

    @property
    def marks(self) -> Punctuation:
        """The marks its punctuation is set with."""
        return (
            AS_WRITTEN
            if self.punctuation == "as written"
            else punctuation_of(self.language, vertical=self.setting == "vertical")
        )

    @property
    def shows(self) -> str:
        """The file."""
        return self.file

    @property
    def named_language(self) -> str | None:
        """The language, if it was named: empty for none."""
        if "language" not in self.model_fields_set:
            return None
        return "" if self.language == UNPARTED else self.language

    @property
    def text_size(self) -> float | None:
        """The size; None if it is to be found."""
        return None if self.size == FIT else self.size

    @property
    def is_open(self) -> bool:
        """Whether it is to be fitted into pages that nobody gives it."""
        return self.size == FIT and self.pages is None

    @model_validator(mode="after")
    def _set_vertically(self) -> Self:
        if self.setting == "vertical" and not is_solid(self.language):
            raise refuse(
                f"setting: vertical is not for language: {self.language}",
                "write language: ja or zh, or leave setting out",
                instead={"setting": None},
            )
        if self.setting == "vertical" and self.drop_capital:
            raise refuse(
                "has a drop capital with setting: vertical, where there are none",
                "leave drop_capital out",
                instead={"drop_capital": None},
            )
        return self

    @model_validator(mode="after")
    def _smallest_first(self) -> Self:
        if self.largest is not None and self.smallest is not None and self.largest < self.smallest:
            raise refuse(
                f"smallest: {print_pt(self.smallest)} is larger than largest: {print_pt(self.largest)}",
                "write the smaller size at smallest",
            )
        return self
