"""News for all who look at the page, as server-sent events (HTML Living Standard, 9.2)."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator

__all__ = ["News", "TooMany"]

MOST_LISTENERS = 24
"""So many tabs may listen at once."""

MOST_WAITING = 200
"""Who has so much to hear yet is too slow: the connection ends, and the browser opens it anew."""

ALIVE = 20.0
"""After so many seconds without news something is sent, which finds out who has gone."""


class TooMany(Exception):  # noqa: N818 - it is the answer
    """Nobody else may listen."""


class News:
    """Who listens, and what each has not heard yet."""

    def __init__(self) -> None:
        self._waiting: set[asyncio.Queue[bytes]] = set()

    def tell(self, event: str, data: str) -> None:
        """Tell all; `data` is one line."""
        message = f"event: {event}\ndata: {data}\n\n".encode()
        for queue in [*self._waiting]:
            if queue.qsize() >= MOST_WAITING:
                self._waiting.discard(queue)
            else:
                queue.put_nowait(message)

    def listened(self, first: str) -> AsyncIterator[bytes]:
        """What one listener is sent, for ever; `first` is the data of an event ``state`` to begin with.

        Raises:
            TooMany: there are too many already.
        """
        if len(self._waiting) >= MOST_LISTENERS:
            raise TooMany
        queue: asyncio.Queue[bytes] = asyncio.Queue()
        self._waiting.add(queue)
        queue.put_nowait(f"retry: 500\nevent: state\ndata: {first}\n\n".encode())
        return self._heard(queue)

    async def _heard(self, queue: asyncio.Queue[bytes]) -> AsyncIterator[bytes]:
        try:
            while queue in self._waiting:
                try:
                    yield await asyncio.wait_for(queue.get(), ALIVE)
                except TimeoutError:
                    yield b": still here\n\n"
        finally:
            self._waiting.discard(queue)
