"""Long texts set ahead, several at a time, where the machine has the processors for it.

What comes out is the same to the byte: a text set in another process is put where the one process would have
kept its own setting of it. Small shelves are not worth the start of a process, and nothing happens.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import sys
from collections.abc import Sequence

from ..things.book.pages.inside import LoadedInside
from ..things.book.pages.part import LongText
from ..things.book.pages.prose.copyfit import Proofs
from ..typesetting.page import PageFrame
from .entries import ShelfSpec
from .extents import page_frame

__all__ = ["LEAST_WORDS", "set_texts_ahead"]

LEAST_WORDS = 60_000
"""Words in all texts but the longest, below which starting processes costs about what it saves."""

MOST_PROCESSES = 8

Task = tuple[int, LongText, PageFrame, bool]


def set_texts_ahead(spec: ShelfSpec, insides: Sequence[LoadedInside], least_words: int = LEAST_WORDS) -> bool:
    """Set the texts of a shelf in several processes, if that pays; whether it did.

    `insides` is what was read for each book. It pays with two processors, two texts, and many words in all
    but the longest of them.
    """
    tasks = sorted(_tasks(spec, insides), key=lambda task: -task[1].words)
    processes = min(_processors(), len(tasks), MOST_PROCESSES)
    if processes < 2 or sum(task[1].words for task in tasks[1:]) < least_words:
        return False
    # a process that lives for one text has no use for collecting garbage
    with multiprocessing.get_context("fork").Pool(processes, gc.disable) as pool:
        for number, proofs in pool.imap_unordered(_set, tasks, chunksize=1):
            text = insides[number].long_text
            assert text is not None  # only texts become tasks
            text.take(proofs)
    return True


def _processors() -> int:
    """Processors that this process may use; 1 where processes cannot be forked from a running one."""
    if sys.platform != "linux":
        return 1
    return len(os.sched_getaffinity(0))


def _tasks(spec: ShelfSpec, insides: Sequence[LoadedInside]) -> list[Task]:
    tasks: list[Task] = []
    for number, (book, inside) in enumerate(zip(spec.books, insides, strict=True)):
        if text := inside.long_text:
            frame = page_frame(spec, book, book.block.asked_pages or 0)
            tasks.append((number, text.bare(), frame, book.block.is_open))
    return tasks


def _set(task: Task) -> tuple[int, Proofs]:
    number, text, frame, is_open = task
    return number, text.set_ahead(frame, open_ended=is_open)
