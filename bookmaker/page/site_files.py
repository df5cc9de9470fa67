"""The page itself: its text, its modules and its looks, read once."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib.resources import files

__all__ = ["KINDS", "site_files"]

KINDS = {"html": "text/html; charset=utf-8", "js": "text/javascript; charset=utf-8", "css": "text/css; charset=utf-8"}
"""The media types of its files, by the end of their names."""


@cache
def site_files() -> Mapping[str, bytes]:
    """All files of the page by their names."""
    folder = files(__package__).joinpath("site")
    return {one.name: one.read_bytes() for one in folder.iterdir() if one.name.rpartition(".")[2] in KINDS}
