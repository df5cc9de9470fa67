"""The whole way from a shelf file to printed sheets: read this first.

    shelf file ─► ShelfSpec ─► plans ─► pieces ─► sheets ─► files

Every arrow is one call below. Files are read at the start and written at the end.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, chain
from pathlib import Path
from typing import Any

from .choice import EVERYTHING, Choice, Chosen
from .designs import load_design
from .designs.box_faces import load_faces
from .drafting import Draft, draft_book, draft_slipcase
from .errors import FieldPath, Problem, Severity, ShelfFileError
from .feedback import caliper_estimates, estimate_notes
from .findings import fit_findings
from .flat import Role
from .geometry import Size
from .impressions import impressions
from .output import PLAN_NAME, file_names, replaced_folder
from .pages import BookWords, PageFrame, compose_inside, load_inside
from .pictures import Picture
from .plan import ShelfPlan, plan_shelf
from .reading import ShelfFile, read_shelf
from .sheets import Layout, Sheet, Tally, lay_out
from .shelf_spec import cross_check
from .spec.sheets import SheetOrder
from .stock import calibration
from .toolpaths import tool_sheet
from .writers.cutting_list_pdf import CUTTING_LIST, write_cutting_list
from .writers.plan_json import dump, plan_report
from .writers.sheets_pdf import Parts, write_sheets
from .writers.tools_dxf import write_dxf
from .writers.tools_pdf import write_tools_pdf
from .writers.tools_svg import write_svg

__all__ = ["MACHINE_FOLDER", "Checked", "Made", "check", "make"]

MACHINE_FOLDER = "machine"
"""The folder in the output with the drawings for a cutting machine."""

Progress = Callable[[str, int, int], None]
"""Told what is being done, how many parts are done, and of how many."""


@dataclass(frozen=True, slots=True)
class Checked:
    """A shelf that was read and worked out, with everything there is to say about it; one draft a book or slipcase."""

    shelf: ShelfFile
    plan: ShelfPlan
    drafts: tuple[Draft, ...]
    slipcases: tuple[Draft, ...]
    problems: tuple[Problem, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing is wrong that spoils the shelf."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)


@dataclass(frozen=True, slots=True)
class Made:
    """What was made: the checked shelf, each file with the number of its sheets, 0 for the plan, and what they take."""

    checked: Checked
    files: tuple[tuple[str, int], ...]
    tallies: tuple[Tally, ...]


def check(path: Path, progress: Progress = lambda *_: None) -> Checked:
    """Read a shelf file, work everything out, and say what is wrong.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used; all problems at once.
    """
    shelf = read_shelf(path)
    sources, plan = _usable(shelf)
    drafts = _drafted(shelf, plan, sources.books, progress)
    slipcases = tuple(
        draft_slipcase(box, index, sources.slipcases[box.name]) for index, box in enumerate(plan.slipcases, start=1)
    )
    problems = (
        *plan.notes,
        *(problem for draft in (*drafts, *slipcases) for problem in draft.problems),
        *fit_findings(plan),
        *estimate_notes(caliper_estimates(plan), plan.stocks),
    )
    return Checked(shelf, plan, drafts, slipcases, shelf.located(problems))


def make(
    path: Path,
    into: Path,
    progress: Progress = lambda *_: None,
    *,
    parts: Parts = Parts.ALL,
    choice: Choice = EVERYTHING,
) -> Made:
    """Check a shelf file and write its sheets, or what is chosen of them, and its plan into a folder.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used.
        OutputError: the folder cannot be used; it is as it was.
        CommandError: the choice names what is not there.
    """
    with replaced_folder(into) as folder:
        checked = check(path, progress)
        chosen = choice.of(checked.plan)
        pieces = chosen.pieces(piece for draft in (*checked.drafts, *checked.slipcases) for piece in draft.pieces)
        printer = checked.plan.spec.printer
        order = printer.sheet_order if choice.again is None else SheetOrder.FEWEST
        layout = lay_out(pieces, checked.plan.stocks, printer.knife_room, order, progress)
        checked = replace(checked, problems=(*checked.problems, *checked.shelf.located(layout.notes)))
        files = _write(folder, checked, layout, chosen, parts, progress)
    return Made(checked, files, layout.tallies)


@dataclass(frozen=True, slots=True)
class _Sources:
    """What was read from the files a shelf names: by book its inside, design and jacket; by slipcase its pictures."""

    books: Sequence[tuple[object, object, object]]
    slipcases: Mapping[str, Mapping[Role, Picture]]


def _usable(shelf: ShelfFile) -> tuple[_Sources, ShelfPlan]:
    """The files that the books name, and the plan; refused with everything that is wrong with both."""
    problems = list(shelf.of_lenders(cross_check(shelf.spec)))
    crossed = bool(problems)
    sources = _read_sources(shelf, problems)
    try:
        plan = None if crossed else plan_shelf(shelf.spec)
    except ShelfFileError as refusal:
        problems += refusal.problems
        plan = None
    if problems or plan is None:
        raise shelf.refusal(problems)
    return sources, plan


def _read_sources(shelf: ShelfFile, problems: list[Problem]) -> _Sources:
    """The files every book and slipcase names; what cannot be read is a problem."""
    books: list[tuple[object, object, object]] = []

    def read(load: Callable[..., Any], entry: object, field: FieldPath) -> Any:
        try:
            return load(entry, shelf.folder)
        except ShelfFileError as refusal:
            problems.extend(replace(problem, field=(*field, *problem.field)) for problem in refusal.problems)
            return None

    for number, book in enumerate(shelf.spec.books):
        inside = read(load_inside, book.inside, ("books", number, "inside"))
        design = read(load_design, book.design, ("books", number, "design"))
        own = book.jacket.design if book.jacket else None
        jacket = read(load_design, own, ("books", number, "jacket", "design")) if own else None
        books.append((inside, design, jacket))
    faces = {
        name: read(load_faces, box.faces, ("slipcases", name, "faces")) if box.faces else {}
        for name, box in shelf.spec.slipcases.items()
    }
    return _Sources(books, faces)


def _drafted(
    shelf: ShelfFile, plan: ShelfPlan, sources: Sequence[tuple[object, object, object]], progress: Progress
) -> tuple[Draft, ...]:
    drafts: list[Draft] = []
    for book, (inside, design, jacket) in zip(plan.books, sources, strict=True):
        progress("setting the pages", book.number, len(plan.books))
        frame = PageFrame(
            width=book.page.width,
            height=book.page.height,
            pages=book.block.pages,
            right_to_left=book.entry.right_to_left,
            resolution_dpi=shelf.spec.printer.resolution,
            book=BookWords(book.entry.title, book.entry.author or "", shelf.spec.shelf),
        )
        composed = compose_inside(book.entry.inside, inside, frame)
        drafts.append(draft_book(book, composed, design, jacket, frame.resolution_dpi))
    return tuple(drafts)


def _write(
    folder: Path, checked: Checked, layout: Layout, chosen: Chosen, parts: Parts, progress: Progress
) -> tuple[tuple[str, int], ...]:
    """One PDF of sheets for each paper, the cutting list if anything is cut by hand, and the plan."""
    spec = checked.plan.spec
    listed: list[tuple[str, int, Sheet]] = []
    drawings: list[str] = []
    papers = [paper for stock in checked.plan.stocks.values() for paper in (stock, *dict.fromkeys(stock.off_cuts))]
    used = [paper for paper in papers if any(sheet.stock == paper for sheet in layout.sheets)]
    cutting_list, *names = file_names([CUTTING_LIST, *(paper.title for paper in used)])
    for done, (paper, name) in enumerate(zip(used, names, strict=True)):
        progress("writing the sheets", done, len(used))
        mine = [sheet for sheet in layout.sheets if sheet.stock == paper]
        passes = [impressions(sheet, spec.shelf, spec.printer) for sheet in mine]
        title = f"{spec.shelf}: {paper.title}"
        write_sheets(folder / name, title, chain(*passes), calibration(spec.printer, paper.sheet), parts)
        *first_pages, _ = accumulate(map(len, passes), initial=1)
        listed += [(name, page, sheet) for page, sheet in zip(first_pages, mine, strict=True)]
        if spec.printer.cutting_machine:
            drawings += _write_drawings(folder, name.removesuffix(".pdf"), title, mine)
    books = [book for book in checked.plan.books if chosen.by_hand(book.number)]
    by_hand = [(f"{book.number + 1}. {book.entry.title}", part) for book in books for part in book.cut_list]
    if by_hand:
        write_cutting_list(folder / cutting_list, spec.shelf, by_hand, Size(*spec.printer.sheet.size))
    files = [*names, *([cutting_list] if by_hand else []), *drawings, PLAN_NAME]
    (folder / PLAN_NAME).write_text(
        dump(plan_report(checked.plan, listed, layout.tallies, files, checked.problems)), encoding="utf-8", newline="\n"
    )
    return tuple((name, sum(file == name for file, _, _ in listed)) for name in files)


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
