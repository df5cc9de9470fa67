"""The steps of a framed picture."""

from __future__ import annotations

from collections.abc import Iterator

from ..common_steps import KNIFE, film_steps, print_step
from ..making import Bench, Chapter, Figure, Making, Supply, Unit
from ..wording import sides, thick
from .entry import FrameEntry
from .plan import FramePlan
from .views import front_view

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
        figures=(_figure(frame, bench.room),),
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


def _figure(frame: FramePlan, room: float) -> Figure:
    return front_view(frame.sizes, frame.thing.entry.rails, room)


def _steps(frame: FramePlan, bench: Bench) -> Iterator[str]:
    entry, sizes = frame.thing.entry, frame.sizes
    yield print_step(bench, *(flat.kind for flat in frame.flats))
    yield from film_steps(bench, *frame.flats)
    if entry.mount:
        yield (
            f"Cut the window of the mount first, {sides(sizes.window.size) if sizes.window else ''}, in several light "
            "strokes from corner to corner; then cut the mount out. Its foot is wider than its top."
        )
        yield f"Cut the picture out, {sides(sizes.picture)}, and glue it behind the window, the same edge all round."
    else:
        yield f"Cut the picture out, {sides(sizes.picture)}."
    yield from _sawing(frame)
    yield from _wrapping(frame, bench)
    yield from _on_jig(frame)
    yield from _closing(frame)


def _sawing(frame: FramePlan) -> Iterator[str]:
    rails, (level, upright) = frame.thing.entry.rails, frame.sticks
    yield (
        "Hold the strip firmly in the mitre box, keep your fingers behind the saw, and wear a mask when you sand. Saw "
        "each pair one after the other, and sand both ends together until they are alike."
    )
    if rails.corners == "mitre":
        yield (
            f"Saw two rails of {thick(level.length)} and two of {thick(upright.length)}, both ends at 45°; these are "
            f"the long sides, and the short sides are {thick(level.shorter_side)} and {thick(upright.shorter_side)}."
        )
    else:
        yield (
            f"Saw two level rails of {thick(level.length)} and two upright ones of {thick(upright.length)}, all ends "
            "square. The upright ones stand between the level ones."
        )


def _wrapping(frame: FramePlan, bench: Bench) -> Iterator[str]:
    """The paper round each rail."""
    wraps = [flat for flat in frame.flats if flat.kind == "wrap"]
    if not wraps:
        return
    yield (
        "Score the papers of the rails at their marks and cut them out: their slanting ends are the mitres. Paste one "
        f"with {bench.glue_of(wraps[0])}, lay the core on its face between the two scores, and fold it over the side "
        "at the picture, over the outer side, and round the back. The gilt or shaded edge comes to the picture."
    )


def _on_jig(frame: FramePlan) -> Iterator[str]:
    """Glued square: on the jig, or against a square of card."""
    if any(flat.kind == "jig" for flat in frame.flats):
        yield (
            "Glue the jig on thick card, prick its eight marks, and lay baking paper over it. Push pins through the "
            "marks: the outer four hold the corners of the frame from outside, the inner four from inside. Glue the "
            f"rails between them, and let them dry for an hour{_stain(frame)}"
        )
        return
    yield (
        "Pin the square of card to the board and put the frame together dry against it. Lay the diagonals against each "
        "other with a strip of paper: both are alike when the frame is square. Glue the corners, press them, and "
        f"let them dry for an hour{_stain(frame)}"
    )


def _stain(frame: FramePlan) -> str:
    """What ends the gluing of the corners: bare wood is stained then, wrapped rails are done."""
    if any(flat.kind == "wrap" for flat in frame.flats):
        return ". Follow the label of the glue."
    return "; then stain or paint the frame. Follow the labels of glue and stain, and let air in."


def _closing(frame: FramePlan) -> Iterator[str]:
    entry = frame.thing.entry
    parts = [
        *(["the glazing, wiped clean"] if entry.glazing else []),
        "the mount with its picture" if entry.mount else "the picture",
        *(["the backing"] if entry.backing else []),
    ]
    if entry.rails.rebate:
        yield f"Lay the frame on its face, and put into the step behind it: {', then '.join(parts)}. Glue the last one."
        return
    yield (
        f"Lay the frame on its face, and lay on it: {', then '.join(parts)}. The rails cover "
        f"{thick(entry.rails.covers)} of the edge on every side. {_held_by(entry)}"
        if entry.backing
        else f"Lay the frame on its face, and glue its edge to it: {', then '.join(parts)}."
    )


def _held_by(entry: FrameEntry) -> str:
    """What the backing is glued to: the rails themselves, or strips that come as far back as what lies on them."""
    if not entry.glazing and not entry.mount:
        return "Glue the backing to the rails, not to the picture."
    return (
        "Glue strips of card as thick as all that lies under the backing to the backs of the rails, close beside it, "
        "and the backing on these, not on the picture."
    )
