"""The whole way from a shelf file to printed sheets: read this first.

    shelf file ─► ShelfSpec ─► things ─► plans ─► pieces ─► sheets ─► files

Every arrow is one call below. Files are read at the start and written at the end.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from .ground.collection import uncollected
from .ground.demands import demand, summed
from .ground.files import Looked
from .ground.kept.last_time import Keeper, LastTime
from .ground.output import NewFolder, replaced_folder
from .ground.problems import Problem, gathered
from .ground.told import told_in
from .paper.printer_entry import SheetOrder
from .paper.stock import Stock
from .shelf.checked import Checked
from .shelf.cross_check import cross_check
from .shelf.entries import ShelfSpec
from .shelf.feedback import caliper_estimates, comparisons, doubtful_measures, doubtful_piles, estimate_notes
from .shelf.filling.walls import as_many_as_it_takes
from .shelf.film_estimates import film_estimates, film_notes
from .shelf.findings import fit_findings, row_findings, thing_findings
from .shelf.outside import outside_texts
from .shelf.plan import ShelfPlan, plan_shelf
from .shelf.reading import proofread
from .shelf.register import Register, register_of
from .shelf.wishes import ALL_OF_IT, Progress, Wishes
from .shelf_file.reading import ShelfFile
from .things.draft import Draft
from .things.thing import AnyFamily, Plan

if TYPE_CHECKING:
    from .sheets.tally import Tally
    from .shelf.printed.changes import Changes
    from .writers.publishing import WrittenFile

__all__ = ["Checked", "Made", "Progress", "Wishes", "Workshop"]

MOST_BENCHES = 4
"""So many shelf files are remembered."""


def no_progress(doing: str, done: int, of: int) -> None:
    """Nobody is told."""


@dataclass(frozen=True, slots=True)
class Made:
    """What was made: the checked shelf, the files, and what their sheets take.

    `about` are the problems of what was chosen, `others` is how many there are of other things; `gone` are files of an
    earlier run that were not made again, `off_cuts` the partly used sheets that are now to be printed. `changes` are
    what differs from what was printed before. Without files nothing was to be printed, and the folder is as it was.
    """

    checked: Checked
    files: tuple[WrittenFile, ...]
    tallies: tuple[Tally, ...]
    about: Sequence[Problem]
    others: int
    gone: tuple[str, ...]
    off_cuts: Sequence[Stock]
    changes: Changes


class _NothingToPrint(Exception):  # noqa: N818 - it is no error
    """Ends the writing of a folder, which then stays as it was."""

    def __init__(self, made: Made) -> None:
        super().__init__()
        self.made = made


class Workshop:
    """Where shelves are worked on again and again: only what an edit asks for is done anew.

    Each shelf file has a bench of its own, on which lies what was made of it last time. What an answer says is what a
    fresh workshop says; only how long it takes is another matter. `families` are the kinds of things that shelves hold,
    where they are not the usual ones.
    """

    def __init__(self, families: tuple[AnyFamily, ...] | None = None) -> None:
        self._families = families
        self._benches: dict[Path, LastTime] = {}

    @uncollected()
    def check(self, path: Path, progress: Progress = no_progress) -> Checked:
        """Read a shelf file, work everything out, and say what is wrong.

        Raises:
            ShelfFileError: the file, or one it names, cannot be used; all problems at once.
        """
        bench = self._bench(path)
        bench.look_anew()  # what was refused last time may have been looked at
        shelf, plan = self._planned(path, bench)
        with told_in(plan.spec.told):
            drafts = _drawn(plan, progress, bench)
            bench.forget()
            return Checked(shelf, plan, drafts, shelf.located(_found(shelf, plan, drafts), plan.register.fields))

    @uncollected()
    def planned(self, path: Path) -> ShelfPlan:
        """A shelf worked out before anything is drawn, which takes a tenth of the time.

        Raises:
            ShelfFileError: the file, or one it names, cannot be used; all problems at once.
        """
        bench = self._bench(path)
        bench.look_anew()
        return self._planned(path, bench)[1]

    @uncollected()
    def written(self, path: Path) -> ShelfFile[ShelfSpec]:
        """A shelf file that can be used, as it was read: with all books that it invents.

        Raises:
            ShelfFileError: the file, or one it names, cannot be used; all problems at once.
        """
        bench = self._bench(path)
        bench.look_anew()
        return self._planned(path, bench)[0]

    @uncollected()
    def drawn(self, path: Path, plan: ShelfPlan, thing: str) -> Draft:
        """One thing of a plan drawn, by its id: what `check` finds later as it is."""
        with told_in(plan.spec.told):
            return _draft(plan, plan.plans[thing], self._bench(path))

    def looked(self, path: Path) -> frozenset[Looked]:
        """What on the disk the last answers hang on: whatever else changes there, they stay."""
        return self._bench(path).looked

    def _planned(self, path: Path, bench: LastTime) -> tuple[ShelfFile[ShelfSpec], ShelfPlan]:
        shelf = bench.reading("shelf", (path, self._families), partial(proofread, path, self._families))
        plan = _usable(shelf, register_of(shelf.spec), bench)
        if not shelf.open_walls:
            return shelf, plan
        counts = as_many_as_it_takes(shelf, plan)
        wall = (path, self._families, counts)
        shelf = bench.reading("shelf with its walls", wall, partial(proofread, *wall))
        return shelf, _usable(shelf, register_of(shelf.spec), bench)

    @uncollected()
    def make(self, path: Path, into: Path, progress: Progress = no_progress, wishes: Wishes = ALL_OF_IT) -> Made:
        """Check a shelf file and write its sheets, or what is chosen of them, and its plan into a folder.

        Raises:
            ShelfFileError: the file, or one it names, cannot be used.
            OutputError: the folder cannot be used; it is as it was.
            CommandError: the choice names what is not there.
        """
        try:
            with replaced_folder(into) as folder:
                checked = self.check(path, progress)
                with told_in(checked.plan.spec.told):
                    return _made(checked, folder, progress, wishes)
        except _NothingToPrint as nothing:
            return nothing.made

    def _bench(self, path: Path) -> LastTime:
        """What was made of a shelf file; of those that nobody asked for in a while it is given up."""
        bench = self._benches.pop(path, None) or LastTime()
        self._benches[path] = bench
        for oldest in [*self._benches][:-MOST_BENCHES]:
            del self._benches[oldest]
        return bench


def _made(checked: Checked, folder: NewFolder, progress: Progress, wishes: Wishes) -> Made:
    """What is chosen of a shelf, laid on sheets and written into a folder.

    Raises:
        _NothingToPrint: of what is chosen nothing differs from what was printed, or all is ticked off.
    """
    # nobody who only checks a shelf waits for what lays out and writes
    from .sheets.layout import lay_out
    from .shelf.off_cuts import useless_off_cuts
    from .shelf.printed.prints import Prints
    from .writers.publishing import in_vain, publish

    plan, fields = checked.plan, checked.plan.register.fields
    chosen = wishes.choice.of(plan)
    every = [plan.labelled(piece) for draft in checked.drafts.values() for piece in draft.pieces]
    prints = Prints(plan, folder.plan, every)
    pieces = chosen.pieces(every, plan.printed_already)
    if wishes.choice.changed:
        differing = prints.changes.among(piece.id for piece in pieces)
        pieces = [piece for piece in pieces if piece.id in differing]
    if every and not pieces:
        changes = prints.changes.but_for(plan.printed_already)
        raise _NothingToPrint(Made(checked, (), (), folder.remarks, 0, (), (), changes))
    printer = plan.spec.printer
    order = SheetOrder.FEWEST if wishes.choice.is_sparing else printer.sheet_order
    watched = [*map(prints.fingerprints.watched, pieces)]
    layout = lay_out(watched, plan.stocks, printer.gap_between_pieces, order, progress)
    useless = checked.shelf.located(useless_off_cuts(plan, pieces))
    checked = replace(checked, problems=(*checked.problems, *useless))
    then = partial(prints.then, pieces)
    files, printed = publish(folder.path, checked, layout, chosen, wishes, progress, then)
    about = tuple(chosen.problems(checked.problems, lambda problem, id: checked.shelf.concerns(problem, id, fields)))
    return Made(
        checked=checked,
        files=files,
        tallies=layout.tallies,
        about=(*folder.remarks, *in_vain(wishes, [file.name for file in files]), *about),
        others=len(checked.problems) - len(about),
        gone=tuple(sorted(folder.before.difference(file.name for file in files))),
        off_cuts=tuple(sheet.stock for sheet in layout.sheets if sheet.stock.off_cut),
        changes=prints.changes_to(printed).but_for(plan.printed_already),
    )


def _found(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan, drafts: Mapping[str, Draft]) -> Sequence[Problem]:
    """Everything there is to say about a shelf."""
    return (
        *shelf.remarks,
        *plan.notes,
        *thing_findings(plan, drafts),
        *fit_findings(plan),
        *row_findings(plan),
        *(fault for surface in plan.room for fault in surface.faults),
        *doubtful_piles(plan.spec.stocks),
        *doubtful_measures(comparisons(plan)),
        *estimate_notes(caliper_estimates(plan), plan.stocks),
        *film_notes(film_estimates(plan)),
    )


def _usable(shelf: ShelfFile[ShelfSpec], written: Register, kept: Keeper) -> ShelfPlan:
    """The plan of everything that was written; refused with everything that is wrong.

    A file with faults is looked through for names and files that are missing, but not worked out.
    """
    with told_in(shelf.spec.told):
        return _usable_as_told(shelf, written, kept)


def _usable_as_told(shelf: ShelfFile[ShelfSpec], written: Register, kept: Keeper) -> ShelfPlan:
    problems = [*cross_check(shelf.spec, written, kept, all_listed=shelf.all_listed)] if shelf.names_stand else []
    crossed = bool(shelf.faults or shelf.located(problems, written.fields))
    problems += outside_texts(written, shelf.spec.texts_from, shelf.folder, kept)
    register, plan = written, None
    with gathered(problems), summed():
        demand("things", len(written.things))
        register = written.read(shelf.folder, problems, kept)
        if not crossed:
            plan = plan_shelf(shelf.spec, register, kept)
    if plan is None or shelf.located(problems, written.fields):
        raise shelf.refusal([*problems, *register.spoilt], written.fields)
    return plan


def _drawn(plan: ShelfPlan, progress: Progress, kept: Keeper) -> Mapping[str, Draft]:
    """Everything drawn, by id."""
    drafts: dict[str, Draft] = {}
    for done, (id, one) in enumerate(plan.plans.items()):
        progress("drawing", done, len(plan.plans))
        drafts[id] = _draft(plan, one, kept)
    return drafts


def _draft(plan: ShelfPlan, one: Plan, kept: Keeper) -> Draft:
    """A thing drawn, or what was drawn of the same last time."""
    held = tuple(plan.held_by(one))
    return kept.value(("draft", one.id), (one, held), partial(one.family.draw, one, held))
