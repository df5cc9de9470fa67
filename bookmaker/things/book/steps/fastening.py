"""The steps that hold sheets together by their folds: pricked, then sewn or stapled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ....ground.quantities import counted
from ....ground.told import figure, in_units, unit
from ...making import caution, drawn
from ...wording import as_list, in_words
from ..blocks.section_keys import SectionKeys
from .sewing_views import KETTLE

__all__ = ["fastening_steps"]

TIGHT = "Draw every stitch tight along the fold. Drawn across it, the thread cuts the paper."


def fastening_steps(entry: SectionKeys, sections: int, holes: Sequence[float], shown: str) -> Iterator[str]:
    """So many sections with holes so many mm above the tail, fastened as the drawing of a name shows it.

    Glued sheets are fastened as they are laid into one another.
    """
    if entry.fastening == "glued":
        return
    yield from _pricking(holes)
    if entry.fastening == "stapled":
        yield from _stapling(len(holes) // 2, shown)
    elif sections == 1:
        yield f"Sew the section, hole by hole in the order of the numbers {drawn(shown)}."
        yield "Tie the two ends inside, over the stitch that passes."
        yield TIGHT
    else:
        yield from _sewing(entry, shown)


def _pricking(holes: Sequence[float]) -> Iterator[str]:
    places = as_list([figure(hole, 1) for hole in holes])
    yield "Lay each section over the folded card like a roof, open in the middle, its fold up."
    yield caution("the point of the needle is sharp; keep your fingers out of its way.")
    yield (
        f"Prick {in_words(len(holes))} holes through the fold with the needle, at the marks on its back. They are "
        f"{places} {unit()} above the tail of the page."
    )


def _stapling(staples: int, shown: str) -> Iterator[str]:
    yield f"Bend {counted(staples, 'staple')} of wire, each as wide as its two holes are apart."
    yield f"Push each through its pair of holes from outside {drawn(shown, 'a')}."
    yield caution("the ends of the wire are sharp.")
    yield f"Turn the ends over inside with the tweezers {drawn(shown, 'b')}."


def _sewing(entry: SectionKeys, shown: str) -> Iterator[str]:
    """Several sections, from the first to the last."""
    to_tie = f"{in_units('50 mm', '2 in')} of thread hang out there, to be tied"
    if entry.sewing == "two on":
        yield (
            f"Sew sections 1 and 2 from head to tail, by turns through the one and the other {drawn(shown)}: {to_tie}."
        )
        yield TIGHT
        yield "Sew on the next two in the same way, back from tail to head, and so on."
    else:
        yield f"Sew section 1 from head to tail {drawn(shown)}: {to_tie}."
        yield TIGHT
        yield "Sew section 2 on it, back from tail to head, and so on."
    yield "Tie the thread to the end that hangs out, when you come back to it."
    yield f"Tie it at each further end to the section below with a kettle stitch {drawn(KETTLE)}."
