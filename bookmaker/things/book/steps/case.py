"""The steps of a hard cover."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.quantities import counted
from ....paper.glue import glue_called
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat, Role
from ...common_steps import BEFORE, FOLDING, KNIFE, PRESS, count_folds, glue_over, spray_caution
from ...making import Making, Manner, Supply, Unit, caution, drawn
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides, thick
from ..covers.case.keys import CaseKeys
from .corner_views import CORNER_OF_BOARD, corner_of_board
from .cover_views import case_view
from .hanging_view import HUNG, hung_in_case
from .job import BookJob, cover_measure, measure_cover_step
from .pieces_view import PIECES, pieces_in_order
from .pricking_view import PRICKED, pricked_marks

__all__ = ["case_making"]

TIP = 1.0
"""How wide an endpaper is tipped to the block, in mm (common practice)."""

BARE_FACE = "the face of the block"
"""What is pasted of a block that has neither pages nor endpapers."""

COVERING = ("case", "case spine", "case side", "case corner")
"""The kinds of flat that cover the boards."""


def case_making(job: BookJob, entry: CaseKeys) -> Making:
    """Boards cut, covered and turned in; the block hung in the case."""
    flats = job.cover.flats
    return Making(
        heading=f"The cover: a case in {entry.binding} binding",
        steps=tuple(_steps(job, entry)),
        takes=tuple(dict.fromkeys(flat.kind for flat in flats)),
        figures=(
            case_view(job, entry),
            flat_figure(flats[0], job.bench.room, f"The {flats[0].name}"),
        ),
        manners=tuple(_manners(job, entry)),
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


def _manners(job: BookJob, entry: CaseKeys) -> Iterator[Manner]:
    yield pricked_marks(job.bench.room)
    if _of(job, "case side"):
        yield pieces_in_order(job.bench.room, corners=bool(_of(job, "case corner")))
    yield corner_of_board(job.bench.room)
    if _pasted_end(job, entry) != BARE_FACE:
        yield hung_in_case(job.bench.room)


def _steps(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    yield from _cutting(job, entry)
    yield from _covering(job, entry)
    yield from _turning_in(job, entry)
    yield from _endpapers(job, entry)
    yield from _hanging(job, entry)


def _cutting(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    board, stiffener = _boards(job)
    if entry.templates:
        where = job.bench.prints.where("board template") or BEFORE
        yield f"Take the board templates, which lie on their sides, from {where}."
        yield "Cut each template out with its marks around it."
        yield (
            "Tape the templates to the board by the margin. You cut through both from mark to mark, in many light "
            "strokes, and then take the paper off."
        )
    yield f"Cut two boards of {_cut_to(board)}."
    if stiffener:
        yield f"Cut a stiffener of {_cut_to(stiffener)}."
    yield caution("dust is not for lungs. Wear a mask when you sand, and wipe up damp.")
    yield "Smooth the edges with fine sandpaper."


def _cut_to(part: CutPart) -> str:
    """What a part is cut from, and how large."""
    return (
        f"{part.material}, {thick(part.thickness)} thick: {thick(part.width)} wide, {thick(part.height)} high, the "
        "grain along the height"
    )


def _covering(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    stiffener = _boards(job)[1]
    joint_width = next(
        panel.rect.width for flat in job.cover.flats for panel in flat.panels if panel.role is Role.JOINT
    )
    places = "the edges of boards and stiffener" if stiffener else "the edges of the boards and of the bare back"
    joints = (
        f"{long(joint_width)} between board and {'stiffener' if stiffener else 'back'} on either side (folded, "
        f"a joint of {long(_joint(job, entry))})"
    )
    if not stiffener:
        joints += f", {long(job.cover.spine)} for the back"
    if covering := _of(job, "case"):
        flat = covering[0]
        yield from _pricking(f"the covering's folds ({count_folds(flat.folds)})", "the covering", places)
        yield (
            f"Cut the covering out on its lines, {sides(flat.size)} wide and high, the four corners at 45° too "
            f"{drawn(CORNER_OF_BOARD, 'a')}."
        )
        yield "Paste the back of the covering thinly."
        yield (
            f"Lay {'boards and stiffener' if stiffener else 'the boards'} on their places: {joints}, "
            f"{long(entry.turn_in)} from every edge."
        )
        yield "Rub them down."
        return
    yield from _pieces(job, entry, places, joints)


def _pricking(folds: str, what: str, places: str) -> Iterator[str]:
    yield f"Prick the marks of {folds} through to the back with a needle {drawn(PRICKED, 'a')}."
    yield f"Join the pricks on the back in pencil, across {what} {drawn(PRICKED, 'b and c')}. They are {places}."


def _pieces(job: BookJob, entry: CaseKeys, places: str, joints: str) -> Iterator[str]:
    """Spine piece, sides and corners of a quarter or half binding."""
    (spine,) = _of(job, "case spine")
    board_shown = next(panel.rect.width for panel in spine.panels if panel.role is Role.BACK)
    every = [f"the spine piece, {sides(spine.size)}"]
    if corners := _of(job, "case corner"):
        every.append(f"{counted(len(corners), 'corner')}, {sides(corners[0].size)}")
    side_pieces = _of(job, "case side")
    every.append(f"{counted(len(side_pieces), 'side')}, {sides(side_pieces[0].size)}")
    yield from _pricking("every fold", "the piece", places)
    yield f"Cut out {as_list(every)} wide and high, on their lines."
    shown = f"{PIECES}, with corners" if corners else PIECES
    middle = "the stiffener in the middle" if _boards(job)[1] else "room for the back in the middle"
    yield f"Paste the back of the spine piece, which goes on first {drawn(shown, 'a')}."
    yield (
        f"Lay on it {middle} and a board on either side: {joints}. It reaches {long(board_shown + entry.lap)} onto "
        f"each board, of which {long(board_shown)} will show."
    )
    yield f"Turn it in at head and tail, {long(entry.turn_in)}."
    yield "Rub it down."
    if corners:
        yield "Paste each corner piece."
        yield f"Lay it across its corner of the board {drawn(shown, 'b')}."
        yield f"Turn it in, {long(entry.turn_in)} wide, nipped in at the corner {drawn(CORNER_OF_BOARD, 'b to d')}."
    yield "Paste the sides."
    yield (
        f"Lay each, its straight edge parallel to the spine, {long(entry.lap)} over the spine "
        f"piece{' and over the corners' if corners else ''} {drawn(shown, 'c' if corners else 'b')}."
    )
    yield "Rub them down."


def _turning_in(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    stiffener = " The stiffener is turned in together with them." if _boards(job)[1] else ""
    yield (
        f"Turn in head and tail over the boards, {long(entry.turn_in)} each {drawn(CORNER_OF_BOARD, 'b')}.{stiffener}"
    )
    if not _of(job, "case corner"):
        yield f"Nip the covering in at the corners with a bone folder {drawn(CORNER_OF_BOARD, 'c')}."
    yield f"Turn in the fore-edges {drawn(CORNER_OF_BOARD, 'd')}."
    yield "Dry the case flat between waste paper and pressing boards under the weight, overnight."


def _endpapers(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    if not entry.endpapers:
        return
    endpapers = _of(job, "endpaper")
    yield (
        f"Cut out {counted(len(endpapers), 'endpaper')}, {sides(endpapers[0].size)} wide and high, from "
        f"{job.bench.prints.where('endpaper') or BEFORE}."
    )
    yield "Fold each endpaper face to face, a valley in the middle."
    yield f"Tip it to the block with {long(TIP)} of paste along the spine, the flyleaf side towards the block."
    yield "Dry it under the weight for an hour."


def _joint(job: BookJob, entry: CaseKeys) -> float:
    """How far the boards stay from the back of the block: less than the covering between them takes, laid flat."""
    return job.page.width + entry.square - _boards(job)[0].width


def _hanging(job: BookJob, entry: CaseKeys) -> Iterator[str]:
    back = "the back touches the stiffener" if entry.stiffener != "none" else "the back touches the covering"
    yield (
        f"Lay the block in the case dry, front to front and head to head. The squares are {long(entry.square)} at "
        f"head, tail and fore-edge, and {back}; the joint between back and board is {long(_joint(job, entry))}."
    )
    end = _pasted_end(job, entry)
    below = f" {drawn(HUNG, 'a')}" if end != BARE_FACE else ""
    if below:
        yield f"Put waste paper under {end}{below}."
    if entry.endpapers:
        yield from spray_caution(glue_called(job.bench.stocks[entry.endpapers].glue))
    yield f"Paste {end} thinly. The spine stays free of paste."
    if below:
        yield "Take the waste paper away."
    closing = f" {drawn(HUNG, 'b')}" if below else ""
    yield (
        f"Close the board on it{closing}. The joint lies straight across: pressed in, it would draw the boards towards "
        "the spine."
    )
    yield "Turn the book over, and do the same at the other end."
    yield "Dry the book for a day between pressing boards under the weight, with a folded paper inside each cover."
    yield measure_cover_step(job)


def _pasted_end(job: BookJob, entry: CaseKeys) -> str:
    """What of the block is pasted to the boards."""
    if entry.endpapers or job.block.pastedowns:
        return "the pastedown"
    return "the first page" if job.block.pages else BARE_FACE
