"""Running titles in Markdown: `[running title]: The Ferry` under the heading of a chapter that is long.

CommonMark knows none. What stands over the pages is then this; the table of contents has the heading itself.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from ...ground.problems import Problem, Severity

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.rules_block import StateBlock

__all__ = ["RUNNING_TITLE", "read_running_titles", "stray_title"]

RUNNING_TITLE = "running_title"
"""The type of its token."""

LINE = re.compile(r"\[running title\]:[ \t]*(.*)", re.IGNORECASE)


def read_running_titles(markdown: MarkdownIt) -> MarkdownIt:
    """The same reader, which now knows running titles too."""
    markdown.block.ruler.before("reference", RUNNING_TITLE, _running_title, {"alt": ["paragraph", "reference"]})
    return markdown


def stray_title(name: str, line: int) -> Problem:
    """What to say of one that no heading of a chapter or a part stands over."""
    return Problem(
        f"{name} has a running title under no heading of a chapter in line {line}, left out",
        "write it on a line of its own right under the heading that it shortens",
        Severity.WARNING,
        field=("file",),
    )


def _running_title(state: StateBlock, start: int, _end: int, silent: bool) -> bool:
    found = LINE.match(state.src[state.bMarks[start] + state.tShift[start] : state.eMarks[start]])
    if not found or state.is_code_block(start):
        return False
    if not silent:
        token = state.push(RUNNING_TITLE, "", 0)
        token.content, token.map, token.hidden = " ".join(found[1].split()), [start, start + 1], True
        state.line = start + 1
    return True
