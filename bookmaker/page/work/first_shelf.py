"""A first shelf out of a form: titles shared out among the spaces, with as many pages as their rooms take."""

from __future__ import annotations

import csv
import hashlib
import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from ...ground.files import supposing
from ...ground.problems import CommandError, Problem
from ...ground.told import Units, in_units, print_mm, told_in, units_told
from ...ground.units import NotAMeasure, native_length
from ...shelf.plan import ShelfPlan
from ...shelf_file.book_list.columns import known_names
from ...shelf_file.edits.scalars import on_one_line
from ...workshop import Workshop

__all__ = ["MOODS", "FirstWanted", "first_shelf", "first_wanted_of", "listed_titles"]

MOODS: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "a study": ("library", ("leather", "half leather", "cloth", "cloth")),
    "by the sea": ("harbour", ("cloth", "half leather", "paper boards", "ledger")),
    "a kitchen garden": ("orchard", ("cloth", "paper boards", "paperback", "cloth")),
    "an attic": ("attic", ("cloth", "pamphlet", "leather", "paper boards")),
    "a nursery": ("fairground", ("paper boards", "paperback", "school", "cloth")),
}
"""Palettes with the styles that go with them."""

LEAST_PAGES, MOST_PAGES = 8, 160
"""A book with fewer is hardly one; one with more is long to fold."""

WISHED_PAGES = 48
TRIES = 14
SHARE_USED = 0.97
"""So much of a space the books may take: the rest is ease for whoever takes one out."""

HEIGHTS = (0.95, 0.82, 0.88, 0.76, 0.9, 0.7)
"""How tall books are beside the tallest, which leaves room for a finger above."""

FINGER, TALLEST = 2.0, 26.0
"""The room above the tallest book, and the tallest there is at 1:12, in mm: a folio of 312 mm."""

Measure = Annotated[str, Field(min_length=1, max_length=40, pattern=r"^[^\n{}\[\],#]*$")]
Words = Annotated[str, Field(max_length=200)]


class FirstSpace(BaseModel):
    """A space of the form; lengths as they are written, in mm or inches."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Words = Field(min_length=1)
    width: Measure
    height: Measure
    depth: Measure


class FirstWanted(BaseModel):
    """The form of a first shelf. `pages_pile` and `cover` are thicknesses of the papers that there are."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Words = Field(min_length=1)
    scale: Measure = "1:12"
    sheet: Measure = "A4"
    page_paper: Measure = "20 sheets = 2 mm"
    cover_paper: Measure = "160 um"
    mood: str = "a study"
    spaces: list[FirstSpace] = Field(min_length=1, max_length=40)
    titles: str = Field("", max_length=200_000)


@dataclass(frozen=True, slots=True)
class _Book:
    """A title with its author, the number of its space, its page in mm, its pages and its style."""

    title: str
    author: str
    space: int
    height: float
    width: float
    style: str
    pages: int = WISHED_PAGES


def first_wanted_of(data: bytes) -> FirstWanted:
    """The form as the page sent it.

    Raises:
        CommandError: something in it is missing, or too long.
    """
    try:
        return FirstWanted.model_validate_json(data)
    except ValidationError as trouble:
        told = [".".join(map(str, one["loc"])) for one in trouble.errors()]
        problems = [Problem(f"{field} is missing or cannot be used", "fill it in") for field in dict.fromkeys(told)]
        raise CommandError(problems) from None


def listed_titles(text: str) -> Iterator[tuple[str, str]]:
    """Titles and authors, one book a line: "Title; Author", with a tab or a comma-separated table just as well.

    >>> list(listed_titles("title,author\\nFog,A. Fell\\n")), list(listed_titles("Salt; B. Tarrow\\nRope"))
    ([('Fog', 'A. Fell')], [('Salt', 'B. Tarrow'), ('Rope', '')])
    """
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    separator = next((sign for sign in "\t;" if any(sign in line for line in lines)), "")
    head = [cell.strip().casefold() for cell in re.split(r"[\t;,]", lines[0])] if lines else []
    named = known_names({"title": False, "author": False})
    keys = [named.get(cell, "") for cell in head]
    if "title" in keys:
        separator = separator or ","
        at = keys.index("title"), keys.index("author") if "author" in keys else -1
        lines = lines[1:]
    else:
        at = 0, 1
    for cells in csv.reader(lines, delimiter=separator or "\n"):
        found = [cell.strip() for cell in cells]
        if at[0] < len(found) and found[at[0]]:
            yield found[at[0]], found[at[1]] if 0 <= at[1] < len(found) else ""


def first_shelf(path: Path, wanted: FirstWanted, workshop: Workshop) -> bytes:
    """A shelf file for what a form says, with notes in it, whose books fit.

    Raises:
        BookmakerError: a length cannot be read, or there are more books than the spaces take.
    """
    with told_in(_units(wanted)):
        return _fitting(path, wanted, workshop)


def _units(wanted: FirstWanted) -> Units:
    """What its maker measures in: inches, if the first space is written so."""
    with suppress(NotAMeasure):
        return Units.INCHES if native_length(wanted.spaces[0].width)[1] in ("in", "ft") else Units.MILLIMETRES
    return Units.MILLIMETRES


