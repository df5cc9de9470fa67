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

from .designs import load_design
from .designs.box_faces import load_faces
from .drafting import Draft, draft_book, draft_slipcase
from .errors import FieldPath, Problem, Severity, ShelfFileError
from .feedback import caliper_estimates, estimate_notes
from .findings import fit_findings
from .flat import Role
from .geometry import Size
from .guide import guide_pages, page_size
from .impressions import impressions
from .output import PLAN_NAME, file_names, replaced_folder
from .pages import PageFrame, compose_inside, load_inside
from .pictures import Picture
from .plan import ShelfPlan, plan_shelf
from .reading import ShelfFile, read_shelf
from .sheets import Sheet, lay_out
from .shelf_spec import cross_check
from .stock import calibration
from .writers.cutting_list_pdf import CUTTING_LIST, write_cutting_list
from .writers.guide_pdf import GUIDE, write_guide
from .writers.plan_json import dump, plan_report
from .writers.sheets_pdf import write_sheets

__all__ = ["Checked", "Made", "check", "make"]

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
    """What was made: the checked shelf, and each file with the number of its sheets, 0 for the plan."""

    checked: Checked
    files: tuple[tuple[str, int], ...]


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


def make(path: Path, into: Path, progress: Progress = lambda *_: None) -> Made:
    """Check a shelf file and write its sheets and its plan into a folder.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used.
        OutputError: the folder cannot be used; it is as it was.
    """
    with replaced_folder(into) as folder:
        checked = check(path, progress)
        pieces = [piece for draft in (*checked.drafts, *checked.slipcases) for piece in draft.pieces]
        sheets = lay_out(pieces, checked.plan.stocks, checked.plan.spec.printer.knife_room)
        files = _write(folder, checked, sheets, progress)
    return Made(checked, files)


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
        )
        composed = compose_inside(book.entry.inside, inside, frame)
        drafts.append(draft_book(book, composed, design, jacket, frame.resolution_dpi))
    return tuple(drafts)


def _write(folder: Path, checked: Checked, sheets: Sequence[Sheet], progress: Progress) -> tuple[tuple[str, int], ...]:
    """One PDF of sheets for each stock, the cutting list if anything is cut by hand, the guide, and the plan."""
    spec = checked.plan.spec
    listed: list[tuple[str, int, Sheet]] = []
    used = [stock for stock in checked.plan.stocks.values() if any(sheet.stock is stock for sheet in sheets)]
    guide, cutting_list, *names = file_names([GUIDE, CUTTING_LIST, *(stock.name for stock in used)])
    for done, (stock, name) in enumerate(zip(used, names, strict=True)):
        progress("writing the sheets", done, len(used))
        mine = [sheet for sheet in sheets if sheet.stock is stock]
        passes = [impressions(sheet, spec.shelf, spec.printer) for sheet in mine]
        title = f"{spec.shelf}: {stock.name}"
        write_sheets(folder / name, title, chain(*passes), calibration(spec.printer, stock.sheet))
        *first_pages, _ = accumulate(map(len, passes), initial=1)
        listed += [(name, page, sheet) for page, sheet in zip(first_pages, mine, strict=True)]
    parts = [(f"{book.number + 1}. {book.entry.title}", part) for book in checked.plan.books for part in book.cut_list]
    if parts:
        write_cutting_list(folder / cutting_list, spec.shelf, parts, Size(*spec.printer.sheet.size))
    progress("writing the guide", 0, 1)
    sheet = Size(*spec.printer.sheet.size)
    write_guide(folder / guide, spec.shelf, guide_pages(checked.plan, listed), page_size(sheet))
    files = [*names, *([cutting_list] if parts else []), guide, PLAN_NAME]
    (folder / PLAN_NAME).write_text(
        dump(plan_report(checked.plan, listed, files, checked.problems)), encoding="utf-8", newline="\n"
    )
    return tuple((name, sum(file == name for file, _, _ in listed)) for name in files)
