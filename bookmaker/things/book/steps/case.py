"""The steps of a hard cover."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.quantities import counted
from ....paper.glue import glue_called
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat, Role
from ...common_steps import BEFORE, FOLDING, KNIFE, PRESS, count_folds, film_steps, glue_over, print_step
from ...making import Making, Supply, Unit
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides, thick
from ..covers.case.keys import CaseKeys
from .cover_views import case_view
from .job import BookJob, cover_measure, measure_cover_step

__all__ = ["case_making"]

TIP = 1.0
"""How wide an endpaper is tipped to the block, in mm (common practice)."""

COVERING = ("case", "case spine", "case side", "case corner")
"""The kinds of flat that cover the boards."""


def case_making(job: BookJob, entry: CaseKeys) -> Making:
    """Boards cut, covered and turned in; the block hung in the case."""
    flats = job.cover.flats
    return Making(
        heading=f"The cover: a case in {entry.binding} binding",
        steps=tuple(_steps(job, entry)),
        figures=(
            case_view(job, entry),
            flat_figure(flats[0], job.bench.room, f"The {flats[0].name}"),
        ),
        tools=(*KNIFE, *FOLDING, *PRESS, "fine sandpaper", "flat brush", "needle and pencil"),
        supplies=tuple(_supplies(job, entry)),
        measures=(cover_measure(job),),
    )


def _boards(job: BookJob) -> tuple[CutPart, CutPart | None]:
    parts = {part.what: part for part in job.cover.cut_list}
    return parts["board"], parts.get("stiffener")


def _of(job: BookJob, kind: str) -> list[Flat]:
    return [flat for flat in job.cover.flats if flat.kind == kind]


def _supplies(job: BookJob, entry: CaseKeys) -> Iterator[Supply]:
    """Paste under all covering, under the pastedowns, and where endpapers are tipped on."""
    page = job.page
    for flat in job.cover.flats:
        if flat.kind in COVERING:
            yield glue_over("paste or PVA", [panel.rect for panel in flat.panels])
    if entry.endpapers:
        film = job.bench.stocks[entry.endpapers].glue
        yield Supply(glue_called(film), 2 * page.height * (page.width + TIP), Unit.AREA, film)
    elif not job.block.pastedowns:
        yield Supply("paste or PVA", 2 * page.height * page.width, Unit.AREA)


def _steps(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    yield from _cutting(job, entry)
    kinds = [kind for kind in COVERING if _of(job, kind)]
    yield print_step(job.bench, *kinds)
    yield from film_steps(job.bench, *(flat for kind in kinds for flat in _of(job, kind)[:1]))
    yield from _covering(job, entry)
    yield from _turning_in(job, entry)
    yield from _endpapers(job, entry)
    yield from _hanging(job, entry)


def _cutting(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    board, stiffener = _boards(job)
    text = (
        f"Cut two boards of {board.material}, {thick(board.thickness)} thick: {thick(board.height)} high, "
        f"{thick(board.width)} wide"
    )
    if stiffener:
        text += (
            f"; and a stiffener of {stiffener.material}, {thick(stiffener.thickness)} thick: "
            f"{thick(stiffener.height)} high, {thick(stiffener.width)} wide"
        )
    yield f"{text}. The grain runs along the height. Smooth the edges with fine sandpaper, and do not breathe the dust."
    if entry.templates:
        yield (
            f"For this there are templates on {job.bench.prints.where('board template') or BEFORE}: cut each out "
            "with its marks around it, tape them to the board by the margin, and cut through both from mark "
            "to mark, in many light strokes. Then take the paper off."
        )


def _covering(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    stiffener = _boards(job)[1]
    joint_width = next(
        panel.rect.width for flat in job.cover.flats for panel in flat.panels if panel.role is Role.JOINT
    )
    places = "the edges of boards and stiffener" if stiffener else "the edges of the boards and of the bare back"
    joints = f"{long(joint_width)} between board and {'stiffener' if stiffener else 'back'} on either side"
    if not stiffener:
        joints += f", {long(job.cover.spine)} for the back"
    if covering := _of(job, "case"):
        flat = covering[0]
        yield (
            f"While the sheet is whole, prick the marks of the covering's folds ({count_folds(flat.folds)}) through "
            f"to the back with a needle, and join the pricks there in pencil, across the covering: they are {places}. "
            f"Then cut the covering out on its lines, {sides(flat.size)} high and wide, the four corners at 45° too."
        )
        yield (
            f"Paste the back of the covering thinly, lay {'boards and stiffener' if stiffener else 'the boards'} on "
            f"their places, {joints}, {long(entry.turn_in)} from every edge, and rub them down."
        )
        return
    yield from _pieces(job, entry, places, joints)


def _pieces(job: BookJob, entry: CaseKeys, places: str, joints: str) -> Iterator[str]:
    """Spine piece, sides and corners of a quarter or half binding."""
    (spine,) = _of(job, "case spine")
    board_shown = next(panel.rect.width for panel in spine.panels if panel.role is Role.BACK)
    every = [f"the spine piece, {sides(spine.size)}"]
    if corners := _of(job, "case corner"):
        every.append(f"{counted(len(corners), 'corner')}, {sides(corners[0].size)}")
    side_pieces = _of(job, "case side")
    every.append(f"{counted(len(side_pieces), 'side')}, {sides(side_pieces[0].size)}")
    yield (
        "While the sheets are whole, prick the marks of every fold through to the back with a needle, and join the "
        f"pricks there in pencil, across the piece: they are {places}. Then cut out {as_list(every)} high and wide, "
        "on their lines."
    )
    middle = "lay the stiffener in the middle" if _boards(job)[1] else "leave room for the back in the middle"
    yield (
        f"The spine piece goes on first: paste its back, {middle} "
        f"and a board on either side, {joints}; it reaches {long(board_shown + entry.lap)} onto each board, of "
        f"which {long(board_shown)} will show. Turn it in at head and tail, {long(entry.turn_in)}, and rub it down."
    )
    if corners:
        yield (
            "Then the corners: paste each, lay it across its corner of the board, and turn it in, "
            f"{long(entry.turn_in)} wide, nipped in at the corner."
        )
    yield (
        f"Last the sides: each lies {long(entry.lap)} over the spine "
        f"piece{' and over the corners' if corners else ''}. Paste it, lay its straight edge parallel to the spine, "
        "and rub it down."
    )


def _turning_in(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    boards = "The stiffener is turned in together with head and tail. " if _boards(job)[1] else ""
    yield (
        f"Turn in head and tail over the boards, {long(entry.turn_in)} each, nip the covering in at the corners "
        f"with a bone folder, then turn in the fore-edges. {boards}Dry the case flat between waste paper and "
        "pressing boards under the weight, overnight."
    )


def _endpapers(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    if not entry.endpapers:
        return
    endpapers = _of(job, "endpaper")
    yield (
        f"Cut out {counted(len(endpapers), 'endpaper')}, {sides(endpapers[0].size)} high and wide: they are on "
        f"{job.bench.prints.where('endpaper') or BEFORE}."
    )
    yield (
        f"Fold each endpaper face to face, a valley in the middle, and tip it to the block with {long(TIP)} of "
        "paste along the spine, the flyleaf side towards the block. Dry it under the weight for an hour."
    )


def _hanging(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    board = _boards(job)[0]
    joint = job.page.width + entry.square - board.width
    back = "the back touches the stiffener" if entry.stiffener != "none" else "the back touches the covering"
    yield (
        f"Lay the block in the case dry, front to front and head to head: the squares are {long(entry.square)} at "
        f"head, tail and fore-edge, and {back}; the joint between back and board is {long(joint)}. Keep paste off "
        "the spine."
    )
    ends = "the pastedown" if entry.endpapers or job.block.pastedowns else "the first page"
    if not job.block.pages and not entry.endpapers:
        ends = "the face of the block"
    waste = "" if ends == "the face of the block" else f"Put waste paper under {ends}, paste"
    start = f"{waste} it thinly, take the waste away, " if waste else f"Paste {ends} thinly "
    yield (
        f"{start}and close the board on it. Turn the book over and do the same at the other end. The joint lies "
        "straight across: do not press it in, or the boards are drawn towards the spine."
    )
    yield "Dry the book for a day between pressing boards under the weight, with a folded paper inside each cover."
    yield measure_cover_step(job)
