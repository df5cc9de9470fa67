"""Type that is set solid, sign beside sign without blanks, as Chinese and Japanese are.

Signs stand in squares. Marks fill half of theirs, and where two of them meet one blank half goes (Requirements for
Japanese Text Layout, JLREQ, 3.1.4, and for Chinese, CLREQ); at the ends of lines it goes too. Between these signs and
Latin letters or figures is a quarter of the square (JLREQ, 3.2.6).
"""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

from ...ground.typefaces import Glyph, Run
from .ideographs import CLASS_OF, is_wide

__all__ = ["SOLID", "blank_half", "closed_up", "is_solid"]

SOLID = frozenset({"ja", "zh"})
"""Languages that are set so; Korean has blanks between its words."""

MARKS = re.compile(r"[\u2018-\u201d\u3001\u3002\u3008-\u3011\u3014-\u301b\u301d-\u301f\uff08\uff09\uff0c\uff0e\uff1a"
                   r"\uff1b\uff3b\uff3d\uff5b\uff5d]")  # fmt: skip
HALF, QUARTER = 0.5, 0.25

SQUARE, ROOM = 0.9, 0.55
"""Ems: signs at least so wide stand in squares; two marks close up where so much between them is blank."""

AT_EDGE = 0.4
"""Blank ems beside a mark that are taken for its blank half."""

MEETING = re.compile(f"{MARKS.pattern}{MARKS.pattern}|[^\\x00-\\x7f][0-9A-Za-z\u00c0-\u024f]"
                     r"|[0-9A-Za-z\u00c0-\u024f][^\x00-\x7f]")  # fmt: skip
"""What may ask for another distance."""


def is_solid(language: str) -> bool:
    """Whether a language (BCP 47) is set solid.

    >>> is_solid("zh-Hant"), is_solid("ko"), is_solid("")
    (True, False, False)
    """
    return language.partition("-")[0].casefold() in SOLID


def closed_up(run: Run) -> Run:
    """A run with its marks closed up, and a little room around Latin words and figures."""
    if run.text.isascii() or not MEETING.search(run.text):
        return run
    glyphs = [glyph._replace(advance=glyph.advance + _more(run, glyph, after)) for glyph, after in pairwise(run.glyphs)]
    glyphs.append(run.glyphs[-1])
    return replace(run, glyphs=tuple(glyphs), width=sum(glyph.advance for glyph in glyphs))


def blank_half(run: Run, *, at_end: bool) -> float:
    """How much of the square of a mark at an end of a line is blank, in ems: half of it or nothing."""
    glyph = run.glyphs[-1 if at_end else 0]
    if glyph.advance < SQUARE or not MARKS.match(glyph.text):
        return 0.0
    left, right = run.typeface.breadth(glyph.gid)
    blank = glyph.advance - right if at_end else left
    return HALF if blank + (glyph.dx if not at_end else -glyph.dx) >= AT_EDGE else 0.0


def _more(run: Run, glyph: Glyph, after: Glyph) -> float:
    """By how much the distance of two signs differs from the usual one."""
    if MARKS.match(glyph.text) and MARKS.match(after.text):
        if min(glyph.advance, after.advance) < SQUARE:
            return 0.0
        right, left = run.typeface.breadth(glyph.gid)[1] + glyph.dx, run.typeface.breadth(after.gid)[0] + after.dx
        return -HALF if glyph.advance - right + left >= ROOM else 0.0
    if min(glyph.advance, after.advance) >= SQUARE:  # figures that stand upright fill a square too
        return 0.0
    classes = {CLASS_OF[one.text] for one in (glyph, after) if len(one.text) == 1}
    letters = classes & {"L", "9"} and "I" in classes and is_wide(glyph.text) is not is_wide(after.text)
    return QUARTER if letters else 0.0
