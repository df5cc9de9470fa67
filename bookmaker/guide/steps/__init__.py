"""How each kind of block and cover is made: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from ...shelf_file.fields.entry import Entry
from ...things.book.blocks.concertina import Concertina
from ...things.book.blocks.leaves import Leaves
from ...things.book.blocks.sections import Sections
from ...things.book.blocks.solid import Solid
from ...things.book.covers.case.case import Case
from ...things.book.covers.wrap import Wrap
from ..job import BookJob, BoxJob, Making
from . import case, concertina, jacket, leaves, sections, slipcase, solid, wrap

__all__ = ["KINDS", "making_of_box", "makings"]

KINDS: Mapping[type[Entry], Callable[[BookJob], Making]] = {
    Concertina: concertina.making,
    Leaves: leaves.making,
    Sections: sections.making,
    Solid: solid.making,
    Wrap: wrap.making,
    Case: case.making,
}


def makings(job: BookJob) -> Iterator[Making]:
    """How a book is made: its block, its cover, and its jacket if it wears one."""
    entry = job.book.entry
    yield KINDS[type(entry.block)](job)
    yield KINDS[type(entry.cover)](job)
    if job.book.jacket:
        yield jacket.making(job)


def making_of_box(job: BoxJob) -> Making:
    """How a slipcase is made."""
    return slipcase.making(job)
