"""Keeps the worker: hands it jobs, passes on what it says, and begins a new one where it ends."""

from __future__ import annotations

import asyncio
import itertools
import multiprocessing
import threading
import time
from collections.abc import Callable
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path

from ...ground.kept.disk import KeptOnDisk
from ...ground.problems import Problem
from ..jobs import Answer, Asked, Job, Look, Painted, Told, Watch
from ..replies import refusal
from ..work.worker import work

__all__ = ["Foreman"]

PATIENCE = 10.0
"""A worker that ends sooner than so many seconds after it began is not replaced at once again."""

ENDED = Problem("the work was broken off", "try it once more")


class Foreman:
    """Hands jobs to a process that works on a shelf; `hear` gets what it says to all.

    One that `looks` has the shelf looked at as soon as it begins.
    """

    def __init__(
        self,
        shelf: Path,
        kept: KeptOnDisk | None,
        hear: Callable[[Told | Painted | Watch], None],
        *,
        looks: bool = True,
    ) -> None:
        self._shelf, self._kept, self._hear, self._looks = shelf, kept, hear, looks
        self._numbers = itertools.count(1)
        self._waiting: dict[int, asyncio.Future[Answer]] = {}
        self._connection: Connection | None = None
        self._process: BaseProcess | None = None
        self._began = 0.0

    @property
    def pid(self) -> int | None:
        """The number of the process, if there is one."""
        return self._process.pid if self._process else None

    def begin(self) -> None:
        """Start the worker, and have it look at the shelf."""
        context = multiprocessing.get_context("spawn")
        self._connection, other = context.Pipe()
        self._process = context.Process(target=work, args=(other, self._shelf, self._kept), daemon=True)
        self._process.start()
        other.close()
        self._began = time.monotonic()
        loop = asyncio.get_running_loop()
        threading.Thread(target=self._listen, args=(self._connection, loop), daemon=True).start()
        if self._looks:
            self.look()

    def end(self) -> None:
        """End the worker, whatever it does."""
        process, self._process = self._process, None
        if process:
            process.kill()
            process.join()
        if self._connection:
            self._connection.close()

    def look(self) -> None:
        """Have the worker look at the files anew; nobody waits for it."""
        self._hand(Asked(next(self._numbers), Look()))

    async def ask(self, job: Job) -> Answer:
        """What a job comes to."""
        if self._process is None and not self._looks:
            self.begin()
        number = next(self._numbers)
        answer: asyncio.Future[Answer] = asyncio.get_running_loop().create_future()
        self._waiting[number] = answer
        try:
            if not self._hand(Asked(number, job)):
                return Answer(number, refusal([ENDED]), refused=True)
            return await answer
        finally:
            self._waiting.pop(number, None)

    def _hand(self, asked: Asked) -> bool:
        """Hand a job to the worker; whether there is one to take it."""
        if self._process is None or self._connection is None:
            return False
        try:
            self._connection.send(asked)
        except OSError:
            return False
        return True

    def _listen(self, connection: Connection, loop: asyncio.AbstractEventLoop) -> None:
        """Pass on what a worker says, in a thread of its own, until it ends."""
        try:
            while True:
                loop.call_soon_threadsafe(self._told, connection.recv())
        except (EOFError, OSError):
            pass
        except RuntimeError:  # the server has ended
            return
        if not loop.is_closed():
            loop.call_soon_threadsafe(self._ended, connection)

    def _told(self, said: Answer | Told | Painted | Watch) -> None:
        if not isinstance(said, Answer):
            self._hear(said)
            return
        answer = self._waiting.get(said.number)
        if answer and not answer.done():
            answer.set_result(said)

    def _ended(self, connection: Connection) -> None:
        """The worker has ended by itself, or was ended: begin anew, but not again and again."""
        if self._process is None or connection is not self._connection:
            return
        self._process.join()
        self._process = None
        for number, answer in self._waiting.items():
            if not answer.done():
                answer.set_result(Answer(number, refusal([ENDED]), refused=True))
        if not self._looks:
            return
        self._hear(Told("restart", b"{}"))
        wait = 0.0 if time.monotonic() > self._began + PATIENCE else 2.0
        asyncio.get_running_loop().call_later(wait, self._begin_again)

    def _begin_again(self) -> None:
        if self._process is None:
            self.begin()
