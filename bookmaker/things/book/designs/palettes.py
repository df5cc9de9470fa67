"""Palettes: named sets of cloth, leather and paper colours, mixed for this project."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from ....ground.drawing import Colour

__all__ = ["BONE", "GOLD", "PALETTES", "SOOT", "Material", "Palette", "PaletteName"]

GOLD = Colour.from_hex("#e3c06a")
BONE = Colour.from_hex("#f4ecd8")
SOOT = Colour.from_hex("#1f1b18")


class Material(StrEnum):
    """What a cover is made of, to the eye."""

    CLOTH = "cloth"
    LEATHER = "leather"
    PAPER = "paper"


@dataclass(frozen=True, slots=True)
class Palette:
    """Grounds for each material, and the colours of a marbling bath, the lightest last."""

    grounds: Mapping[Material, tuple[Colour, ...]]
    marbling: tuple[Colour, ...]


def _colours(hexes: str) -> tuple[Colour, ...]:
    return tuple(Colour.from_hex(f"#{digits}") for digits in hexes.split())


def _palette(cloth: str, leather: str, paper: str, marbling: str) -> Palette:
    grounds = {Material.CLOTH: cloth, Material.LEATHER: leather, Material.PAPER: paper}
    return Palette({material: _colours(hexes) for material, hexes in grounds.items()}, _colours(marbling))


PaletteName = Literal["library", "harbour", "orchard", "attic", "fairground"]

PALETTES: Mapping[PaletteName, Palette] = {
    # Deep and quiet, as behind glass doors.
    "library": _palette(
        "6e2428 24483a 26395a 7a4a24 3d2b3f 56602f 8a6a35 2c2a2e",
        "5f2a1d 7b4b2a 2f2320 6b1f26 2a3f33 9a6b3c 27304a",
        "d9ccb0 b7c0b0 c9b79a a9b4bd cdb2a4 8f8a74",
        "6b2129 1f3550 b98a3f e6d9bd",
    ),
    # Weather, rope and rust.
    "harbour": _palette(
        "1f4256 8c4a32 4f6d73 b59a68 2b3440 7b8a83 a9623f 365c50",
        "7a4630 22384a 4a2f26 8f6f48 35454a 612b24",
        "d6d2c2 a8bcc0 c8b48c e2dac4 90a3a0 c49a80",
        "1f4256 8c4a32 7b9aa0 e4dcc6",
    ),
    # Ripe fruit and leaves.
    "orchard": _palette(
        "8e2f3c 5d7a3a bd8638 3f5a2f b3563a 6d3350 a19c4e 2f5f55",
        "7c2f2f 4b5a2c 9a5a2a 53283a 8a7038 36482f",
        "e6dcae c3d0a0 e0b98e d7c5d0 b8cbb8 e3cfa0",
        "8e2f3c 4f6d35 ca9848 efe3c2",
    ),
    # Everything a little faded and dusty.
    "attic": _palette(
        "8a6f6a 6f7a70 7d7f8c 9c8a68 5f5550 8b7d8c a58f82 636d5a",
        "6f5240 4f3f3a 8b7355 6e4a4c 54584c 9c8a70",
        "dcd2ba b3ab98 d6bfa0 aab8b0 cdb9bd 9d9484 c4c8a4",
        "7a5a55 5f6d70 a8946c ddd2bc",
    ),
    # Bright, for paperbacks, schoolbooks and children.
    "fairground": _palette(
        "b23a2e 2a6a70 d29a35 34507f 46734a 70406c c8623a 26354a",
        "943529 28595c a97a35 33476b 40623f 5f355a",
        "ead6a6 a6c9c6 e9b9a2 bccbdd c6d3a0 ddc3d2 efe1c8",
        "b23a2e 2a6a70 d9a645 f3e8cd",
    ),
}
