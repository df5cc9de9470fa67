"""The steps of a framed picture."""

from __future__ import annotations

from collections.abc import Iterator

from ..common_steps import KNIFE, spray_caution
from ..making import Bench, Chapter, Making, Manner, Supply, Unit, caution, drawn
from ..wording import sides, thick
from .entry import FrameEntry
from .manners import MITRED, SQUARE_HELD, WRAPPED, held_square, mitred_rails, wrapped_rail
from .plan import FramePlan
from .views import front_view, section_view

__all__ = ["frame_chapter"]

SAW = ("razor saw and mitre box", "fine sandpaper on a flat block")
SQUARE = ("a square of card with a true corner", "flat board and pins")


def frame_chapter(frame: FramePlan, bench: Bench) -> Chapter:
    """What it is, and how it is printed, sawn and put together."""
    sizes, rails = frame.sizes, frame.thing.entry.rails
    glued = 4 * rails.face * rails.depth + 2 * sum(sizes.outside) * rails.covers
    making = Making(
        heading="The frame",
        steps=tuple(_steps(frame, bench)),
        takes=tuple(dict.fromkeys(flat.kind for flat in frame.flats)),
        figures=(
            front_view(sizes, rails, bench.room),
            section_view(frame.thing.entry, bench.room),
        ),
        manners=tuple(_manners(frame, bench)),
        tools=(*KNIFE, *SAW, *SQUARE),
        supplies=(Supply("wood glue or PVA", glued, Unit.AREA),),
    )
    figures = (
        ("picture", sides(sizes.picture)),
        ("seen between the rails", sides(sizes.sight)),
        ("outside", sides(sizes.outside)),
    )
    wrapped = ", with printed paper round it" if rails.wrap else ""
    about = (
        f"A picture in a frame of {rails.material}, {thick(rails.face)} wide and {thick(rails.depth)} deep{wrapped}."
    )
    return Chapter(f"Frame: {frame.name}", about, (making,), figures)


def _manners(frame: FramePlan, bench: Bench) -> Iterator[Manner]:
    """How its corners are sawn and held square; wrapped rails besides."""
    entry = frame.thing.entry
    if entry.rails.corners == "mitre":
        yield mitred_rails(bench.room, rebate=bool(entry.rails.rebate))
    if entry.rails.wrap:
        yield wrapped_rail(bench.room)
    if not entry.jig:
        yield held_square(bench.room)


def _steps(frame: FramePlan, bench: Bench) -> Iterator[str]:
    entry, sizes = frame.thing.entry, frame.sizes
    if entry.mount:
        window = f", {sides(sizes.window.size)}" if sizes.window else ""
        yield f"Cut the window of the mount first{window}, in several light strokes from corner to corner."
        yield "Cut the mount out. Its foot is wider than its top."
    yield f"Cut the picture out, {sides(sizes.picture)}."
    if entry.mount:
        yield "Glue the picture behind the window, the same edge all round."
    yield from _sawing(frame)
    yield from _wrapping(frame, bench)
    yield from _on_jig(frame)
    yield from _closing(frame)


def _sawing(frame: FramePlan) -> Iterator[str]:
    rails, (level, upright) = frame.thing.entry.rails, frame.sticks
    yield caution("hold the strip firmly in the mitre box, and keep your fingers behind the saw.")
    if rails.corners == "mitre":
        yield (
            f"Saw two rails of {thick(level.length)} and two of {thick(upright.length)}, both ends at 45°, each pair "
            f"one after the other {drawn(MITRED)}. These are the long sides, and the short sides are "
            f"{thick(level.shorter_side)} and {thick(upright.shorter_side)}."
        )
    else:
        yield (
            f"Saw two level rails of {thick(level.length)} and two upright ones of {thick(upright.length)}, all ends "
            "square. The upright ones stand between the level ones."
        )
    yield caution("dust is not for lungs. Wear a mask when you sand, and wipe up damp.")
    yield "Sand both rails of a pair together, until their ends are alike."


def _wrapping(frame: FramePlan, bench: Bench) -> Iterator[str]:
    """The paper round each rail."""
    wraps = [flat for flat in frame.flats if flat.kind == "wrap"]
    if not wraps:
        return
    glue = bench.glue_of(wraps[0])
    yield "Score the papers of the rails at their marks."
    yield "Cut them out. Their slanting ends are the mitres."
    yield from spray_caution(glue)
    yield f"Spread {glue} on the back of one."
    yield f"Lay the core on it, its face between the two scores {drawn(WRAPPED, 'a')}."
    yield (
        f"Fold the paper over the side at the picture, over the outer side, and round the back {drawn(WRAPPED, 'b')}. "
        "The gilt or shaded edge comes to the picture."
    )
    yield "Wrap the other rails in the same way."


def _on_jig(frame: FramePlan) -> Iterator[str]:
    """Glued square: on the jig, or against a square of card."""
    stained = not any(flat.kind == "wrap" for flat in frame.flats)
    if any(flat.kind == "jig" for flat in frame.flats):
        yield "Glue the jig on thick card."
        yield "Prick its eight marks."
        yield "Lay baking paper over it."
        yield (
            "Push pins through the marks. The outer four hold the corners of the frame from outside, the inner four "
            "from inside."
        )
        yield "Glue the rails between the pins."
    else:
        yield f"Pin the square of card to the board {drawn(SQUARE_HELD, 'a')}."
        yield "Put the frame together dry against it."
        yield (
            f"Lay the two diagonals off on a strip of paper {drawn(SQUARE_HELD, 'b')}. Both are alike when the frame "
            "is square."
        )
        yield "Glue the corners."
    yield "Leave it pressed together for an hour, until it is dry."
    if stained:
        yield caution("follow the labels of glue and stain, and let air in.")
        yield "Stain or paint the frame."


def _closing(frame: FramePlan) -> Iterator[str]:
    entry = frame.thing.entry
    parts = [
        *(["the glazing, wiped clean"] if entry.glazing else []),
        "the mount with its picture" if entry.mount else "the picture",
        *(["the backing"] if entry.backing else []),
    ]
    inside = f"{', then '.join(parts)}"
    if entry.rails.rebate:
        yield f"Lay into the step behind the frame, which lies on its face: {inside}."
        yield f"Glue {'the backing' if entry.backing else 'the last one'} to the frame."
    elif entry.backing:
        yield (
            f"Lay on the back of the frame, which lies on its face: {inside}. The rails cover "
            f"{thick(entry.rails.covers)} of the edge on every side."
        )
        yield from _held_by(entry)
    else:
        yield f"Glue to the back of the frame, which lies on its face: {inside}. Only the edge is glued."


def _held_by(entry: FrameEntry) -> Iterator[str]:
    """What the backing is glued to: the rails themselves, or strips that come as far back as what lies on them."""
    if not entry.glazing and not entry.mount:
        yield "Glue the backing to the rails, not to the picture."
        return
    yield (
        "Glue strips of card, as thick as all that lies under the backing, to the backs of the rails, close beside it."
    )
    yield "Glue the backing on these strips, not on the picture."
