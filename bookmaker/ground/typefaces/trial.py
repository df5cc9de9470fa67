"""A font of the maker's used for the first time, in a process that may die: it has limits of time and memory.

What a font asks for is only known when it is obeyed: tables of substitutions are programs, and so are outlines. What
this process lives through, the work itself may do.
"""

from __future__ import annotations

import importlib.util
import io
import os
import subprocess
import sys
import unicodedata
from pathlib import Path
from typing import TYPE_CHECKING

from .soundness import UnsoundFontError

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont

    from .typeface import Run, Typeface

__all__ = ["BLANKLESS", "FAILED", "MOST_TRIED", "USELESS", "main", "try_out"]

LONGEST = 10
"""Seconds of work that a font may take; usual ones take half a one."""

WAITED = 60
"""Seconds until nobody waits any more, however busy the machine is."""

MOST_MEMORY = 2_000_000_000
"""Bytes of memory that a font may take."""

MOST_TRIED = 600
"""So many characters are set and drawn, those of Europe first: what others lack is found when they are drawn."""

FAILED = "is damaged, or asks for more time or memory than a font may"

USELESS = "has no letters that can be seen"

BLANKLESS = "has no width for the blank between words"


def try_out(data: bytes) -> None:
    """Set the letters of a font and draw them.

    Raises:
        UnsoundFontError: that cannot be done.
    """
    command = [sys.executable, "-c", f"from {__name__} import main; main()"]
    try:
        # what the process says besides is nobody's concern
        ended = subprocess.run(command, input=data, capture_output=True, timeout=WAITED, check=False, env=_around())
    except subprocess.TimeoutExpired:
        raise UnsoundFontError(FAILED) from None
    told = ended.stdout.decode(errors="replace").strip()
    if told != "sound":
        raise UnsoundFontError(told if told in (USELESS, BLANKLESS) else FAILED)


def _around() -> dict[str, str]:
    """What the process needs to find what this one has loaded."""
    return {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}


def main() -> None:
    """Try the font that is read from the standard input, and say `sound`, or what is wrong with it."""
    _limit()
    # who only waits for this process needs none of them
    from fontTools.ttLib import TTFont

    from .typeface import Typeface

    data = sys.stdin.buffer.read()
    tables = TTFont(io.BytesIO(data), lazy=True)
    typeface = Typeface(Path("font"), data, tables)
    # all of them, for the other reader of outlines, which copies them into files, has no bounds
    if not all(map(typeface.draws, range(tables["maxp"].numGlyphs))):
        raise UnsoundFontError(FAILED)
    runs = _set(typeface)
    _draw(typeface, tables, runs)
    seen = any(run.width > 0 and run.right > run.left for run in runs if unicodedata.category(run.text)[0] in "LN")
    print(USELESS if not seen else BLANKLESS if typeface.shape(" ").width <= 0 else "sound")


def _set(typeface: Typeface) -> list[Run]:
    """The characters of a font one by one, after all of them were set together."""
    text = "".join(map(chr, typeface.characters[:MOST_TRIED]))
    for features in ((), ("smcp",)):
        for part in (text[at : at + 20] for at in range(0, len(text), 20)):
            typeface.shape(part, features=features)
    return [typeface.shape(character) for character in text]


def _draw(typeface: Typeface, tables: TTFont, runs: list[Run]) -> None:
    """What is asked of a glyph where it is placed, and where it is copied into a file."""
    from fontTools.pens.basePen import NullPen
    from fontTools.pens.filterPen import DecomposingFilterPen

    glyphs = tables.getGlyphSet()
    for number in {glyph.gid for run in runs for glyph in run.glyphs}:
        typeface.outline(number)
        name = tables.getGlyphName(number)
        glyphs[name].draw(DecomposingFilterPen(NullPen(), glyphs))
        tables["hmtx"][name]


def _limit() -> None:
    """Die of too much work or memory, on systems that count them; whoever set narrower limits meant them."""
    if importlib.util.find_spec("resource"):
        import resource

        for what, most in ((resource.RLIMIT_CPU, LONGEST), (resource.RLIMIT_AS, MOST_MEMORY)):
            _, hard = resource.getrlimit(what)
            resource.setrlimit(what, (most if hard == resource.RLIM_INFINITY else min(most, hard), hard))
