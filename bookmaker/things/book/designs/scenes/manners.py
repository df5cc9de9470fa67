"""The manners in which one landscape may be printed: as a flat poster, cut in wood, engraved, stamped, screened.

A manner takes the flat shapes and lines of a landscape and says what is printed for each. All of them leave the sky
plain where it is: titles stand there. The decades are those in which each was in fashion for covers (from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, sin, sqrt
from typing import Literal, get_args

from .....ground.art import Filled, Group, Stroked
from .....ground.drawing import Art, Colour, Pen, contrast, luminance
from .....ground.geometry import Path, Rect, Transform
from ..palettes import GOLD, SOOT
from ..tones import apart, darker, lighter, mixed
from .stage import Inks, Mark, Stage, paling

__all__ = ["MANNERS", "Manner", "MannerName", "in_fashion", "manners_for"]

MannerName = Literal[
    "flat", "outlined", "woodcut", "engraved", "scraped", "stamped", "cut out", "overprinted", "screened", "washed",
    "banded", "toned",
]  # fmt: skip

DARK = 0.12
"""A ground less luminous than this is a night sky."""

MASSIVE = 0.86
"""What comes so near the key ink is printed solid."""

FAINT = 0.09
"""What is no farther from the sky than this in Oklab is a breath of it."""

STANDS_OUT = 3.5
"""A key ink has at least this contrast to the sky."""

Marks = Sequence[Mark]
Draw = Callable[[Stage, Marks, Inks], Iterator[Art]]


@dataclass(frozen=True, slots=True)
class Manner:
    """A manner: how it draws, the years in which it was in fashion, and the skies it is for: dark, pale or any."""

    draw: Draw
    years: tuple[int, int]
    skies: Literal["any", "dark", "pale"] = "any"


def _flat(_stage: Stage, marks: Marks, _inks: Inks) -> Iterator[Art]:
    """As it is: flat inks, as on posters."""
    yield from marks


def _key(inks: Inks) -> Colour:
    """The ink that stands out from the sky."""
    if luminance(inks.sky) < DARK:
        return inks.light
    key = darker(inks.near, 0.5)
    return key if contrast(key, inks.sky) > STANDS_OUT else darker(inks.sky, 0.8)


def _is_sky(mark: Mark, inks: Inks) -> bool:
    return _colour(mark) in (inks.sky, *paling(inks))


def _share(colour: Colour, inks: Inks) -> float:
    """How far a colour goes from the sky to the key ink, by lightness: up to 1, and below 0 the other way."""
    here, sky, key = (sqrt(luminance(tone)) for tone in (colour, inks.sky, _key(inks)))
    return min(1.0, (here - sky) / (key - sky))


def _with_inks(mark: Mark, colour: Colour) -> Mark:
    """The same mark in another ink."""
    return (
        Filled(mark.path, colour) if isinstance(mark, Filled) else Stroked(mark.path, replace(mark.pen, colour=colour))
    )


def _colour(mark: Mark) -> Colour:
    return mark.colour if isinstance(mark, Filled) else mark.pen.colour


def _outlined(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """Flat inks within a firm contour."""
    key, wide = darker(inks.near, 0.62), max(0.07, stage.high * 0.005)
    for mark in marks:
        yield mark
        if isinstance(mark, Filled) and not _is_sky(mark, inks):
            yield Stroked(mark.path, Pen(wide, key))


def _hatched(step: float, sway: float, outline: float, *, dotted: bool = False) -> Draw:
    """Lines in one ink on the sky, `step` mm apart and as wide as the tone is far from it; what goes the other way is
    left blank, or printed in a second ink.
    """

    def draw(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
        key = _key(inks)
        other = darker(inks.sky, 0.55) if luminance(inks.sky) < DARK else inks.light
        for mark in marks:
            share = _share(_colour(mark), inks)
            if share > MASSIVE or isinstance(mark, Stroked):
                yield _with_inks(mark, key if share > 0 else other)
                continue
            if share < 0:
                yield _with_inks(mark, inks.sky if _is_sky(mark, inks) else other)
            else:
                yield _with_inks(mark, inks.sky)
                dash = (step * (0.25 + 1.1 * share), step * (1.55 - 1.1 * share)) if dotted else ()
                pen = Pen(step * min(0.85, 0.1 + 0.8 * share), key, dash)
                if share > 0.04:
                    yield Group((Stroked(_rows(stage, mark.path.bounds, step, sway), pen),), clip=mark.path)
            if outline and not _is_sky(mark, inks):
                yield Stroked(mark.path, Pen(outline, key))

    return draw


def _rows(stage: Stage, box: Rect, step: float, sway: float) -> Path:
    """Level lines over a box, at the same places whatever box it is."""
    box = Rect(max(box.x, stage.area.x), max(box.y, stage.area.y), min(box.right, stage.area.right),
               min(box.top, stage.area.top))  # fmt: skip
    left, low, right, high = box
    commands: list[tuple[str | float, ...]] = []
    for row in range(floor((low - stage.low) / step), ceil((high - stage.low) / step) + 1):
        y, aside = stage.low + row * step, step * 0.9 * (row % 2)
        if not sway:
            commands += [("M", stage.origin + _down(left - stage.origin, step * 4) + aside, y), ("L", right, y)]
            continue
        wave = 2.4
        x = stage.origin + _down(left - stage.origin, wave)
        commands.append(("M", x, y))
        while x < right:
            rise = sway * sin(row * 0.9 + (x - stage.origin))
            commands.append(("C", x + wave * 0.33, y + rise, x + wave * 0.67, y - rise, x + wave, y))
            x += wave
    return Path(tuple(commands))


def _down(length: float, step: float) -> float:
    return floor(length / step) * step


def _stamped(_stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """On cloth with dies: what is dark in black, what is light in gold or bone, what is between left out."""
    dark = luminance(inks.sky) < DARK
    black = darker(inks.sky, 0.62) if dark else SOOT
    metal = GOLD if apart(GOLD, inks.sky) > 0.2 else lighter(inks.light, 0.2)
    for number, mark in enumerate(marks):
        colour = _colour(mark)
        if not number or _is_sky(mark, inks) or apart(colour, inks.sky) < FAINT:
            yield _with_inks(mark, inks.sky)
        elif apart(colour, inks.accent) < 0.05:
            yield mark
        elif luminance(colour) > luminance(inks.sky) and (not dark or _share(colour, inks) > 0.45):
            yield _with_inks(mark, metal)
        else:
            yield _with_inks(mark, black if abs(_share(colour, inks)) > 0.4 or dark else mixed(inks.sky, black, 0.5))
            if isinstance(mark, Filled):
                yield Stroked(mark.path, Pen(0.06, metal))


def _cut_out(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """Sheets of coloured paper, each with its shadow on what lies under it."""
    away = max(0.1, stage.high * 0.007)
    for number, mark in enumerate(marks):
        if number and isinstance(mark, Filled) and not _is_sky(mark, inks):
            shadow = mark.path.transformed(Transform.move(away, away))
            yield Filled(shadow, darker(mixed(inks.sky, mark.colour, 0.6), 0.42))
        yield mark


def _overprinted(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """Two inks on the paper, one of them a little off its lines."""
    key, second = _key(inks), mixed(inks.accent, inks.light, 0.15)
    off = Transform.move(max(0.1, stage.high * 0.009), max(0.08, stage.high * 0.006))
    for number, mark in enumerate(marks):
        colour = _colour(mark)
        if not number or _is_sky(mark, inks) or apart(colour, inks.sky) < FAINT:
            yield _with_inks(mark, inks.sky)
        elif apart(colour, inks.light) < 0.12:
            yield _with_inks(mark, inks.light)
        elif apart(colour, key) < apart(colour, inks.sky):
            yield _with_inks(mark, key)
        elif isinstance(mark, Filled):
            yield Filled(mark.path, inks.sky)
            yield Filled(mark.path.transformed(off), mixed(inks.sky, second, 0.35 + 0.6 * abs(_share(colour, inks))))
            yield Stroked(mark.path, Pen(0.07, key))
        else:
            yield _with_inks(mark, second)


def _washed(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """Thin washes, each with a darker rim where it dried, and a second one that does not quite reach it."""
    lift = Transform.move(0.0, -max(0.12, stage.high * 0.012))
    for mark in marks:
        if _is_sky(mark, inks) or isinstance(mark, Stroked):
            yield mark
            continue
        tone = mixed(mark.colour, inks.sky, 0.3)
        yield Filled(mark.path, tone)
        yield Stroked(mark.path, Pen(0.09, mixed(tone, darker(mark.colour, 0.35), 0.55)))
        second = Filled(mark.path.transformed(lift), mixed(tone, mark.colour, 0.75))
        yield Group((second,), clip=mark.path)


def _banded(stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """Land in stripes that follow its line, from one ink into another."""
    for number, mark in enumerate(marks):
        yield mark
        if not number or isinstance(mark, Stroked) or _is_sky(mark, inks):
            continue
        if mark.path.bounds.width < stage.area.width * 0.9 or len(mark.path.commands) > 400:
            continue
        for band in range(1, 5):
            down = Transform.move(0.0, -band * stage.high * 0.022)
            tint = mixed(mark.colour, (inks.accent, inks.light)[band % 2], 0.12 + 0.13 * band)
            yield Group((Filled(mark.path.transformed(down), tint),), clip=mark.path)


def _toned(_stage: Stage, marks: Marks, inks: Inks) -> Iterator[Art]:
    """One dark ink in all its tones, as a photograph of its time was printed, and the paper's light."""
    deep = darker(mixed(inks.sky, inks.near, 0.4), 0.72)
    for number, mark in enumerate(marks):
        colour = _colour(mark)
        lights = luminance(colour) > luminance(inks.sky)
        share = min(1.0, apart(colour, inks.sky) / 0.55)
        yield mark if not number else _with_inks(mark, mixed(inks.sky, inks.light if lights else deep, share))


