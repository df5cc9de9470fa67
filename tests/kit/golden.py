"""Golden pictures: small pictures of covers, spines and spreads, one of each style, as they are meant to look.

    python -m tests.kit.golden

draws them anew, after a design was changed on purpose and what came of it was looked at.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

import numpy as np
from PIL import Image

from bookmaker import check
from bookmaker.ground.geometry import Rect
from bookmaker.sheets.facsimiles import Facsimile
from bookmaker.sheets.flat import Role
from bookmaker.things.book.designs.kinds import KINDS
from bookmaker.things.draft import Draft
from tests.kit.pixels import pdf_pixels
from tests.kit.styles import style_of

__all__ = ["FOLDER", "GOLDEN", "Apart", "apart", "apart_from_golden", "drawn", "golden_names", "tolerance"]

FOLDER = Path(__file__).parents[1] / "golden"

COVER, SPINE, SPREAD = 8.0, 16.0, 8.0
"""Pixels to the mm of a cover, a spine and a spread: as many as an eye sees at reading distance, and at 200 %."""

DPI = 1016.0
"""What they are drawn with before they are averaged: 40 dots to the mm."""

COMPARED, COMPARED_SPREADS = 4.0, 1.0
"""Pixels to the mm in which they are compared: finer than that, renderers differ; and pages as greys, for a paragraph
that is broken otherwise is no other design."""


class Apart(NamedTuple):
    """How far a picture is from the golden one, of 255: on the whole, and where it is most."""

    mean: float
    most: float


SPREADS: Mapping[str, int] = {"text": 1, "old-style-text": 1, "dummy-text": 1, "ledger-paper": 1, "album": 0}
"""Which opening of each book is shown."""


def golden_names() -> list[str]:
    """What there is a picture of."""
    dressed = [f"{what}-{style_of(kind).replace(' ', '-')}" for kind in KINDS for what in ("cover", "spine")]
    return [*dressed, *(f"spread-{name}" for name in SPREADS)]


TOLERANCE = Apart(1.5, 24.0)
"""So far a picture may be from the golden one: renderers and fonts of another release differ by less (measured: a
letter more in a title makes 25 to 107 where it stands, on a picture as it was 1 at most)."""

OF_SPREADS = Apart(3.0, 45.0)
"""The same of a spread (measured: a word more, and what it moves, makes 0.9 and 23; type 8 % larger 3.8 and 47)."""


@cache
def _drafts(look: int) -> Mapping[str, Draft]:
    """A book of each style, drawn, their looks so much further on."""
    checked = check(FOLDER / "shelf.yaml")
    plans = checked.plan.plans.values()
    if not look:
        return checked.drafts
    others = (plan.family.in_look(plan, 100 + look) for plan in plans)
    return {plan.id: plan.family.draw(plan, ()) for plan in others}


def _seen(name: str, look: int) -> Facsimile:
    """The whole flat cover without its bleed, the spine, or a spread."""
    what, of = name.split("-", 1)
    draft = _drafts(look)[of]
    if what == "spread":
        return draft.openings[SPREADS[of]]
    if what == "spine":
        return draft.faces[Role.SPINE]
    piece = next(piece for piece in draft.pieces for panel in piece.flat.panels if panel.role is Role.SPINE)
    return Facsimile(piece.art, Rect(0, 0, *piece.flat.size))


GOLDEN: Mapping[str, float] = {"cover": COVER, "spine": SPINE, "spread": SPREAD}


def drawn(name: str, look: int = 0) -> Image.Image:
    """A picture as it is drawn now, in the look that was kept or in another."""
    seen = _seen(name, look)
    return Image.fromarray(np.rint(pdf_pixels(seen.art, DPI, _per_mm(name), seen.box)).astype(np.uint8))


def _per_mm(name: str) -> float:
    return GOLDEN[name.split("-", 1)[0]]


def apart(one: Image.Image, other: Image.Image, larger: float) -> Apart:
    """How far two pictures of one size are from one another, both averaged over pixels so many times as large."""
    assert one.size == other.size
    wide, high = (max(1, round(side / larger)) for side in one.size)
    before, now = (
        np.asarray(picture.convert("RGB").resize((wide, high), Image.Resampling.BOX), dtype=np.float64)
        for picture in (one, other)
    )
    off = np.abs(now - before).max(axis=2)
    return Apart(float(off.mean()), float(off.max()))


def _compared(name: str) -> float:
    return COMPARED_SPREADS if name.startswith("spread-") else COMPARED


def tolerance(name: str) -> Apart:
    """How far a picture may be from the golden one."""
    return OF_SPREADS if name.startswith("spread-") else TOLERANCE


def apart_from_golden(name: str, look: int = 0) -> Apart:
    """How far a picture that is drawn now, or in another look, is from the one that was kept."""
    with Image.open(FOLDER / f"{name}.png") as kept:
        return apart(kept, drawn(name, look), _per_mm(name) / _compared(name))


def _small(picture: Image.Image) -> Image.Image:
    """In 256 colours, as long as nobody sees that."""
    few = picture.quantize(256, dither=Image.Dither.NONE)
    return few if apart(few, picture, 2.0).most <= TOLERANCE.most / 3 else picture


if __name__ == "__main__":
    for name in golden_names():
        _small(drawn(name)).save(FOLDER / f"{name}.png", optimize=True)
