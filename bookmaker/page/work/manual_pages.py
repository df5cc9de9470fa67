"""The manual as a page that may be linked into: its text, its looks and its search, each a file."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from ...shelf.schema import shelf_schema
from ...writers.manual.chapters import chapters
from ...writers.manual.keys import keys_chapter
from ...writers.manual.page import SEARCH, STYLE, manual_page

__all__ = ["manual_pages"]


@cache
def manual_pages() -> Mapping[str, tuple[bytes, str]]:
    """Each file by its name, with its media type; nothing in the page is inline but its pictures."""
    page = manual_page(chapters() | {"keys": keys_chapter(shelf_schema())}, "manual.css", "manual.js")
    return {
        "manual": (page.encode(), "text/html; charset=utf-8"),
        "manual.css": (STYLE.encode(), "text/css; charset=utf-8"),
        "manual.js": (SEARCH.encode(), "text/javascript; charset=utf-8"),
    }
