"""A few lines on a page of their own: where they end is kept, and all are of one size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .....ground.geometry import Size
from .....ground.problems import Problem, Severity
from .....ground.typefaces import TextLine
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import missing_glyphs
from .....typesetting.display import LEADING, DisplayType, bound, largest
from .....typesetting.lines.fount import Fount, Style, as_read
from .....typesetting.page import PageFrame
from ..prose.sizes import type_too_small

__all__ = ["FewLines", "few_lines", "few_lines_problems", "flat_emphasis", "typed_line_ends"]

SMALLEST = 0.05
"""Lines that have no room become smaller, but not under this share of their size: then they stand out."""


@dataclass(frozen=True, slots=True)
class FewLines:
    """Set lines of one size, the em in mm; an empty one keeps its place. `turned` are those that were turned over."""

    size: float
    lines: tuple[TextLine, ...]
    turned: frozenset[int] = frozenset()

    @property
    def height(self) -> float:
        """What they take of the page, with the space after them."""
        return len(self.lines) * LEADING * self.size


def few_lines(
    written: Sequence[str],
    family: Family,
    size: float,
    room: Size,
    frame: PageFrame,
    *,
    hanging: float | None = None,
) -> FewLines:
    """Lines as their author ended them, in the largest type up to `size` (the em in mm) that has room on the page.

    Their words may hold the signs of styles. What is longer than the room is wide goes on in the next line: all
    its lines are then about equally long, or as full as they go with the later ones `hanging` so many ems.
    """
    fount = Fount(family, None, right_to_left=frame.right_to_left)
    written = frame.printed("\n".join(written), *family.values()).split("\n")

    type = DisplayType(family[Style.ROMAN], frame.right_to_left, fount)

    def parts_in(measure: float) -> list[list[str]]:
        turned = None if hanging is None else measure - hanging
        words = ([*bound(line.split(" "))] if line else [] for line in written)
        return [type.lines(some, measure, turned, even=hanging is None) if some else [""] for some in words]

    def fits(size: float) -> bool:
        lines = [line for part in parts_in(room.width / size) for line in part]
        wide = max(map(type.width, lines)) * size <= room.width + 1e-9 * size
        return wide and len(lines) * LEADING * size <= room.height + 1e-9

    size = largest(size, fits, size * SMALLEST)
    parts = parts_in(room.width / size)
    lines = [line for part in parts for line in part]
    turned = [number > 0 for part in parts for number in range(len(part))]
    return FewLines(
        size,
        tuple(fount.line(line, size) if line else TextLine(size, ()) for line in lines),
        frozenset(number for number, goes_on in enumerate(turned) if goes_on),
    )


def few_lines_problems(
    what: str, written: Sequence[str], typed: str, size: float, family: Family, frame: PageFrame
) -> tuple[Problem, ...]:
    """What is wrong with such a page: `written` are all its lines, `typed` is what the maker wrote as its text."""
    roman, field = family[Style.ROMAN], ("text",) if typed else ()
    return (
        *missing_glyphs(what, roman, as_read("".join(written))),
        *flat_emphasis(what, written, family),
        *typed_line_ends(typed, "text"),
        *type_too_small(f"the {what}", roman, size, frame, "write fewer words", field),
    )


def typed_line_ends(text: str, key: str) -> Iterator[Problem]:
    """A note, if a line was to end where a text has the signs for that, which mean it in double quotes alone."""
    if "\\n" in text:
        yield Problem(
            f"the \\n in this {key} is printed as it stands: it ends a line only between double quotes",
            "put the text between \" and \" in place of ' and '",
            Severity.NOTE,
            field=(key,),
        )


def flat_emphasis(what: str, lines: Sequence[str], family: Family) -> Iterator[Problem]:
    """A note, if lines have emphasis and their typefaces no italic or bold for it."""
    used = set().union(*lines)
    for style, name in ((Style.ITALIC, "italic"), (Style.BOLD, "bold")):
        if style in used and style not in family:
            yield Problem(
                f"{family[Style.ROMAN].name} has no {name} here, so the {what} is set without",
                "write another face, or leave the asterisks out",
                Severity.NOTE,
                field=("face",),
            )
