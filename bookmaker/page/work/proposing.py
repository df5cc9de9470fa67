"""Proposals: the shelf as it would be, and what was shown written, if the files still are as they were."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable
from pathlib import Path

from ...ground.files import supposing
from ...ground.problems import CommandError, Problem
from ...shelf_file.edits.files import read_maker_file
from ...things.draft import Draft
from ...workshop import Checked, Workshop
from ..jobs import Changed
from ..replies import Value
from .exchange import changed_lines
from .gallery import Gallery
from .proposals import proposal_of
from .shown import shelf_shown

__all__ = ["Proposing"]


class Proposing:
    """Remembers what was proposed last; `is_overtaken` says whether working on a proposal has become needless."""

    def __init__(self, shelf: Path, workshop: Workshop, gallery: Gallery, is_overtaken: Callable[[], bool]) -> None:
        self._path, self._workshop, self._gallery, self._is_overtaken = shelf, workshop, gallery, is_overtaken
        self._last: tuple[Changed, ...] = ()

    def proposed(self, data: bytes, checked: Checked) -> Value:
        """The shelf as it would be, the lines that would differ, and a key to have it so.

        Raises:
            BookmakerError: what is asked for cannot be done, or the shelf could not be used afterwards.
        """
        found = proposal_of(data, checked, lambda *_: self._go_on())
        if not found.files:
            return {"words": found.words}
        held = [(read_maker_file(path), wanted) for path, wanted in found.files.items()]
        with supposing(found.files):
            plan = self._workshop.planned(self._path)
            drafts: dict[str, Draft] = {}
            for id in plan.plans:
                self._go_on()
                drafts[id] = self._workshop.drawn(self._path, plan, id)
        self._last = tuple(Changed(file.path, file.digest, wanted, file.data) for file, wanted in held)
        return {
            "key": _key_of(self._last),
            "words": found.words,
            "shelf": shelf_shown(self._path, plan, drafts, (), {}, self._gallery),
            "lines": [line for file, wanted in held for line in changed_lines(file.data, wanted)],
        }

    def taken(self, key: str) -> tuple[Changed, ...]:
        """What is to be written for the proposal with a key.

        Raises:
            CommandError: another one was asked for since.
        """
        if not self._last or key != _key_of(self._last):
            raise CommandError((Problem("this proposal is no longer at hand", "ask for it once more"),))
        last, self._last = self._last, ()
        return last

    def _go_on(self) -> None:
        if self._is_overtaken():
            raise CommandError((Problem("the shelf was changed meanwhile", "ask for it once more"),))


def _key_of(proposal: Iterable[Changed]) -> str:
    """What a proposal goes by: the same is the same in all files."""
    whole = b"".join(str(one.path).encode() + one.digest.encode() + one.before for one in proposal)
    return hashlib.sha256(whole).hexdigest()
