"""The page started: on a free port of this machine, under an address that nobody can guess, until Ctrl-C."""

from __future__ import annotations

import asyncio
import os
import secrets
import socket
import sys
import webbrowser
from collections.abc import Callable
from pathlib import Path

import uvicorn
from uvicorn.protocols.http.h11_impl import H11Protocol

from ..ground.files import read_file
from ..ground.kept.disk import KeptOnDisk
from ..ground.lost_files import is_anywhere
from ..shelf_file.source_text import SHELF
from .serving.guard import Guard
from .serving.server import Server

__all__ = ["show_shelf"]

HERE = "127.0.0.1"

MOST_CONNECTIONS = 200
"""So many connections are answered at once; what comes beyond is told to come later."""

SILENT = 8.0
"""So many seconds a connection may be open without having asked for anything."""


class _Awaited(H11Protocol):
    """A connection that is closed if it does not ask for anything in time, such as one that sends letter by letter."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override] # as its base has it
        super().connection_made(transport)
        self.loop.call_later(SILENT, self._close_if_silent)

    def _close_if_silent(self) -> None:
        if self.scope is None and self.transport and not self.transport.is_closing():
            self.transport.abort()


def show_shelf(shelf: Path, kept: KeptOnDisk | None, say: Callable[[str], None], *, browser: bool = True) -> None:
    """Show a shelf in the browser until it is ended; `say` is told the address, which is printed where nothing opens.

    Raises:
        ShelfFileError: what stands there is no file, or nothing can; one with faults is shown with them.
        OutputError: no port is free.
    """
    _check_name(shelf)
    with socket.create_server((HERE, 0), backlog=128) as listening:
        host = f"{HERE}:{listening.getsockname()[1]}"
        token = secrets.token_urlsafe(24)
        address = f"http://{host}/{token}/"
        app = Guard(Server(shelf, kept).app(), host, token)
        config = uvicorn.Config(
            app,
            http=_Awaited,
            ws="none",
            loop="asyncio",
            lifespan="on",
            log_config=None,
            log_level="critical",
            access_log=False,
            server_header=False,
            limit_concurrency=MOST_CONNECTIONS,
            timeout_keep_alive=30,
            timeout_graceful_shutdown=0,
        )
        say(f"{shelf.name} is shown at {address}")
        if browser and _has_desktop():
            webbrowser.open(address)
        try:
            uvicorn.Server(config).run([listening])
        except KeyboardInterrupt:
            say("")


def _check_name(shelf: Path) -> None:
    """Refuse what is no shelf file and never will be one. A name that is free may be that of a new shelf."""
    try:
        shelf.lstat()
        is_free = False
    except FileNotFoundError:
        is_free = is_anywhere()
    except (OSError, ValueError):
        is_free = False
    if not is_free:
        read_file(shelf, SHELF)


def _has_desktop() -> bool:
    """Whether a browser would have a window; in a bare terminal one for text would take the place of Ctrl-C."""
    return os.name == "nt" or sys.platform == "darwin" or bool({"DISPLAY", "WAYLAND_DISPLAY"} & os.environ.keys())
