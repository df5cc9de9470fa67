"""Standing type: what has been set is kept standing, as printers do, in case the same is wanted again.

What is found standing is what would be set: the keys hold all that lines depend on. So nobody needs to know whether
something was set now or before, and whoever keeps more than one edition of a text sets only what differs.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from ..ground.kept import Kept
from .lines.set_lines import SetLines

__all__ = ["StandingType", "standing_type"]

MOST_LETTERS = 4_000_000
"""Letters of all paragraphs that are kept: some 40 MB."""

MOST_NUMBERS = 10_000


class StandingType:
    """Paragraphs that were set, how many pages texts took, and which sizes of type were found for them."""

    def __init__(self) -> None:
        self.paragraphs = Kept[SetLines](MOST_LETTERS, lambda found: sum(len(line.words) for line in found.lines))
        self.extents = Kept[int](MOST_NUMBERS)
        self.sizes = Kept[float](MOST_NUMBERS)

    @contextmanager
    def used(self) -> Iterator[None]:
        """Within the block, what is set is looked for here, and put here."""
        before = _USED.set(self)
        try:
            yield
        finally:
            _USED.reset(before)


_OF_THE_PROCESS = StandingType()
_USED = ContextVar("standing type", default=_OF_THE_PROCESS)


def standing_type() -> StandingType:
    """The standing type that is used at present: by default what the process has set so far."""
    return _USED.get()
