"""What leaves show besides what is set on them: printed or marbled ends, and paper that has browned.

Paper browns from its edges inwards, where air and light reach it (common knowledge of conservators); each leaf here is
printed in a few steps of tone, palest at the spine. White paper gets none unless it is asked for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random
from typing import Literal

from pydantic import Field

from ...ground.art import NOTHING, Filled, Group
from ...ground.drawing import Art, Colour
from ...ground.geometry import Path, Rect
from ...sheets.flat import Face, Flat, Role
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.words import Ink
from .designs.grounds.marbling import marbled
from .designs.grounds.textures import spots
from .designs.ornament.repeats import printed_paper
from .designs.palettes import PALETTES, Material, PaletteName
from .designs.tones import darker, lighter, mixed

__all__ = ["AS_PAPER", "Browned", "LeafTones", "browned_pages", "edges_of_leaves", "ends_art"]

Browned = Literal["none", "light", "heavy"]

AGES: tuple[tuple[int, Browned], ...] = ((1850, "light"), (1940, "heavy"), (1985, "light"))
"""Until which year paper browned how far: that of rags a little; that of ground wood, with alum in its size, soon and
deep; since then there is less of either, and paper made to last is free of both (ISO 9706:1994; years from memory).
"""

PALE: dict[Browned, Colour] = {"light": Colour.from_hex("#faf4e3"), "heavy": Colour.from_hex("#f2e4c4")}
BROWN: dict[Browned, Colour] = {"light": Colour.from_hex("#efdfba"), "heavy": Colour.from_hex("#d3b480")}
"""The tone in the middle of a leaf, and at its edges."""

WHITE_EDGES = Colour.from_hex("#e6dfd0")
"""The edges of white leaves, which lie in one another's shade."""

STEPS, REACH = 12, 0.13
"""In so many steps, over so much of the width of the leaf."""

FOXED = 14
"""Heavily browned leaves have so many spots at most."""


class LeafTones(Entry):
    """What leaves show besides what is set on them."""

    ends: Literal["plain", "toned", "printed", "marbled"] = Field(
        "plain", description="pastedowns and the flyleaves that face them: plain, toned, printed, marbled"
    )
    ends_colour: Ink | None = Field(None, description="their colour; one of the design's palette, if not given")
    browned: Literal[Browned, "by age"] = Field(
        "none", description="how far all leaves have browned: none, light, heavy, or by age, as paper of its year has"
    )

    def browning(self, year: int | None) -> Browned:
        """How far the leaves of a book of a year have browned; by age, one of no year has not.

        >>> [LeafTones(browned="by age").browning(year) for year in (1801, 1905, 1970, 2012)]
        ['light', 'heavy', 'light', 'none']
        """
        if self.browned != "by age":
            return self.browned
        return next((browned for until, browned in AGES if year and year < until), "none")


AS_PAPER = LeafTones()
"""Leaves as the paper is."""


def ends_art(tones: LeafTones, flat: Flat, face: Face, palette: PaletteName, kin: int) -> Art:
    """The art of the ends on one face of a flat: each pastedown and the flyleaf beside it as one sheet, to the bleed.

    The other flyleaves stay as the paper is.
    """
    if tones.ends == "plain":
        return NOTHING
    panels = flat.seen_from(face)
    down = [panel.rect for panel in panels if panel.role is Role.PASTEDOWN]
    fly = [panel.rect for panel in panels if panel.role is Role.FLYLEAF]
    sheets = [Rect.around([*rect.corners, *(corner for other in fly if _touch(rect, other)
                                            for corner in other.corners)]) for rect in down]  # fmt: skip
    whole = Rect(0, 0, *flat.size)
    return Group(tuple(_end(tones, sheet, whole, flat.bleed, palette, kin) for sheet in sheets)) if sheets else NOTHING


def _touch(one: Rect, other: Rect) -> bool:
    return abs(one.right - other.x) < 1e-6 or abs(other.right - one.x) < 1e-6


def _end(tones: LeafTones, sheet: Rect, whole: Rect, bleed: float, palette: PaletteName, kin: int) -> Art:
    """One sheet of ends; where it ends with its flat it goes on into the bleed."""
    left, right = (bleed if abs(a - b) < 1e-6 else 0.0 for a, b in ((sheet.x, whole.x), (sheet.right, whole.right)))
    area = sheet.grown(left, bleed, right, bleed)
    chance = Random(f"ends {kin}")
    paper = tones.ends_colour or chance.choice(PALETTES[palette].grounds[Material.PAPER])
    inner: list[Art] = [Filled.box(area, paper)]
    if tones.ends == "printed":
        inner += printed_paper(area, darker(paper, 0.22 if chance.random() < 0.6 else 0.45), chance)
    elif tones.ends == "marbled":
        *strong, pale = PALETTES[palette].marbling
        inner += marbled(area, (*strong, tones.ends_colour or pale), chance)
    return Group(tuple(inner), clip=Path.rectangle(area))


def browned_pages(
    browned: Browned, pages: Sequence[Art], leaf: Rect, beyond: float, seed: str, *, right_to_left: bool = False
) -> tuple[Art, ...]:
    """The pages on browned paper, blank ones too; `beyond` mm of each are trimmed off at head, tail and fore-edge."""
    if browned == "none":
        return tuple(pages)
    return tuple(
        Group((_leaf(browned, leaf, beyond, (number % 2 == 1) is not right_to_left, f"{seed} {number}"), page))
        for number, page in enumerate(pages, start=1)
    )


def edges_of_leaves(browned: Browned) -> Colour:
    """The colour of the edges of all leaves together."""
    return WHITE_EDGES if browned == "none" else darker(BROWN[browned], 0.12)


def _leaf(browned: Browned, leaf: Rect, beyond: float, spine_on_left: bool, seed: str) -> Art:
    return Group(tuple(_browning(browned, leaf, beyond, spine_on_left, Random(seed))))


def _browning(browned: Browned, leaf: Rect, beyond: float, spine_on_left: bool, chance: Random) -> Iterator[Art]:
    pale, brown = PALE[browned], BROWN[browned]
    reach = leaf.width * REACH * (0.85 + 0.3 * chance.random())
    for step in range(STEPS):
        inset = reach * (step / STEPS) ** 1.4 - (beyond if step == 0 else 0.0)
        aside = (0.0, inset) if spine_on_left else (inset, 0.0)
        inner = leaf.grown(-aside[0], -inset, -aside[1], -inset)
        yield Filled.box(inner, mixed(brown, pale, ((step + 0.5) / STEPS) ** 0.7))
    if browned == "heavy":
        yield from spots(leaf.grown(-reach), lighter(pale, 0.1), chance, int(FOXED * chance.random() ** 2))
