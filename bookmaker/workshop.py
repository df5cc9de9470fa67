"""The whole way from a shelf file to printed sheets: read this first.

    shelf file ─► ShelfSpec ─► plans ─► pieces ─► sheets ─► files

Every arrow is one call below. Files are read at the start and written at the end.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from .ground.collection import uncollected
from .ground.output import replaced_folder
from .ground.problems import Problem, Severity, ShelfFileError
from .paper.printer_entry import SheetOrder
from .paper.stock import Stock
from .shelf.checked import Checked
from .shelf.entries import ShelfSpec, cross_check
from .shelf.extents import page_frame, settled
from .shelf.feedback import caliper_estimates, comparisons, doubtful_measures, estimate_notes
from .shelf.findings import fit_findings, row_findings
from .shelf.outside import outside_texts
from .shelf.plan import ShelfPlan, plan_shelf
from .shelf.reading import proofread
from .shelf.sources import Sources, read_sources
from .shelf.wishes import ALL_OF_IT, Progress, Wishes
from .shelf_file.reading import ShelfFile
from .things.book.designs.artwork import Artwork
from .things.book.drafting import Draft, draft_book, draft_slipcase
from .things.book.legibility import lettering_problems, titles_for_a_lens
from .things.book.pages.inside import LoadedInside
from .things.book.pages.kinds import BLANK
from .things.book.wardrobe import Coat, dressed, palettes_overruled, set_notes

if TYPE_CHECKING:
    from .sheets.layout import Tally

__all__ = ["Checked", "Made", "Progress", "Wishes", "check", "make"]


@dataclass(frozen=True, slots=True)
class Made:
    """What was made: the checked shelf, each file with the number of its sheets, 0 for the plan, and what they take.

    `about` are the problems of what was chosen, `others` is how many there are of other books and slipcases; `gone`
    are files of an earlier run that were not made again, `off_cuts` the partly used sheets that are now to be printed.
    """

    checked: Checked
    files: tuple[tuple[str, int], ...]
    tallies: tuple[Tally, ...]
    about: tuple[Problem, ...]
    others: int
    gone: tuple[str, ...]
    off_cuts: tuple[Stock, ...]


@uncollected()
def check(path: Path, progress: Progress = lambda *_: None) -> Checked:
    """Read a shelf file, work everything out, and say what is wrong.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used; all problems at once.
    """
    shelf = proofread(path)
    sources, plan = _usable(shelf)
    coats = dressed(plan.books)
    drafts = _drafted(plan, coats, sources.books, progress)
    slipcases = _drafted_slipcases(plan, coats, sources)
    problems = (
        *plan.notes,
        *shelf.of_lenders(_unseen(shelf, plan)),
        *set_notes(plan.books),
        *(problem for draft in (*drafts, *slipcases) for problem in draft.problems),
        *palettes_overruled(plan.books, coats),
        *_lettering_problems(plan, drafts),
        *fit_findings(plan),
        *row_findings(plan),
        *doubtful_measures(comparisons(plan)),
        *estimate_notes(caliper_estimates(plan), plan.stocks),
    )
    return Checked(shelf, plan, drafts, slipcases, shelf.located(problems))


@uncollected()
def make(path: Path, into: Path, progress: Progress = lambda *_: None, wishes: Wishes = ALL_OF_IT) -> Made:
    """Check a shelf file and write its sheets, or what is chosen of them, and its plan into a folder.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used.
        OutputError: the folder cannot be used; it is as it was.
        CommandError: the choice names what is not there.
    """
    # nobody who only checks a shelf waits for what lays out and writes
    from .sheets.layout import lay_out
    from .shelf.off_cuts import useless_off_cuts
    from .writers.publishing import publish

    with replaced_folder(into) as folder:
        checked = check(path, progress)
        chosen = wishes.choice.of(checked.plan)
        pieces = chosen.pieces(piece for draft in (*checked.drafts, *checked.slipcases) for piece in draft.pieces)
        printer = checked.plan.spec.printer
        order = printer.sheet_order if wishes.choice.again is None else SheetOrder.FEWEST
        layout = lay_out(pieces, checked.plan.stocks, printer.knife_room, order, progress)
        useless = checked.shelf.located(useless_off_cuts(checked.plan, pieces))
        checked = replace(checked, problems=(*checked.problems, *useless))
        files = publish(folder.path, checked, layout, chosen, wishes, progress)
    about = tuple(chosen.problems(checked.problems, checked.shelf.concerns))
    return Made(
        checked=checked,
        files=files,
        tallies=layout.tallies,
        about=(*folder.remarks, *about),
        others=len(checked.problems) - len(about),
        gone=tuple(sorted(folder.before.difference(name for name, _ in files))),
        off_cuts=tuple(sheet.stock for sheet in layout.sheets if sheet.stock.off_cut),
    )


def _usable(shelf: ShelfFile[ShelfSpec]) -> tuple[Sources, ShelfPlan]:
    """The files that the books name, and the plan; refused with everything that is wrong.

    A file with faults is looked through for names and files that are missing, but not worked out.
    """
    unnamed = shelf.of_the_maker(cross_check(shelf.spec, all_listed=shelf.all_listed)) if shelf.names_stand else ()
    problems = [*shelf.faults, *shelf.of_lenders(unnamed)]
    crossed = bool(problems)
    problems += shelf.of_lenders(outside_texts(shelf.spec, shelf.folder))
    of_files: list[Problem] = []
    sources = read_sources(shelf, of_files)
    unread = {problem.field[1] for problem in of_files if "inside" in problem.field[:3]}
    problems += shelf.of_lenders(of_files)
    insides = [inside for inside, _, _ in sources.books]
    spec, unsettled = (shelf.spec, []) if crossed else settled(shelf.spec, insides, unread)
    problems += unsettled
    try:
        plan = None if crossed else plan_shelf(spec)
    except ShelfFileError as refusal:
        problems += refusal.problems
        plan = None
    if problems or plan is None:
        raise shelf.refusal([*problems, *shelf.of_lenders(sources.errors)])
    return sources, plan


def _drafted(
    plan: ShelfPlan, coats: Sequence[Coat], sources: Sequence[tuple[LoadedInside, Artwork, Artwork]], progress: Progress
) -> tuple[Draft, ...]:
    """Every book drawn: its pages composed, its cover dressed."""
    drafts: list[Draft] = []
    for (book, words), (inside, design, jacket) in zip(coats, sources, strict=True):
        progress("setting the pages", book.number, len(plan.books))
        frame = page_frame(plan.spec, book.entry, book.block.pages)
        pages = inside.compose(frame)
        drafts.append(draft_book(book, words, pages, design, jacket, frame.resolution_dpi))
    return tuple(drafts)


def _drafted_slipcases(plan: ShelfPlan, coats: Sequence[Coat], sources: Sources) -> tuple[Draft, ...]:
    drafts: list[Draft] = []
    for index, box in enumerate(plan.slipcases, start=1):
        (first, words), (_, artwork, _) = coats[box.books[0]], sources.books[box.books[0]]
        drafts.append(draft_slipcase(box, index, sources.slipcases[box.name], first, words, artwork))
    return tuple(drafts)


def _unseen(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan) -> Iterator[Problem]:
    """Notes about the insides of books without pages; what all books share says nothing of those that have none."""
    for book in plan.books:
        field = ("books", book.number, "inside")
        if not book.block.pages and book.entry.inside != BLANK and not shelf.is_default(field):
            yield Problem(
                "this book is solid and has no pages: its inside will not be seen",
                "leave it out, or write inside: {kind: blank}",
                Severity.NOTE,
                field=field,
            )


def _lettering_problems(plan: ShelfPlan, drafts: Sequence[Draft]) -> Iterator[Problem]:
    """What is too small or too faint on the covers."""
    for book, draft in zip(plan.books, drafts, strict=True):
        for problem in lettering_problems(draft.lettering, plan.resolution(book.lettered_on)):
            yield replace(problem, field=("books", book.number, "design", *problem.field))
    covers = [
        (book.name, draft.shelved, plan.resolution(book.lettered_on))
        for book, draft in zip(plan.books, drafts, strict=True)
    ]
    yield from titles_for_a_lens(covers, plan.spec.viewing_distance)