def _fitting(path: Path, wanted: FirstWanted, workshop: Workshop) -> bytes:
    """The file, with fewer pages in its books until they fit."""
    titles = [*dict.fromkeys(listed_titles(wanted.titles))] or [("A First Book", "")]
    empty = _text(wanted)
    with supposing({path: _with_one(wanted)}):
        plan = workshop.planned(path)
    rooms = [plan.spec.spaces[space.name.strip()] for space in wanted.spaces]
    books = _shared_out(wanted, titles, [(room.width, room.height, room.depth) for room in rooms])
    for _ in range(TRIES):
        data = (empty + "".join(_entry(book, wanted) for book in books)).encode()
        with supposing({path: data}):
            plan = workshop.planned(path)
        changed = _closer(books, plan, wanted)
        if changed == books:
            return data
        books = changed
    return data


def _with_one(wanted: FirstWanted) -> bytes:
    """The shelf with one small book, which tells whether its lengths can be read."""
    probe = _Book("A", "", 0, 5.0, 4.0, "cloth", LEAST_PAGES)
    return (_text(wanted) + _entry(probe, wanted)).encode()


def _shared_out(
    wanted: FirstWanted, titles: Sequence[tuple[str, str]], rooms: Sequence[tuple[float, float, float]]
) -> list[_Book]:
    """Every title with a space, as many on each as its width is of all, and a size that fits."""
    _, styles = MOODS.get(wanted.mood, MOODS["a study"])
    whole, before = sum(width for width, _, _ in rooms), 0.0
    ends: list[int] = []
    books: list[_Book] = []
    for width, _, _ in rooms:
        before += width
        ends.append(round(len(titles) * before / whole))
    for number, (title, author) in enumerate(titles):
        space = next((at for at, end in enumerate(ends) if number < end), len(rooms) - 1)
        chance = hashlib.blake2b(title.encode(), digest_size=4).digest()
        _, high, deep = rooms[space]
        tall = min(high - FINGER, TALLEST) * HEIGHTS[chance[0] % len(HEIGHTS)]
        wide = min(tall * (0.64 + chance[1] % 10 / 100), deep - 1.5)
        pages = WISHED_PAGES + 8 * (chance[2] % 5 - 2)
        style = styles[chance[3] % len(styles)]
        books.append(_Book(title, author, space, round(tall, 1), round(wide, 1), style, pages))
    return books


def _closer(books: Sequence[_Book], plan: ShelfPlan, wanted: FirstWanted) -> list[_Book]:
    """The same books with fewer pages on spaces that are too full.

    Raises:
        CommandError: they have no pages left to give.
    """
    changed = list(books)
    for number, space in enumerate(wanted.spaces):
        fit = next(fit for fit in plan.spaces if fit.name == space.name.strip())
        mine = [at for at, book in enumerate(books) if book.space == number]
        room = fit.width * SHARE_USED - fit.clearance - fit.likely
        if fit.used <= room:
            continue
        if all(books[at].pages <= LEAST_PAGES for at in mine):
            each = fit.used / len(mine)
            message = f"{len(mine)} books do not fit on {space.name}: with {LEAST_PAGES} pages each "
            message += f"takes {print_mm(each, 1)}"
            raise CommandError((Problem(message, f"paste at most {int(room // each)} for it, or give it more room"),))
        for at in mine:
            fewer = int(books[at].pages * max(room / fit.used, 0.5)) // 2 * 2
            changed[at] = replace(books[at], pages=max(min(fewer, books[at].pages - 2), LEAST_PAGES))
    return changed


def _text(wanted: FirstWanted) -> str:
    def word(text: str, *, braces: bool = False) -> str:
        return on_one_line(" ".join(text.split()), braces=braces, words=True)

    spaces = "".join(
        f"  {word(space.name)}: {{width: {space.width}, height: {space.height}, depth: {space.depth}}}\n"
        for space in wanted.spaces
    )
    return f"""\
# A shelf of miniature books. Lines that start with # are notes to you.
# Lengths need a unit: 21 mm, 2.1 cm, 7/8 in, 90 um, 4 mil, 8 pt.
shelf: {word(wanted.name)}
scale: {wanted.scale}
units: {units_told()}    # the unit in which lengths are shown: millimetres or inches

printer:
  sheet: {wanted.sheet}            # or A4, A3, letter, legal, or two sides: 200 x 280 mm, 8 x 10 in
  margins: {in_units("5 mm", "0.2 in")}        # what your printer cannot reach

# Papers. Best is to measure a pile: stack 20 sheets, press them, measure.
stocks:
  page paper:
    {_paper(wanted.page_paper)}
    glue: spray        # or paste, PVA, double-sided film, or a length such as 15 um
  cover paper:
    {_paper(wanted.cover_paper)}

# Where the books stand: the clear space inside.
spaces:
{spaces}
# What all books share. A book may say otherwise.
defaults:
  block: {{kind: accordion, stock: page paper}}   # a strip of paper, folded to and fro
  cover: {{kind: wrap, stock: cover paper}}       # a cover of paper around it
  inside: {{kind: dummy text, size: 2.2 pt}}       # lines that only look like text

books:
"""


def _paper(said: str) -> str:
    return f"pile: {said}" if "=" in said else f"caliper: {said}"


def _entry(book: _Book, wanted: FirstWanted) -> str:
    def word(text: str) -> str:
        return on_one_line(" ".join(text.split()), braces=False, words=True)

    palette, _ = MOODS.get(wanted.mood, MOODS["a study"])
    author = f"    author: {word(book.author)}\n" if book.author else ""
    return (
        f"  - title: {word(book.title)}\n{author}"
        f"    space: {word(wanted.spaces[book.space].name)}\n"
        f"    size: {{height: {print_mm(book.height)}, width: {print_mm(book.width)}}}\n"
        f"    block: {{pages: {book.pages}}}\n"
        "    inside: [{kind: title page}, {kind: dummy text}]\n"
        f"    design: {{style: {book.style}, palette: {palette}}}\n"
    )
