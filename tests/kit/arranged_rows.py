"""A row of books with colours and heights, proposals of its order, and what is written of these."""

from __future__ import annotations

from pathlib import Path

from bookmaker import check
from bookmaker.shelf.arranging.edits import arranging_edits, entries_of
from bookmaker.shelf.arranging.keys import Rule
from bookmaker.shelf.arranging.proposal import Proposal, proposed
from bookmaker.shelf.keeping import edited
from bookmaker.shelf_file.edits.files import EditedFile

__all__ = ["HEAD", "ROW", "SHADES", "book", "proposal_of", "write"]

HEAD = """\
shelf: Tides and Ropes
stocks:
  laid: {caliper: 90 um}
  card: {caliper: 160 um}
spaces:
  low: {width: 60 mm, height: 30 mm, depth: 22 mm}
  high: {width: 40 mm, height: 20 mm, depth: 22 mm}
defaults:
  cover: {kind: wrap, stock: card}
  block: {kind: dummy}
  design: {style: cloth}
books:
"""


def book(title: str, height: float, thickness: float, colour: str = "#334455", space: str | None = "low") -> str:
    place = f", space: {space}" if space else ""
    return (
        f"  # about {title}\n"
        f"  - {{title: {title}, size: {{height: {height} mm, width: 14 mm}}, block: {{thickness: {thickness} mm}}, "
        f'design: {{colour: "{colour}"}}{place}}}\n'
    )


SHADES = ("#7a1f2b", "#1f7a2b", "#1f2b7a", "#d8c79a", "#333333")

ROW = HEAD + "".join(
    book(f"Book {number}", 18 + number * 7 % 9, 2 + number % 3, SHADES[number % 5]) for number in range(8)
)


def proposal_of(path: Path, *, rule: Rule | None = None, keep: frozenset[str] = frozenset()) -> Proposal:
    checked = check(path)
    wishes = checked.plan.spec.arrange.model_copy(update={"by": rule} if rule else {})
    return proposed(checked.plan, entries_of(checked.shelf, checked.plan), wishes, keep)


def write(path: Path, proposal: Proposal) -> None:
    checked = check(path)
    entries = entries_of(checked.shelf, checked.plan)
    done = edited(checked.shelf, list(arranging_edits(checked.plan, entries, proposal)))
    assert not isinstance(done, tuple) or all(isinstance(one, EditedFile) for one in done)
