"""What the finished plan has to say: books that do not fit, and what would help."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, floor

from ..ground.problems import Problem, Severity
from ..ground.units import print_mm
from ..paper.thickness import READING_TOLERANCE
from ..shelf_file.book_names import called_in_list
from ..things.slipcase.plan import SlipcasePlan
from .fit import SpaceFit, Verdict
from .plan import BookPlan, ShelfPlan

__all__ = ["fit_findings", "row_findings"]

MOST_LIKELY = 2
"""So many remedies are offered; more would be noise."""


def fit_findings(plan: ShelfPlan) -> Iterator[Problem]:
    """Errors for every space that is over, warnings for those that are tight, notes for books without a space."""
    for space in plan.spaces:
        books = [plan.books[number] for number in space.books]
        yield from _stands_out(space, books, plan)
        yield from _boxes_stand_out(space, plan)
        if space.slack < -1e-9:
            yield _over(space, books, plan)
        elif space.verdict is Verdict.TIGHT:
            yield _tight(space)


def row_findings(plan: ShelfPlan) -> Iterator[Problem]:
    """Warnings about measured rows of books that do not stand together, notes about boxes that may be too narrow."""
    for number, row in enumerate(plan.measured_rows):
        places = list(dict.fromkeys(_stands_in(plan.books[book], plan) for book in row.books))
        if len(places) > 1:
            yield Problem(
                f"the books of this row do not stand together, but in {' and '.join(places)}",
                "measure side by side what stands together, and write a row for each",
                Severity.WARNING,
                field=("measured_rows", number, "books"),
            )
    names = [book.entry.name for book in plan.books]
    for box in plan.slipcases:
        # the box is made to computed sizes: books that come out thicker than its ease do not go in
        if box.row_tolerance > box.entry.ease + 1e-9:
            yield _may_be_narrow(box, called_in_list(box.books, names))


def _may_be_narrow(box: SlipcasePlan, called: str) -> Problem:
    """What helps is what the books measure together, unless the ease is less than a gauge may be off."""
    ease = f"write ease: {print_mm(_rounded_up(box.row_tolerance), 2)}"
    measured = (
        "finish the books before you print the box, and write what they measure side by side as "
        f"measured_rows: - {{books: [{called}], thickness: … mm}}"
    )
    return Problem(
        f"its books may be off by ± {print_mm(box.row_tolerance, 2)} together, "
        f"but the ease is {print_mm(box.entry.ease)}",
        f"{measured}; or {ease}" if box.entry.ease >= READING_TOLERANCE else ease,
        Severity.NOTE,
        field=("slipcases", box.name, "ease"),
    )


def _stands_in(book: BookPlan, plan: ShelfPlan) -> str:
    """Where a book stands, in words."""
    box = next((box.name for box in plan.slipcases if book.number in box.books), None)
    if box is not None:
        return f"the slipcase {box}"
    return f"the space {book.entry.space}" if book.entry.space else "no space"


def _over(space: SpaceFit, books: Sequence[BookPlan], plan: ShelfPlan) -> Problem:
    """What is over and by how much; the remedies make up for the likely error too, so that the row then fits."""
    excess = -space.slack
    needed = excess + space.likely
    row = [*books, *_boxed_books(space, plan)]
    remedies = [
        *_fewer_pages(row, needed),
        *_other_space(books, needed, space, plan),
        *_thinner_stock(row, needed, plan),
    ]
    remedies.append(f"make the space {print_mm(_rounded_up(needed), 2)} wider")
    first, *rest = remedies
    return Problem(
        f"{space.name} is over: {_counted(len(books), len(space.slipcases))} {print_mm(space.used + space.ease, 2)}, "
        f"the space has {print_mm(space.width, 2)}, {print_mm(excess, 2)} too little",
        "; or ".join([first, *rest[:MOST_LIKELY]]),
        field=("spaces", space.name, "width"),
    )


def _tight(space: SpaceFit) -> Problem:
    return Problem(
        f"{space.name} is tight: {print_mm(space.slack, 2)} are left, but the thicknesses may be off by "
        f"± {print_mm(space.likely, 2)} ({space.probability:.0%} sure to fit)",
        "measure a pile of each paper, or leave a book out",
        Severity.WARNING,
        field=("spaces", space.name, "width"),
    )


def _stands_out(space: SpaceFit, books: Sequence[BookPlan], plan: ShelfPlan) -> Iterator[Problem]:
    by_title = {book.name: book for book in books}
    limits = plan.spec.spaces[space.name]
    for side, found, limit in (
        ("tall", space.too_tall, limits.height),
        ("deep", space.too_deep, limits.depth),
    ):
        for title, excess in found:
            if title in space.slipcases:
                continue
            book = by_title.get(title)
            field = ("books", book.number, "space") if book else ("spaces", space.name)
            yield Problem(
                f"{title} is {print_mm(excess, 2)} too {side} for {space.name}, which has {print_mm(limit, 2)}",
                _where_it_stands(book, space, plan) if book else "put some of its books in another space",
                field=field,
            )


def _boxes_stand_out(space: SpaceFit, plan: ShelfPlan) -> Iterator[Problem]:
    """The same for slipcases."""
    limits = plan.spec.spaces[space.name]
    for box in plan.slipcases:
        title = box.standing.title
        sides = (("tall", space.too_tall, limits.height), ("deep", space.too_deep, limits.depth))
        for side, found, limit in sides if box.space == space.name else ():
            for excess in (excess for named, excess in found if named == title):
                yield Problem(
                    f"{title} is {print_mm(excess, 2)} too {side} for {space.name}, which has {print_mm(limit, 2)}",
                    f"write another space for it, or leave its {side}est book out",
                    field=("slipcases", box.name),
                )


def _boxed_books(space: SpaceFit, plan: ShelfPlan) -> list[BookPlan]:
    """The books in the slipcases of a space: what they lose, their boxes lose."""
    return [plan.books[number] for box in plan.slipcases if box.space == space.name for number in box.books]


def _where_it_stands(book: BookPlan, space: SpaceFit, plan: ShelfPlan) -> str:
    other = next(
        (
            name
            for name, candidate in plan.spec.spaces.items()
            if name != space.name and candidate.height >= book.height and candidate.depth >= book.depth
        ),
        None,
    )
    if other:
        return f"put it in {other}, where it can stand, or make it smaller"
    return "make the book smaller or the space larger"


def _fewer_pages(books: Sequence[BookPlan], missing: float) -> Iterator[str]:
    """The thickest book that can lose what is missing and still keep half its pages."""
    for book in sorted(books, key=lambda book: -book.block.thickness.value):
        per_page = book.block.thickness_of_a_page
        if per_page and book.entry.stack is None and book.block.thickness.measured is None:
            fewer = 2 * ceil(missing / per_page / 2)
            if fewer <= book.block.pages / 2:
                yield f"give {book.name} {fewer} pages fewer"
                return


def _other_space(books: Sequence[BookPlan], missing: float, space: SpaceFit, plan: ShelfPlan) -> Iterator[str]:
    """A single book whose move makes up for what is missing, and a space that has room for it."""
    for book in sorted(books, key=lambda book: book.thickness.value):
        freed = book.thickness.value + plan.spec.spaces[space.name].ease
        if freed < missing or book.entry.stack is not None:
            continue
        for other in plan.spaces:
            entry = plan.spec.spaces[other.name]
            roomy = other.slack >= book.thickness.value + entry.ease
            if other.name != space.name and roomy and entry.height >= book.height and entry.depth >= book.depth:
                yield f"put {book.name} in {other.name}, which has {print_mm(other.slack, 2)} left"
                return


def _thinner_stock(books: Sequence[BookPlan], missing: float, plan: ShelfPlan) -> Iterator[str]:
    """How thin the most used stock would have to be."""
    slopes: dict[str, float] = {}
    for book in books:
        if book.entry.stack is None:
            for stock, slope in book.thickness.sensitivities.items():
                slopes[stock] = slopes.get(stock, 0.0) + slope
    if not slopes:
        return
    stock, slope = max(slopes.items(), key=lambda item: item[1])
    caliper = plan.stocks[stock].caliper
    thin = caliper - missing / slope
    if thin >= caliper * 0.6:
        # rounded down: a remedy that is rounded the other way would still be too thick
        yield f"use {stock} of {floor(thin * 1000)} µm instead of {caliper * 1000:.0f}"


def _rounded_up(length: float) -> float:
    """To a hundredth of a millimetre, so that what is offered is enough."""
    return ceil(length * 100 - 1e-6) / 100


def _counted(books: int, slipcases: int = 0) -> str:
    counts = ((books, "book"), (slipcases, "slipcase"))
    named = " and ".join(f"{count} {what}{'s' if count > 1 else ''}" for count, what in counts if count)
    return f"{named} with their ease need" if books + slipcases > 1 else f"{named} with its ease needs"
