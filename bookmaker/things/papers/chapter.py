"""The steps of a paper."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.geometry import Axis
from ..box.views import folding_figure
from ..common_steps import FOLDING, KNIFE, SCORING, count_folds
from ..making import Bench, Chapter, Figure, Making
from ..views.flat_view import flat_figure
from ..wording import in_words, numbered, sides, thick
from .entry import Leaf
from .folding import FoldedSheet
from .net import net_of, packet_size
from .plan import PaperPlan

__all__ = ["paper_chapter"]

ON_THE_WAY = 0.6
"""Each fold is drawn so far on its way."""


def paper_chapter(paper: PaperPlan, bench: Bench) -> Chapter:
    """What it is, and how it is printed, cut and folded."""
    entry = paper.thing.entry
    folded = any(leaf.folded for leaf in paper.leaves)
    making = Making(
        heading=f"The {entry.kind}",
        steps=tuple(_steps(paper)),
        takes=tuple(dict.fromkeys(flat.kind for flat in paper.flats)),
        figures=tuple(_figures(paper, bench)),
        tools=(*KNIFE, *(SCORING if folded else ()), *(FOLDING if folded else ())),
    )
    copies = f" {in_words(entry.copies).capitalize()} copies." if entry.copies > 1 else ""
    title = f"{entry.kind.capitalize()}: {paper.name}"
    return Chapter(title, f"{entry.what}.{copies}", (making,), tuple(_sizes(paper)))


def _sizes(paper: PaperPlan) -> Iterator[tuple[str, str]]:
    leaf = paper.leaves[0]
    yield ("each" if leaf.across * leaf.down > 1 else "flat"), sides(paper.size)
    if leaf.folded:
        yield "folded", sides(packet_size(leaf.folded))
    if paper.bulk:
        yield "thick as it lies", thick(paper.bulk.thickness)


def _figures(paper: PaperPlan, bench: Bench) -> Iterator[Figure]:
    """How the first leaf is folded, cut up or cut round."""
    leaf, flat = paper.leaves[0], paper.flats[0]
    if leaf.folded or leaf.outline or leaf.across * leaf.down > 1:
        order = list(leaf.folded.order) if leaf.folded else ()
        yield flat_figure(flat, bench.room, f"The {leaf.name}", order=order)
    if leaf.folded:
        yield folding_figure(net_of(leaf.folded, leaf.name), bench.room, ON_THE_WAY)


def _steps(paper: PaperPlan) -> Iterator[str]:
    for leaf, flat in zip(paper.leaves, paper.flats, strict=False):
        cut_out = f"Cut the {leaf.name} out along its lines, {sides(leaf.size)} wide and high."
        if leaf.folded:
            yield (
                f"Score {count_folds(flat.folds)} of the {leaf.name} lightly from mark to mark, with an empty ball pen "
                "along a steel rule."
            )
            yield cut_out
        elif leaf.torn:
            yield cut_out
            yield (
                f"Perforate it from mark to mark with a needle in a pin vice or a tracing wheel, on felt. That makes "
                f"{leaf.across * leaf.down} to tear off."
            )
        elif leaf.across * leaf.down > 1:
            yield (
                f"Cut the {leaf.name} apart from mark to mark, first all lines one way and then the other, with a "
                f"fresh blade and a light hand. That makes {leaf.across * leaf.down}, each {sides(paper.size)} wide "
                "and high."
            )
        else:
            yield cut_out
    if paper.thing.entry.age:
        yield "Tone the cut edges with a felt pen of their colour, where white shows."
    for leaf in paper.leaves:
        if leaf.folded:
            yield from _folding(leaf, leaf.folded)
            break


def _folding(leaf: Leaf, sheet: FoldedSheet) -> Iterator[str]:
    """The folds in their order, as the drawing numbers them."""
    names = ("rows", "columns") if sheet.first is Axis.Y else ("columns", "rows")
    counts = len(sheet.one.steps), len(sheet.two.steps)
    begun = [_numbered(1, counts[0], names[0]), _numbered(1 + counts[0], counts[1], names[1])]
    yield (
        f"Fold the {leaf.name} in the order of the numbers, the print {'outside' if sheet.outside else 'inside'}: "
        f"first {', then '.join(said for said in begun if said)}. Each fold is rubbed down before the next one."
    )
    yield (
        f"Leave it under a book overnight, or it springs open. Folded it is {sides(packet_size(sheet))} wide and high "
        f"and {thick(sheet.thickness)} thick under a weight, and nothing stands out."
    )


def _numbered(first: int, count: int, what: str) -> str:
    """The folds that make rows or columns; nothing if none do."""
    return f"the {what} ({numbered('fold', range(first, first + count))})" if count else ""
