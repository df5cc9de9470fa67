"""Figures of a text: old-style or lining ones, and such as are all equally wide (OpenType onum, lnum, pnum and tnum).

What a typeface gives is judged by what it draws, not by what it promises: many have one kind only, and need nothing
switched on for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from ..ground.problems import Problem, Severity
from ..ground.typefaces import Typeface, cut_of

__all__ = ["Figures", "lacking_figures", "with_figures"]

DIGITS = "0123456789"

LEVEL = 0.06
"""Lining figures end within so many ems of one another, at the head and at the foot; round ones reach over a little."""


class Figures(StrEnum):
    """The figures of a text: as its typeface draws them, or of one kind; those of tables are all equally wide."""

    AS_DRAWN = "as drawn"
    OLD_STYLE = "old style"
    LINING = "lining"
    TABULAR = "tabular"
    OLD_STYLE_TABULAR = "old style tabular"
    LINING_TABULAR = "lining tabular"


FEATURES = {Figures.OLD_STYLE: "onum", Figures.LINING: "lnum", Figures.TABULAR: "tnum"}


def with_figures(typeface: Typeface, figures: Figures) -> Typeface:
    """A typeface with figures of a kind, as far as it has them."""
    return cut_of(typeface, tuple(FEATURES[kind] for kind in _kinds(figures)))


def lacking_figures(typeface: Typeface, figures: Figures) -> Iterator[Problem]:
    """A note on each kind of figures that a typeface was asked for and does not have."""
    for kind in _kinds(figures):
        if not _draws(cut_of(typeface, (FEATURES[kind],)), kind):
            yield Problem(
                f"{typeface.name} has no {_named(kind)} figures here and keeps its own",
                f"choose a face with {_named(kind)} figures, such as text, or leave figures out",
                Severity.NOTE,
                field=("figures",),
            )


def _kinds(figures: Figures) -> list[Figures]:
    return [kind for kind in FEATURES if kind in figures]


def _named(kind: Figures) -> str:
    return "old-style" if kind is Figures.OLD_STYLE else str(kind)


def _draws(typeface: Typeface, kind: Figures) -> bool:
    """Whether the figures of a typeface are of a kind."""
    runs = [typeface.shape(digit) for digit in DIGITS]
    if kind is Figures.TABULAR:
        return max(run.width for run in runs) - min(run.width for run in runs) < 1 / typeface.units_per_em
    tops, feet = [run.top for run in runs], [run.bottom for run in runs]
    level = max(tops) - min(tops) < LEVEL and max(feet) - min(feet) < LEVEL
    return level == (kind is Figures.LINING)
