"""What every cover design is to the rest of the book, whatever its style."""

from __future__ import annotations

from dataclasses import dataclass

from ..drawing import NOTHING, Art
from ..errors import Problem

__all__ = ["Dress", "Words"]


@dataclass(frozen=True, slots=True)
class Words:
    """What stands on a cover."""

    title: str
    author: str = ""


@dataclass(frozen=True, slots=True)
class Dress:
    """The art for one flat of a cover, and what is wrong with it; fields are relative to the design."""

    art: Art = NOTHING
    problems: tuple[Problem, ...] = ()
