"""The whole way from a shelf file to printed sheets: read this first.

    shelf file ─► ShelfSpec ─► plans ─► pieces ─► sheets ─► files

Every arrow is one call below. Files are read at the start and written at the end.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from .ahead import set_texts_ahead
from .checked import Checked
from .drafting import Draft, draft_book, draft_slipcase
from .errors import Problem, ShelfFileError
from .extents import page_frame, settled
from .feedback import caliper_estimates, comparisons, doubtful_measures, estimate_notes
from .findings import fit_findings
from .legibility import lettering_problems, titles_for_a_lens
from .output import replaced_folder
from .pages import compose_inside
from .plan import ShelfPlan, plan_shelf
from .publishing import ALL_OF_IT, MACHINE_FOLDER, Progress, Wishes, publish
from .reading import ShelfFile, proofread
from .sheets import Tally, lay_out
from .shelf_spec import cross_check
from .sources import Sources, read_sources
from .spec.sheets import SheetOrder
from .wardrobe import Coat, dressed, palettes_overruled, set_notes

__all__ = ["MACHINE_FOLDER", "Checked", "Made", "Progress", "Wishes", "check", "make"]


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
    shelf = proofread(path)
    sources, plan = _usable(shelf)
    coats = dressed(plan.books)
    drafts = _drafted(plan, coats, sources.books, progress)
    slipcases = _drafted_slipcases(plan, coats, sources)
    problems = (
        *plan.notes,
        *set_notes(plan.books),
        *(problem for draft in (*drafts, *slipcases) for problem in draft.problems),
        *palettes_overruled(plan.books, coats),
        *_lettering_problems(plan, drafts),
        *fit_findings(plan),
        *doubtful_measures(comparisons(plan)),
        *estimate_notes(caliper_estimates(plan), plan.stocks),
    )
    return Checked(shelf, plan, drafts, slipcases, shelf.located(problems))


def make(path: Path, into: Path, progress: Progress = lambda *_: None, wishes: Wishes = ALL_OF_IT) -> Made:
    """Check a shelf file and write its sheets, or what is chosen of them, and its plan into a folder.

    Raises:
        ShelfFileError: the file, or one it names, cannot be used.
        OutputError: the folder cannot be used; it is as it was.
        CommandError: the choice names what is not there.
    """
    with replaced_folder(into) as folder:
        checked = check(path, progress)
        chosen = wishes.choice.of(checked.plan)
        pieces = chosen.pieces(piece for draft in (*checked.drafts, *checked.slipcases) for piece in draft.pieces)
        printer = checked.plan.spec.printer
        order = printer.sheet_order if wishes.choice.again is None else SheetOrder.FEWEST
        layout = lay_out(pieces, checked.plan.stocks, printer.knife_room, order, progress)
        checked = replace(checked, problems=(*checked.problems, *checked.shelf.located(layout.notes)))
        files = publish(folder, checked, layout, chosen, wishes, progress)
    return Made(checked, files, layout.tallies)


def _usable(shelf: ShelfFile) -> tuple[Sources, ShelfPlan]:
    """The files that the books name, and the plan; refused with everything that is wrong.

    A file with faults is looked through for names and files that are missing, but not worked out.
    """
    unnamed = shelf.of_the_maker(cross_check(shelf.spec)) if shelf.names_stand else ()
    problems = [*shelf.faults, *shelf.of_lenders(unnamed)]
    crossed = bool(problems)
    of_files: list[Problem] = []
    sources = read_sources(shelf, of_files)
    unread = {problem.field[1] for problem in of_files if "inside" in problem.field[:3]}
    problems += shelf.of_lenders(of_files)
    insides = [inside for inside, _, _ in sources.books]
    if not problems:
        set_texts_ahead(shelf.spec, insides)
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
    plan: ShelfPlan, coats: Sequence[Coat], sources: Sequence[tuple[object, object, object]], progress: Progress
) -> tuple[Draft, ...]:
    """Every book drawn: its pages composed, its cover dressed."""
    drafts: list[Draft] = []
    for (book, words), (inside, design, jacket) in zip(coats, sources, strict=True):
        progress("setting the pages", book.number, len(plan.books))
        frame = page_frame(plan.spec, book.entry, book.block.pages)
        pages = compose_inside(book.entry.inside, inside, frame)
        drafts.append(draft_book(book, words, pages, design, jacket, frame.resolution_dpi))
    return tuple(drafts)


def _drafted_slipcases(plan: ShelfPlan, coats: Sequence[Coat], sources: Sources) -> tuple[Draft, ...]:
    drafts: list[Draft] = []
    for index, box in enumerate(plan.slipcases, start=1):
        (first, words), (_, artwork, _) = coats[box.books[0]], sources.books[box.books[0]]
        drafts.append(draft_slipcase(box, index, sources.slipcases[box.name], first, words, artwork))
    return tuple(drafts)


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
