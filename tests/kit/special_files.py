"""What may stand under the name of a file and is none: pipes, sockets, devices, folders, links that lead nowhere."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable, Mapping
from pathlib import Path

__all__ = ["NO_FILES", "lay"]


def _pipe(path: Path) -> None:
    os.mkfifo(path)


def _socket(path: Path) -> None:
    here = Path.cwd()
    os.chdir(path.parent)  # the path of a socket is short
    try:
        with socket.socket(socket.AF_UNIX) as one:
            one.bind(path.name)
    finally:
        os.chdir(here)


def _folder(path: Path) -> None:
    path.mkdir()


def _circle(path: Path) -> None:
    other = path.with_name(f"{path.name}.other")
    path.symlink_to(other)
    other.symlink_to(path)


def _astray(path: Path) -> None:
    path.symlink_to("nowhere")


def _endless(path: Path) -> None:
    path.symlink_to("/dev/zero")


NO_FILES: Mapping[str, Callable[[Path], None]] = {
    "a pipe": _pipe,
    "a socket": _socket,
    "a folder": _folder,
    "a circle of links": _circle,
    "a link to nothing": _astray,
    "an endless device": _endless,
}
"""Each lays itself under a path that is free."""


def lay(what: str, path: Path) -> None:
    """Lay one of them under a path, in the place of what stands there."""
    path.unlink(missing_ok=True)
    NO_FILES[what](path)
