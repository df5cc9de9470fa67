"""Files that are watched: told as soon as one of them is written."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path

from watchfiles import Change, awatch

__all__ = ["Watcher"]

SETTLED = 60
"""So many milliseconds after the first change all that came with it are told together."""

STEP = 20
"""So many milliseconds without another change end a batch of them."""


LATE = 0.3
"""So many seconds after a watch began what was written until then is surely looked at."""


class Watcher:
    """Watches the folders of some files for as long as it runs; others may be named at any time.

    Folders are watched to the end: a file that is broken for the moment names fewer than it will name again.
    """

    def __init__(self, changed: Callable[[], None]) -> None:
        self._changed = changed
        self._paths: frozenset[Path] = frozenset()
        self._folders: frozenset[Path] = frozenset()
        self._more = asyncio.Event()

    def watch(self, paths: frozenset[Path]) -> None:
        """Watch these from now on: files, and folders in which files come and go."""
        self._paths = frozenset(path.absolute() for path in paths)
        folders = frozenset(folder for path in self._paths for folder in (path, path.parent) if folder.is_dir())
        if not folders <= self._folders:
            self._folders |= folders
            self._more.set()

    async def run(self) -> None:
        """Watch until this is cancelled."""
        while True:
            self._more.clear()
            if not self._folders:
                await self._more.wait()
                continue
            watched = awatch(
                *self._folders,
                watch_filter=self._is_meant,
                debounce=SETTLED,
                step=STEP,
                stop_event=self._more,
                recursive=False,
                ignore_permission_denied=True,
            )
            asyncio.get_running_loop().call_later(LATE, self._changed)
            async for _ in watched:
                self._changed()

    def _is_meant(self, _: Change, path: str) -> bool:
        """Whether a path is one that is watched, or in a folder that is."""
        meant = Path(path)
        return meant in self._paths or meant.parent in self._paths
