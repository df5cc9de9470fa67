"""The pages of one book, or of one slipcase: its numbers, its parts, its steps, what to measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from ..ground.quantities import counted
from ..sheets.cutting import CutPart
from ..shelf.plan import ShelfPlan
from ..things.book.plan import BookPlan
from ..things.making import Making, Measure
from ..things.prints import Prints
from ..things.slipcase.plan import SlipcasePlan
from ..things.wording import listed, sides, thick
from .cautions import IN_SHORT
from .items import Beside, Column, Heading, Illustration, Item, Paragraph, Tick, table
from .materials import supplies_needed
from .supply_words import amount_of

__all__ = ["book_chapter", "box_chapter"]

SIZES = (
    Column(0.0, 0.2),
    Column(0.2, 0.34, ends=True),
    Column(0.34, 0.5, ends=True),
    Column(0.5, 0.66, ends=True),
    Column(0.66, 0.82, ends=True),
    Column(0.82, 1.0, ends=True),
)
MEASURES = (Column(0.0, 0.24), Column(0.24, 0.4, ends=True), Column(0.4, 0.56, ends=True), Column(0.58, 1.0))
BLANK = "________ mm"


def book_chapter(book: BookPlan, prints: Prints, makings: Sequence[Making], plan: ShelfPlan) -> Iterator[Item]:
    """Everything about one book."""
    yield Heading(plan.printed(book.id), level=1)
    yield Paragraph(_what_it_is(book, plan))
    yield from _sizes(book, plan)
    yield from _measures(makings)
    yield from _parts(prints, book.cut_list)
    yield from _made(makings)


def box_chapter(box: SlipcasePlan, titles: Sequence[str], prints: Prints, making: Making) -> Iterator[Item]:
    """Everything about one slipcase, with the titles of its books."""
    yield Heading(f"Slipcase: {box.name}", level=1)
    where = f", and stands in {box.space}" if box.space else ""
    yield Paragraph(f"It holds {counted(len(titles), 'book')}: {listed(titles)}{where}.")
    yield from _measures([making])
    yield from _parts(prints, ())
    yield from _made([making])


def _what_it_is(book: BookPlan, plan: ShelfPlan) -> str:
    block, cover = book.block, book.cover
    parts = [f"by {book.entry.author}"] if book.entry.author else []
    pages = f"{block.kind} of {counted(block.pages, 'page')}" if block.pages else f"{block.kind} block"
    parts.append(f"{pages} in a {cover.kind}" + (" with a jacket" if book.jacket else ""))
    holder = plan.holder_of(book.id)
    if holder:
        parts.append(f"stands in the {holder.family.noun} {holder.name}")
    elif book.entry.space:
        lies = f" in the stack {book.entry.stack}" if book.entry.stack else ""
        parts.append(f"{'lies' if lies else 'stands'} in {book.entry.space}{lies}")
    text = f"{'; '.join(parts)}."
    if book.entry.right_to_left:
        text += (
            " It reads from right to left: with the front up the spine is on the right. Its sheets are already "
            "mirrored."
        )
    return text[0].upper() + text[1:]


def _sizes(book: BookPlan, plan: ShelfPlan) -> Iterator[Item]:
    head = ("page", "block thick", "spine, flat", "book thick", "likely ±", "book high × deep")
    _, likely = book.standing.uncertainty.spread(plan.terms.tolerances)
    row = (
        sides(book.page),
        thick(book.block.thickness.value),
        thick(book.cover.spine),
        thick(book.thickness.value),
        thick(likely),
        f"{book.height:.1f} × {book.depth:.1f} mm",
    )
    yield from table(SIZES, head, [row])


def _parts(prints: Prints, by_hand: Sequence[CutPart]) -> Iterator[Item]:
    yield Heading("Parts, height × width")
    for where, pieces in prints.by_sheet():
        for _, of_kind in groupby(pieces, key=lambda piece: piece.flat.kind):
            alike = groupby(of_kind, key=lambda piece: sides(piece.flat.size))
            named = [f"{'; '.join(piece.label[1] for piece in group)} ({size})" for size, group in alike]
            yield Tick(f"{where}: {'; '.join(named)}")
    for part in by_hand:
        size = f"{part.height:.2f} × {part.width:.2f} mm, {thick(part.thickness)} thick"
        yield Tick(f"cut by hand: {counted(part.count, part.what)} of {part.material} ({size})")


def _made(makings: Sequence[Making]) -> Iterator[Item]:
    supplies = supplies_needed(supply for making in makings for supply in making.supplies)
    if supplies:
        yield Paragraph("Besides: " + "; ".join(f"{supply.what}, {amount_of(supply)}" for supply in supplies) + ".")
    tools = dict.fromkeys(tool for making in makings for tool in making.tools)
    yield Paragraph("Tools: " + "; ".join(tools) + ".")
    yield Paragraph(IN_SHORT, quiet=True)
    for making in makings:
        yield Heading(making.heading)
        if making.figures:
            yield Beside(tuple(map(Illustration, making.figures)))
        yield from (Tick(step) for step in making.steps)


def _measures(makings: Sequence[Making]) -> Iterator[Item]:
    """What to measure as the work goes on, with a blank to fill in."""
    yield Heading("Measure")
    rows = [
        (
            measure.what,
            thick(measure.computed),
            BLANK if measure.measured is None else thick(measure.measured),
            _written(measure),
        )
        for making in makings
        for measure in making.measures
    ]
    yield from table(MEASURES, ("what", "computed", "measured", "write it into the shelf file as"), rows, together=True)


def _written(measure: Measure) -> str:
    return measure.written if measure.measured is None else f"{measure.written} (it is there)"