MANNERS: Mapping[MannerName, Manner] = {
    "flat": Manner(_flat, (1925, 1965)),
    "outlined": Manner(_outlined, (1892, 1915)),
    "woodcut": Manner(_hatched(0.3, 0.16, 0.08), (1895, 1950), "pale"),
    "engraved": Manner(_hatched(0.17, 0.0, 0.045), (1780, 1890), "pale"),
    "scraped": Manner(_hatched(0.2, 0.05, 0.05), (1930, 1965), "dark"),
    "stamped": Manner(_stamped, (1865, 1915)),
    "cut out": Manner(_cut_out, (1995, 2100)),
    "overprinted": Manner(_overprinted, (1945, 1968), "pale"),
    "screened": Manner(_hatched(0.26, 0.0, 0.0, dotted=True), (1958, 1980)),
    "washed": Manner(_washed, (1890, 1940), "pale"),
    "banded": Manner(_banded, (1966, 1982)),
    "toned": Manner(_toned, (1880, 1935)),
}
"""Each by its name, with the years in which it was most in fashion."""


def in_fashion(name: MannerName, year: int) -> bool:
    """Whether covers of a year were printed in a manner."""
    first, last = MANNERS[name].years
    return first <= year <= last


def manners_for(sky: Colour, year: int | None) -> tuple[MannerName, ...]:
    """The manners for a sky of a colour, those of a year if one is known and there are such."""
    sort = "dark" if luminance(sky) < DARK else "pale"
    names: tuple[MannerName, ...] = get_args(MannerName)
    fit = tuple(name for name in names if MANNERS[name].skies in ("any", sort))
    dated = tuple(name for name in fit if year is not None and in_fashion(name, year))
    return dated or (fit if year is None else ("flat",))
