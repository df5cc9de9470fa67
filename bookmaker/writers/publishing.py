"""All that `make` writes into its folder: sheets, cutting list, machine drawings, what was wished for, the plan."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import accumulate, chain
from pathlib import Path
from typing import NamedTuple

from ..ground.geometry import Size
from ..ground.output import PLAN_NAME, UNSEALED, digest_of, file_names, seal
from ..ground.problems import Problem, Severity
from ..guide import cutting_list_pages, elevation_pages, guide_pages, page_size
from ..paper.stock import Stock, calibration
from ..sheets.impressions import impressions
from ..sheets.layout import Layout, Sheet, lay_out
from ..sheets.toolpaths import tool_sheet
from ..shelf.checked import Checked
from ..shelf.choice import Chosen
from ..shelf.printed.records import Printed
from ..shelf.wishes import Progress, Wishes
from ..shelf_file.whereabouts import whereabouts
from ..things.thing import Plan
from ..typesetting.stand_ins import printable
from .contact_sheet import CONTACT_SHEET, write_contact_sheet
from .leaflet_pdf import write_leaflet
from .plan_json import in_pieces, plan_report
from .proof_spreads import PROOF, write_proof
from .room.mock_up import mock_up_pieces, plain_paper
from .sheets_pdf import write_sheets
from .shelf_front import fronts
from .templates import write_template
from .thumbnails import thumbnails
from .tools.dxf import write_dxf
from .tools.pdf import write_tools_pdf
from .tools.svg import write_svg

__all__ = ["MACHINE_FOLDER", "WrittenFile", "in_vain", "publish"]

GUIDE, CUTTING_LIST = "guide", "cutting list"
"""The names under which these are written."""

MOCK_UP, ELEVATIONS = "mock-up.pdf", "walls-and-desks.pdf"
"""What is written to try the room out, if that is asked for."""

MACHINE_FOLDER = "machine"
"""The folder in the output with the drawings for a cutting machine."""


class WrittenFile(NamedTuple):
    """A file with the number of its sheets, 0 for what has none, and the pages of those that are printed on both sides.

    Front and reverse of a sheet follow each other; `turn` is the edge on which it is turned between them.
    """

    name: str
    sheets: int
    both_sides: tuple[int, ...] = ()
    turn: str = ""


@dataclass(slots=True)
class _Shelved:
    """What has been written: the files in order, and each sheet with its file and its first page there."""

    files: list[str] = field(default_factory=list)
    sheets: list[tuple[str, int, Sheet]] = field(default_factory=list)

    def file(self, name: str) -> WrittenFile:
        """One of them, with what there is to know when it is printed."""
        mine = [(page, sheet) for file, page, sheet in self.sheets if file == name]
        double = [page for page, sheet in mine if sheet.two_sided]
        turn = mine[0][1].stock.printer.turn if mine else ""
        return WrittenFile(name, len(mine), tuple(one for page in double for one in (page, page + 1)), turn)


def publish(
    folder: Path,
    checked: Checked,
    layout: Layout,
    chosen: Chosen,
    wishes: Wishes,
    progress: Progress,
    printed: Callable[[], Printed],
) -> tuple[tuple[WrittenFile, ...], Printed]:
    """Write everything; the files, and where all lies now.

    `printed` gives what is printed once this is, but for where it lies; it is asked when the sheets are drawn.
    """
    extras = _write_extras(folder, checked, chosen, wishes)
    papers = _papers(checked, layout)
    guide, cutting_list, *names = file_names([GUIDE, CUTTING_LIST, *(paper.title for paper in papers)], taken=extras)
    written = _Shelved()
    drawings: list[str] = []
    for done, (paper, name) in enumerate(zip(papers, names, strict=True)):
        progress("writing the sheets", done, len(papers))
        drawings += _write_paper(folder, name, paper, checked, layout, wishes, written)
    written.files += _write_cutting_list(folder / cutting_list, checked, chosen)
    spec = checked.plan.spec
    size = page_size(Size(*spec.printer.sheet.size))
    where = {id: whereabouts(checked.shelf, field) for id, field in checked.plan.register.fields.items()}
    with thumbnails(checked.drafts) as seen:
        pages = guide_pages(checked.plan, written.sheets, where, seen, checked.problems)
        write_leaflet(folder / guide, f"{spec.shelf}: maker's guide", pages, size)
    written.files += [guide, *drawings, *extras, PLAN_NAME]
    placed = printed().placed(written.sheets)
    report = plan_report(
        written.sheets,
        layout.tallies,
        {name: UNSEALED if name == PLAN_NAME else digest_of(folder / name) for name in written.files},
        checked,
        placed,
    )
    with (folder / PLAN_NAME).open("w", encoding="utf-8", newline="") as file:
        file.writelines(in_pieces(report))
    seal(folder / PLAN_NAME)
    return tuple(map(written.file, written.files)), placed


def in_vain(wishes: Wishes, files: Collection[str]) -> Iterator[Problem]:
    """What was wished for and is not among the files that were written, since there is nothing for it to show."""
    if wishes.contact_sheet and CONTACT_SHEET not in files:
        yield Problem("there is no sheet of spines, because nothing stands on the shelf", severity=Severity.NOTE)
    if wishes.proof and PROOF not in files:
        yield Problem("there is no proof, because no book with pages is printed", severity=Severity.NOTE)


def _papers(checked: Checked, layout: Layout) -> list[Stock]:
    """The stocks and off-cuts that sheets are printed on, as the shelf file lists them."""
    papers = [paper for stock in checked.plan.stocks.values() for paper in (stock, *dict.fromkeys(stock.off_cuts))]
    return [paper for paper in papers if any(sheet.stock == paper for sheet in layout.sheets)]


def _write_paper(
    folder: Path, name: str, paper: Stock, checked: Checked, layout: Layout, wishes: Wishes, written: _Shelved
) -> list[str]:
    """The sheets of one paper as a PDF, and its drawings for a cutting machine, whose names are returned."""
    spec = checked.plan.spec
    mine = [sheet for sheet in layout.sheets if sheet.stock == paper]
    # one after the other: what stands around the pieces of many sheets takes more memory than these
    passes = chain.from_iterable(impressions(sheet, spec.shelf, paper.printer) for sheet in mine)
    title = f"{spec.shelf}: {paper.title}"
    write_sheets(folder / name, title, passes, calibration(paper.printer, paper.sheet), wishes.layers)
    *first_pages, _ = accumulate((1 + sheet.two_sided for sheet in mine), initial=1)
    written.files.append(name)
    written.sheets += [(name, page, sheet) for page, sheet in zip(first_pages, mine, strict=True)]
    return _write_drawings(folder, name.removesuffix(".pdf"), title, mine) if spec.printer.cutting_machine else []


def _write_drawings(folder: Path, stem: str, title: str, sheets: Sequence[Sheet]) -> list[str]:
    """What a cutting machine needs: a drawing of each sheet as SVG and DXF, and all of them as PDF; their names."""
    drawn = [tool_sheet(sheet) for sheet in sheets]
    (folder / MACHINE_FOLDER).mkdir(exist_ok=True)
    names = [f"{MACHINE_FOLDER}/{stem}.pdf"]
    write_tools_pdf(folder / names[0], title, drawn)
    for number, one in enumerate(drawn, start=1):
        svg, dxf = (f"{MACHINE_FOLDER}/{stem}-{number}.{kind}" for kind in ("svg", "dxf"))
        write_svg(folder / svg, f"{title}, sheet {number}", one)
        write_dxf(folder / dxf, one)
        names += [svg, dxf]
    return names


def _write_cutting_list(path: Path, checked: Checked, chosen: Chosen) -> list[str]:
    """The list of what is cut by hand, if anything is; its name."""
    spec = checked.plan.spec
    plan = checked.plan
    mine = [(plan.printed(id), one) for id, one in plan.plans.items() if chosen.by_hand(one.thing)]
    by_hand = [(called, part) for called, one in mine for part in one.cut_list]
    sticks = [(called, stick) for called, one in mine for stick in one.sticks]
    if not by_hand and not sticks:
        return []
    size = page_size(Size(*spec.printer.sheet.size))
    write_leaflet(path, f"{spec.shelf}: {CUTTING_LIST}", cutting_list_pages(spec.shelf, by_hand, size, sticks), size)
    return [path.name]


def _write_extras(folder: Path, checked: Checked, chosen: Chosen, wishes: Wishes) -> list[str]:
    """What is made only if it is asked for; the names of the files."""
    names: list[str] = []
    if wishes.contact_sheet:
        names += _write_spines(folder, checked)
    if wishes.proof:
        names += _write_proof(folder, checked, chosen)
    if wishes.mock_up:
        names += _write_mock_up(folder, checked)
    if wishes.templates:
        for one in checked.plan.plans.values():
            names += _write_templates(folder, one, chosen)
    return names


def _write_proof(folder: Path, checked: Checked, chosen: Chosen) -> list[str]:
    """The spreads of the chosen books that have pages, to be read; the name of the file."""
    spec, drafts = checked.plan.spec, checked.drafts
    mine = [
        (name if printable(name) else checked.plan.printed(id), drafts[id].openings, drafts[id].right_to_left)
        for id, name in ((id, str(one.name)) for id, one in checked.plan.plans.items())
        if chosen.has(id) and id in drafts and drafts[id].pages
    ]
    return write_proof(folder, spec.shelf, mine, Size(*spec.printer.sheet.size)) if mine else []


def _write_templates(folder: Path, one: Plan, chosen: Chosen) -> list[str]:
    """What a maker may draw over of a thing, each in a file of its own."""
    names: list[str] = []
    for word, flats in one.templates.items():
        mine = [flat for flat in flats if flat.dressed and chosen.holds(one.id, flat.stock)]
        stem = "-".join(filter(None, ("template", one.id, word)))
        names += write_template(folder, stem, one.name, mine) if mine else []
    return names


def _write_spines(folder: Path, checked: Checked) -> list[str]:
    """The contact sheet, if anything stands on the shelf; its names."""
    spec, seen = checked.plan.spec, list(fronts(checked.plan, checked.drafts))
    return write_contact_sheet(folder, spec.shelf, seen, Size(*spec.printer.sheet.size)) if seen else []


def _write_mock_up(folder: Path, checked: Checked) -> list[str]:
    """Outlines of everything on plain paper, and the surfaces of the room to mark them by; the names of the files."""
    plan, spec = checked.plan, checked.plan.spec
    paper = plain_paper(plan)
    laid = lay_out(mock_up_pieces(plan, paper), {paper.name: paper}, spec.printer.gap_between_pieces)
    names = [MOCK_UP] if laid.sheets else []
    if laid.sheets:
        passes = chain.from_iterable(impressions(sheet, spec.shelf, paper.printer) for sheet in laid.sheets)
        write_sheets(folder / MOCK_UP, f"{spec.shelf}: mock-up", passes, calibration(paper.printer, paper.sheet))
    if plan.room:
        size = page_size(Size(*spec.printer.sheet.size))
        write_leaflet(folder / ELEVATIONS, f"{spec.shelf}: walls and desks", elevation_pages(plan), size)
        names.append(ELEVATIONS)
    return names
