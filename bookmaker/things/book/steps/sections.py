"""The steps of folded sections, sewn, stapled or glued."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from ....ground.quantities import counted
from ....ground.thin import print_caliper
from ....ground.told import figure, unit
from ....paper.glue import glue_called
from ....sheets.flat import Flat, MarkKind
from ...common_steps import FOLDING, KNIFE, PRESS, SCORING, count_folds, spray_caution
from ...making import Making, Manner, Supply, Unit, drawn
from ...views.flat_view import flat_figure
from ...wording import as_list, in_words, long, numbered, sides
from ..blocks.section_keys import SectionKeys
from .block_views import sections_view
from .fastening import fastening_steps
from .folding_views import Over, folded_sheet
from .job import BookJob, block_measure, glue_areas, measure_block_steps, spine_glue
from .sewing_views import kettle_stitch, one_section, several_sections, stapled

__all__ = ["sections_making", "thread_length", "wire_length"]

FOLDED_FROM = {"quarto": 4, "octavo": 8}
"""Leaves of a sheet that is folded more than once."""

HOLD, LEG = 150.0, 3.0
"""Thread to hold on to and to tie, and each leg of a staple, in mm (common practice)."""


def thread_length(sections: int, height: float, *, two_on: bool) -> float:
    """Thread for a block, in mm: along the spine once a section, two on once for two, once more for the ties, and ends.

    Four sections of 21 mm take 5 · 21 + 150 mm (common practice; the published rule is "once a section").

    >>> thread_length(4, 21, two_on=False), thread_length(4, 21, two_on=True)
    (255.0, 213.0)
    """
    return (ceil(sections / 2 if two_on else sections) + 1) * height + HOLD


def wire_length(holes: Sequence[float]) -> float:
    """Wire for the staples of a block, in mm: each from hole to hole, with two legs.

    >>> wire_length([2.0, 8.0, 13.0, 19.0])
    24.0
    """
    pairs = zip(holes[::2], holes[1::2], strict=True)
    return sum(upper - lower + 2 * LEG for lower, upper in pairs)


def sections_making(job: BookJob, entry: SectionKeys) -> Making:
    """Sheets folded and nested, sections gathered, fastened, and glued at the spine."""
    flats = job.block.flats
    stock = job.bench.stocks[entry.stock]
    gathered = _gathered(flats)
    manners = tuple(_manners(job, entry, gathered))
    return Making(
        heading="The pages: folded sections",
        steps=tuple(_steps(job, entry, gathered, manners)),
        takes=("section sheet",),
        figures=(
            sections_view(job, [_nested(section) for section in gathered], entry.fastening),
            flat_figure(flats[0], job.bench.room, "The outermost sheet of section 1"),
        ),
        manners=manners,
        tools=tuple(_tools(entry)),
        supplies=(
            *glue_areas(job, stock),
            spine_glue(job),
            *_fastening_supplies(job, entry, gathered),
        ),
        measures=(block_measure(job),),
    )


def _gathered(flats: Sequence[Flat]) -> list[list[Flat]]:
    """The sheets of each section; a new one begins with the sheet that bears its marks or a lower first page."""
    sections: list[list[Flat]] = []
    for flat in flats:
        if not sections or not _inside(sections[-1][-1], flat):
            sections.append([])
        sections[-1].append(flat)
    return sections


def _inside(outer: Flat, flat: Flat) -> bool:
    """Whether a sheet lies inside the one before: its pages stand between those of the other."""
    return flat.name.partition(",")[0] == outer.name.partition(",")[0]


def _nested(section: Sequence[Flat]) -> list[str]:
    """What stands on each pair of leaves of a section, the outermost first, however often its sheets are folded."""
    panels = sum(len(sheet.panels) for sheet in section)
    first, printed = min(section[0].pages), [page for sheet in section for page in sheet.pages]
    pairs = []
    for depth in range(panels // 4):
        low, high = first + 2 * depth, first + panels - 2 - 2 * depth
        shown = [f"{page}–{page + 1}" for page in (low, high) if page + 1 in printed]
        pairs.append(f"pages {', '.join(shown)}" if shown else "blank")
    return pairs


def _pages(flat: Flat) -> str:
    pages = sorted(flat.pages)
    middle = next((at for at in range(1, len(pages)) if pages[at] != pages[at - 1] + 1), None)
    if not pages:
        return "blank"
    parts = [pages] if middle is None else [pages[:middle], pages[middle:]]
    return "pages " + ", ".join(f"{part[0]}–{part[-1]}" if len(part) > 1 else str(part[0]) for part in parts)


def _holes(flats: Sequence[Flat]) -> list[float]:
    """How far above the tail of the page each hole lies."""
    first = flats[0]
    tail = min(panel.rect.y for panel in first.panels if panel.page is not None)
    return [mark.rect.centre.y - tail for mark in first.marks if mark.kind is MarkKind.HOLE]


def _tools(entry: SectionKeys) -> Iterator[str]:
    yield from (*KNIFE, *(SCORING if entry.scored else ()), *FOLDING, *PRESS, "flat brush")
    if entry.fastening == "sewn":
        yield from ("fine needle", "folded card to prick sections on")
    elif entry.fastening == "stapled":
        yield from ("fine needle", "tweezers", "pliers")


def _fastening_supplies(job: BookJob, entry: SectionKeys, gathered: Sequence[Sequence[Flat]]) -> Iterator[Supply]:
    height = job.page.height
    if entry.fastening == "sewn":
        length = thread_length(len(gathered), height, two_on=entry.sewing == "two on")
        yield Supply(f"thread, {print_caliper(entry.thread)} thick", length, Unit.LENGTH)
    elif entry.fastening == "stapled":
        yield Supply(f"wire, {print_caliper(entry.thread)} thick", wire_length(_holes(gathered[0])), Unit.LENGTH)
    else:
        folds = sum(len(section) - 1 for section in gathered)
        yield Supply("PVA", folds * height, Unit.AREA)


def _manners(job: BookJob, entry: SectionKeys, gathered: Sequence[Sequence[Flat]]) -> Iterator[Manner]:
    """How its sheets are folded, and how they are held together, which comes last."""
    yield folded_sheet(entry.fold, _folds(job, entry), job.bench.room)
    holes, room = len(_holes(gathered[0])), job.bench.room
    if entry.fastening == "stapled":
        yield stapled(room)
    elif entry.fastening == "sewn" and len(gathered) == 1:
        yield one_section(holes)
    elif entry.fastening == "sewn":
        yield kettle_stitch(room)
        yield several_sections(holes, two_on=entry.sewing == "two on")


def _folds(job: BookJob, entry: SectionKeys) -> tuple[Over, ...]:
    """Which half goes over, fold by fold, the front of the sheet below."""
    over = Over.LEFT if job.right_to_left else Over.RIGHT
    match entry.fold:
        case "folio":
            return (over,)
        case "quarto":
            return Over.UPPER, over
        case "octavo":
            return over, Over.UPPER, over


def _steps(
    job: BookJob, entry: SectionKeys, gathered: Sequence[Sequence[Flat]], manners: Sequence[Manner]
) -> Iterator[str]:
    flats = job.block.flats
    yield "Score every fold on the front, the side with its label, from mark to mark."
    yield _cutting(flats, max(gathered, key=len))
    yield from _folding(job, entry, gathered, drawn(manners[0].name))
    if len(gathered) > 1:
        yield (
            f"Gather the {in_words(len(gathered))} sections in order, {_spans(gathered)}. The bars on the backs of "
            "their folds make a stair that goes down evenly from head to tail; a step out of place is a section "
            "out of place."
        )
    yield from fastening_steps(entry, len(gathered), _holes(gathered[0]), manners[-1].name)
    yield "Press the block between pressing boards."
    yield "Brush PVA thinly over its spine."
    yield "Leave it under the weight for two hours, until it is dry."
    if entry.trimmed:
        yield (
            f"Trim fore-edge, head and tail along the dotted lines in the corners that go. {long(entry.trimmed)} comes "
            f"off each, and the block is {sides(job.page)} wide and high."
        )
    thickest = ", where the thread makes it thickest" if entry.fastening == "sewn" else ""
    yield from measure_block_steps(job, f" at the spine{thickest}")


def _cutting(flats: Sequence[Flat], section: Sequence[Flat]) -> str:
    """All sheets; those of the largest section show how much narrower the inner ones are."""
    first, *others = (sheet.size.width for sheet in section)
    text = f"Cut out {counted(len(flats), 'sheet')}, {long(first)} wide and {long(flats[0].size.height)} high."
    if long(others[-1] if others else first) == long(first):
        return text
    inner = as_list([figure(width, 1) for width in others])
    sheets = numbered("sheet", range(2, len(section) + 1))
    return (
        f"{text} Inside sheet 1, {sheets} of a section {'is' if len(others) == 1 else 'are'} only {inner} {unit()} "
        "wide, narrower by what they creep."
    )


def _spans(gathered: Sequence[Sequence[Flat]]) -> str:
    """The pages of each section, or of the first and the last if there are many."""
    spans = []
    for section in gathered:
        pages = [page for sheet in section for page in sheet.pages]
        spans.append(f"{min(pages)}–{max(pages)}" if pages else "blank")
    if len(spans) > 6:
        return f"pages {spans[0]}, {spans[1]} and so on to {spans[-1]}"
    return f"pages {as_list(spans)}"


def _folding(job: BookJob, entry: SectionKeys, gathered: Sequence[Sequence[Flat]], shown: str) -> Iterator[str]:
    if entry.one_side:
        yield from _doubled(job, entry)
    if entry.fold == "folio":
        yield (
            f"Fold each sheet in the middle, its first page in front {shown}. As you look at its front, the side with "
            "its label, the fold is a mountain."
        )
    else:
        yield "Lay each sheet with its front, the side with its label, down, its first page at the foot."
        for over in _folds(job, entry):
            other = {Over.LEFT: "right", Over.RIGHT: "left", Over.UPPER: "lower"}[over]
            down = "down over" if over is Over.UPPER else "over"
            yield f"Fold the {over.value} half {down} the {other} {shown}. The fold is sharpened before the next one."
        yield (
            f"Turn it over: its first page lies in front. The sheet has {FOLDED_FROM[entry.fold]} leaves, and the "
            "folds at head and fore-edge stay closed until the block is trimmed."
        )
    sheets = gathered[0]
    if len(sheets) > 1:
        order = "; ".join(f"sheet {number} {_pages(sheet)}" for number, sheet in enumerate(sheets, start=1))
        if entry.fastening == "glued":
            yield "Run a thin line of PVA along the inside of a fold, each time before the next sheet comes into it."
        yield f"Lay the sheets of each section into one another, sheet 1 outside. Section 1: {order}."
        yield "Run the bone folder along the fold of each section."
        if entry.fastening == "glued":
            yield "Press each section until it is dry."


def _doubled(job: BookJob, entry: SectionKeys) -> Iterator[str]:
    """Sheets of two layers, printed on one side."""
    glue = glue_called(job.bench.stocks[entry.stock].glue)
    yield f"Fold each strip in the middle with the print outwards ({count_folds(job.block.flats[0].folds)} as printed)."
    yield from spray_caution(glue)
    yield f"Glue the backs of each strip together with {glue}."
    yield "Press the strips until they are dry."
