"""What the worker does for each job, with the shelf file it has on its desk."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol, assert_never

from ...ground.files import looking, reason_of, supposing
from ...ground.output.single_file import write_new
from ...ground.problems import BookmakerError, CommandError, Problem
from ...ground.told import Units, told_in
from ...sheets.flat import Role
from ...shelf.plan import ShelfPlan
from ...shelf_file.book_list.table import text_of_table
from ...things.draft import Draft
from ...workshop import Checked, Workshop
from ..jobs import (
    Accept,
    Answer,
    Asked,
    Change,
    Changed,
    FirstShelf,
    Look,
    Looks,
    Make,
    Manual,
    Open,
    Overtaken,
    Painted,
    Propose,
    ReadTitles,
    Sheet,
    Tell,
    Told,
    Undo,
    Watch,
)
from ..last_made import made_folder
from ..replies import Value, as_json
from .changes import Wanted, make_change, supposed_change, wanted_of
from .details import thing_told
from .exchange import exchanged, on_what_is_there
from .first_shelf import FirstWanted, first_shelf, first_wanted_of, listed_titles
from .gallery import Gallery
from .links import problem_told, refusal_told
from .made import made_told, sheet_png
from .manual_pages import manual_pages
from .placing import placings
from .proposing import Proposing
from .shown import NOTHING_YET, shelf_shown

__all__ = ["Desk"]

SOON, SELDOM = 0.4, 3.2
"""So long, in seconds, a shelf may be drawn until what there is of it is shown; each time twice as long, up to this."""


class Send(Protocol):
    """Says something to the server."""

    def __call__(self, said: Answer | Told | Painted | Watch, /) -> None: ...


@dataclass(frozen=True, slots=True)
class _Known:
    """What is known of the shelf since it was read last: what it shows, and, once all is drawn, what was checked."""

    shown: Value
    checked: Checked | None = None


class Desk:
    """Where a shelf lies while it is shown; `is_overtaken` says whether looking at it has become needless."""

    def __init__(self, shelf: Path, send: Send, is_overtaken: Callable[[], bool]) -> None:
        self._path = shelf
        self._send, self._is_overtaken = send, is_overtaken
        self._workshop = Workshop()
        self._gallery = Gallery()
        self._proposing = Proposing(shelf, self._workshop, self._gallery, is_overtaken)
        self._known = _Known({**NOTHING_YET, "file": shelf.name})

    def do(self, asked: Asked) -> Answer:
        """Do a job.

        Raises:
            BookmakerError: it cannot be done.
            Overtaken: it is looked at once more anyway.
        """
        known = self._known.checked
        with told_in(known.plan.spec.told if known else Units.MILLIMETRES):
            return self._done(asked)

    def _done(self, asked: Asked) -> Answer:
        number = asked.number
        match asked.job:
            case Look():
                self._look()
                return Answer(number, b"")
            case Change() | Undo() | Accept() | FirstShelf():
                return self._written(number, asked.job)
            case Sheet(file, page):
                return Answer(number, sheet_png(made_folder(self._path), file, page), "image/png")
            case Manual(name):
                return Answer(number, *manual_pages()[name])
            case _:
                return self._answer(number, self._told(asked.job))

    def _written(self, number: int, job: Change | Undo | Accept | FirstShelf) -> Answer:
        """What changes the files, and is looked at at once."""
        told: Value = {}
        changed: tuple[Changed, ...] = ()
        match job:
            case Change(data):
                changed, field = make_change(self._path, wanted_of(data), self._workshop)
                fields = self._workshop.planned(self._path).register.fields
                told = {"thing": next((id for id, place in fields.items() if place == field), None)}
            case Undo(done):
                changed = exchanged(self._on_what_is_there(done))
            case Accept(key):
                changed = exchanged(self._proposing.taken(key))
            case FirstShelf(data):
                self._begin(first_wanted_of(data))
            case _ as never:
                assert_never(never)
        with suppress(Overtaken):
            self._look()
        return self._answer(number, told, changed)

    def _on_what_is_there(self, changed: tuple[Changed, ...]) -> tuple[Changed, ...]:
        """Changes to be taken back of files that somebody else changed since: made on what these hold now.

        Raises:
            BookmakerError: somebody else changed the very lines, or the shelf could not be used afterwards.
        """
        there = tuple(on_what_is_there(one) for one in changed)
        if there != changed:
            with supposing({one.path: one.before for one in there}):
                self._workshop.planned(self._path)
        return there

    def _told(self, job: Tell | Open | Looks | Propose | Make | ReadTitles) -> Value:
        match job:
            case Tell(thing):
                return thing_told(thing, self._with(thing), self._gallery, made_folder(self._path))
            case Open(thing, opening):
                return self._opened(thing, opening)
            case Looks(data):
                return self._as_it_would_be(wanted_of(data))
            case Propose(data):
                return self._proposing.proposed(data, self._all_checked())
            case Make():
                return self._made()
            case ReadTitles(data):
                return {"titles": [list(one) for one in listed_titles(text_of_table(data, "the list"))]}
            case _ as never:
                assert_never(never)

    def _answer(self, number: int, told: Value, changed: tuple[Changed, ...] = ()) -> Answer:
        self._gallery.taken(lambda pictures: self._send(Painted(pictures)))
        return Answer(number, as_json(told), changed=changed)

    def _with(self, thing: str) -> Checked:
        """What was checked last, with this thing in it.

        Raises:
            CommandError: there is no such thing.
        """
        checked = self._all_checked()
        if thing not in checked.plan.plans:
            raise CommandError((Problem(f"{thing} is no longer on the shelf", "choose another book"),))
        return checked

    def _all_checked(self) -> Checked:
        """What was checked last.

        Raises:
            CommandError: not all of it is drawn.
        """
        if self._known.checked is None:
            raise CommandError((Problem("the books are still being drawn", "wait a moment"),))
        return self._known.checked

    def _opened(self, thing: str, opening: int) -> Value:
        openings = self._with(thing).drafts[thing].openings
        if opening >= len(openings):
            raise CommandError((Problem("the book has no such opening", "leaf back"),))
        seen = openings[opening]
        return {"picture": self._gallery.hang(seen), "size": [seen.box.width, seen.box.height]}

    def _as_it_would_be(self, wanted: Wanted) -> Value:
        """A thing as it would look after a change that nobody has made yet."""
        held, field = supposed_change(self._path, wanted, self._workshop)
        with supposing(held):
            plan = self._workshop.planned(self._path)
            id = next(id for id, place in plan.register.fields.items() if place == field)
            faces = self._workshop.drawn(self._path, plan, id).faces
        return {
            str(role): {"picture": self._gallery.hang(face), "size": [face.box.width, face.box.height]}
            for role, face in faces.items()
            if role in (Role.FRONT, Role.SPINE)
        }

    def _made(self) -> Value:
        """The sheets made."""
        folder, said = made_folder(self._path), [0.0]

        def progress(doing: str, done: int, of: int) -> None:
            if time.monotonic() > said[0] + SOON:
                said[0] = time.monotonic()
                self._send(Told("progress", as_json({"doing": doing, "done": done, "of": of})))

        return made_told(self._workshop.make(self._path, folder, progress), folder)

    def _begin(self, wanted: FirstWanted) -> None:
        """A first shelf written, where there is none."""
        data = first_shelf(self._path, wanted, self._workshop)
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            write_new(self._path, data)
        except OSError as trouble:
            message = f"{self._path.name} cannot be written ({reason_of(trouble)})"
            raise CommandError((Problem(message, "choose another place for it"),)) from None

    def _look(self) -> None:
        """Show the shelf as it is now; if it cannot be used, as it was, and why."""
        with looking() as looked:
            try:
                self._show(self._workshop.planned(self._path))
            except BookmakerError as refused:
                self.refused(refused.problems)
            finally:
                paths = {one.path for one in (*looked, *self._workshop.looked(self._path))}
                self._send(Watch(frozenset({self._path, *paths})))

    def _show(self, plan: ShelfPlan) -> None:
        """Show a shelf, what is drawn of it from time to time, until all is there."""
        with told_in(plan.spec.told):
            self._show_as_told(plan)

    def _show_as_told(self, plan: ShelfPlan) -> None:
        drafts: dict[str, Draft] = {}
        shown_at, soon = time.monotonic(), SOON
        if self._known.checked is None:  # nobody has seen anything yet
            self._tell(shelf_shown(self._path, plan, drafts, None, {}, self._gallery))
        for id in plan.plans:
            if self._is_overtaken():
                raise Overtaken
            if time.monotonic() > shown_at + soon:
                soon = min(2 * soon, SELDOM)
                self._tell(shelf_shown(self._path, plan, drafts, None, {}, self._gallery))
                self._gallery.keep()
                shown_at = time.monotonic()
            drafts[id] = self._workshop.drawn(self._path, plan, id)
        checked = self._workshop.check(self._path)
        shown = shelf_shown(
            self._path, checked.plan, checked.drafts, checked.problems, placings(checked), self._gallery
        )
        self._gallery.forget()
        self._known = _Known(shown, checked)
        self._tell(shown)

    @staticmethod
    def why_not(problems: Iterable[Problem]) -> bytes:
        """What is told whoever asked for something that cannot be done."""
        return refusal_told(problems)

    def refused(self, why: Iterable[Problem]) -> None:
        """Show the shelf as it was last, and why it is not shown as it is."""
        problems = [problem_told(problem) for problem in why]
        # some editors take a file away for a moment when they save it
        missing = self._known.checked is None and not self._path.exists()
        self._tell({**self._known.shown, "problems": problems, "broken": True, "missing": missing})

    def _tell(self, shown: Value) -> None:
        self._gallery.taken(lambda pictures: self._send(Painted(pictures)))
        self._send(Told("state", as_json(shown)))
