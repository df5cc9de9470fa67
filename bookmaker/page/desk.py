"""What the worker does for each job, with the shelf file it has on its desk."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from ..ground.files import looking
from ..ground.problems import BookmakerError
from ..shelf.plan import ShelfPlan
from ..things.draft import Draft
from ..workshop import Checked, Workshop
from .gallery import Gallery
from .jobs import Answer, Asked, Look, Painted, Told, Watch
from .replies import as_json
from .shown import NOTHING_YET, Value, problem_shown, shelf_shown

__all__ = ["Desk", "Overtaken"]

SOON = 0.4
"""So long, in seconds, a shelf may be drawn until what there is of it is shown."""


class Overtaken(Exception):  # noqa: N818 - it is no error
    """What is being done has become needless: something changed meanwhile."""


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
        self._known = _Known({**NOTHING_YET, "file": shelf.name})

    def do(self, asked: Asked) -> Answer:
        """Do a job.

        Raises:
            BookmakerError: it cannot be done.
            Overtaken: it is looked at once more anyway.
        """
        match asked.job:
            case Look():
                self._look()
                return Answer(asked.number, b"")
        raise AssertionError(asked)

    def _look(self) -> None:
        """Show the shelf as it is now; if it cannot be used, as it was, and why."""
        with looking() as looked:
            try:
                self._show(self._workshop.planned(self._path))
            except BookmakerError as refused:
                self._refused(refused)
            finally:
                paths = {one.path for one in (*looked, *self._workshop.looked(self._path))}
                self._send(Watch(frozenset({self._path, *paths})))

    def _show(self, plan: ShelfPlan) -> None:
        """Show a shelf, what is drawn of it from time to time, until all is there."""
        drafts: dict[str, Draft] = {}
        shown_at = time.monotonic()
        for id in plan.plans:
            if self._is_overtaken():
                raise Overtaken
            if time.monotonic() > shown_at + SOON:
                self._tell(shelf_shown(self._path, plan, drafts, None, {}, self._gallery))
                self._gallery.keep()
                shown_at = time.monotonic()
            drafts[id] = self._workshop.drawn(self._path, plan, id)
        checked = self._workshop.check(self._path)
        shown = shelf_shown(self._path, checked.plan, checked.drafts, checked.problems, {}, self._gallery)
        self._gallery.forget()
        self._known = _Known(shown, checked)
        self._tell(shown)

    def _refused(self, refused: BookmakerError) -> None:
        problems = [problem_shown(problem) for problem in refused.problems]
        self._tell({**self._known.shown, "problems": problems, "broken": True})

    def _tell(self, shown: Value) -> None:
        self._gallery.taken(lambda pictures: self._send(Painted(pictures)))
        self._send(Told("state", as_json(shown)))
