"""The process that owns the kept shelf: one job after the other, what is looked at first, and overtaken work dropped.

Its other thread only reads what is asked for; when the server has gone, it ends the process at once.
"""

from __future__ import annotations

import os
import signal
import threading
import traceback
from multiprocessing.connection import Connection
from pathlib import Path
from typing import TYPE_CHECKING

from ...ground.problems import BookmakerError, Problem
from ..jobs import Accept, Answer, Asked, Change, FirstShelf, Look, Overtaken, Undo

if TYPE_CHECKING:
    from ...ground.kept.disk import KeptOnDisk
    from .desk import Desk

__all__ = ["answer_to", "work"]

UNFORESEEN = Problem("bookmaker came upon something that it does not know", "take the last change back")

URGENT = (Look, Change, Undo, Accept, FirstShelf)
"""What somebody waits for to be seen on the shelf."""


def work(connection: Connection, shelf: Path, kept: KeptOnDisk | None) -> None:
    """Do what is asked through a connection, until it is closed."""
    # the server, which names this function, waits for none of what works out shelves
    from ...typesetting.standing_type import StandingType
    from .desk import Desk

    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the server, which gets the same, says when to end
    queue = _Queue(connection)
    threading.Thread(target=queue.fill, daemon=True).start()
    desk = Desk(shelf, connection.send, queue.is_overtaken)
    with StandingType(kept).used():
        while True:
            answer = answer_to(queue.next(), desk)
            if answer:
                connection.send(answer)


def answer_to(asked: Asked, desk: Desk) -> Answer | None:
    """What a job comes to, whatever happens; None if it was overtaken, and nobody waits for it any more."""
    try:
        return desk.do(asked)
    except BookmakerError as refused:
        return Answer(asked.number, desk.why_not(refused.problems), refused=True)
    except Overtaken:
        return None
    except Exception:  # a fault of bookmaker's own, for whoever mends it; the page goes on
        traceback.print_exc()
        if isinstance(asked.job, Look):
            desk.refused([UNFORESEEN])
        return Answer(asked.number, desk.why_not([UNFORESEEN]), refused=True)


class _Queue:
    """What is asked and not done yet: the urgent first, and of looks only the last."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._asked: list[Asked] = []
        self._changed = threading.Condition()

    def fill(self) -> None:
        """Read what is asked for, for ever."""
        while True:
            try:
                asked = self._connection.recv()
            except (EOFError, OSError):
                os._exit(0)
            with self._changed:
                if isinstance(asked.job, Look):
                    self._asked = [other for other in self._asked if not isinstance(other.job, Look)]
                self._asked.append(asked)
                self._changed.notify()

    def next(self) -> Asked:
        """What is to be done now; waits until there is something."""
        with self._changed:
            self._changed.wait_for(lambda: self._asked)
            first = min(self._asked, key=lambda asked: not isinstance(asked.job, URGENT))
            self._asked.remove(first)
            return first

    def is_overtaken(self) -> bool:
        """Whether something urgent waits, so that looking any longer is in vain: what it does is looked at after it."""
        with self._changed:
            return any(isinstance(asked.job, URGENT) for asked in self._asked)
