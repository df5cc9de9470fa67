"""Colours by the plain names of painters and dyers, for those who do not think in numbers."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["PLAIN_NAMES"]

PLAIN_NAMES: Mapping[str, str] = {
    "red": "#a8262b",
    "scarlet": "#c8321f",
    "crimson": "#8e1b32",
    "maroon": "#5e1a22",
    "pink": "#d99aa5",
    "orange": "#d0702a",
    "rust": "#8c4a32",
    "brown": "#5a3a24",
    "tan": "#b18a5c",
    "yellow": "#e0b93a",
    "gold": "#c79a3b",
    "cream": "#f2e8cf",
    "beige": "#d8c8a4",
    "green": "#2f6b3f",
    "olive": "#6b6a2e",
    "teal": "#1f6466",
    "turquoise": "#3c9a99",
    "blue": "#24508c",
    "navy": "#1d2b4f",
    "violet": "#5b3f7a",
    "purple": "#54284f",
    "silver": "#a9adb0",
    "grey": "#7a7c7e",
    "white": "#ffffff",
    "black": "#1a1a1a",
}
"""What to write of each: a shade as book cloth and leather have it (our own choice)."""
