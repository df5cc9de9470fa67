"""Outlines as SVG path data: whole thousandths of a millimetre, each step counted from where the last one ended."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...ground.geometry import Path, Rect

__all__ = ["MICROMETRES", "path_data"]

MICROMETRES = 1000
"""Units to the millimetre: finer than any screen or printer shows, and numbers need no point."""

TOUCH = 1e-6
"""What comes so near to the window, in mm, touches it."""


def path_data(path: Path, window: Rect | None = None, reach: float = 0.0) -> str:
    """The `d` of a path; parts of it that lie outside the window, by more than `reach` mm, are left out.

    A part that ends before the next one begins paints nothing outside the rectangle around its points, so that
    nothing in the window changes.

    >>> path_data(Path.rectangle(Rect(1, 2, 0.5, 3)))
    'm1000 2000h500v3000h-500z'
    """
    shown = window.grown(reach) if window else None
    if shown is None or not path.commands or shown.contains(path.bounds):
        return _written(path.commands)
    parts = (part for part in _parts(path) if part.bounds.overlaps(shown, -TOUCH))
    return _written([command for part in parts for command in part.commands])


def _parts(path: Path) -> Iterator[Path]:
    """The subpaths, each from its first point on."""
    starts = [place for place, command in enumerate(path.commands) if command[0] == "M"]
    for start, end in zip(starts, [*starts[1:], None], strict=True):
        yield Path(path.commands[start:end])


def _written(commands: Iterable[tuple[str | float, ...]]) -> str:
    """Commands as they are written; a letter that the one before stands for too is left out."""
    written: list[str] = []
    x = y = first_x = first_y = 0
    last = ""
    for kind, *numbers in commands:
        if kind == "Z":
            written.append("z")
            x, y, last = first_x, first_y, "z"
            continue
        units = [round(number * MICROMETRES) for number in numbers]  # type: ignore[arg-type]  # a letter comes first only
        end_x, end_y = units[-2:]
        if kind == "C":
            x1, y1, x2, y2 = units[:4]
            letter = " " if last == "c" else "c"
            written.append(f"{letter}{x1 - x} {y1 - y} {x2 - x} {y2 - y} {end_x - x} {end_y - y}")
            last = "c"
        elif kind == "M":
            written.append(f"m{end_x - x} {end_y - y}")
            first_x, first_y, last = end_x, end_y, "m"
        elif end_y == y:
            written.append(f"h{end_x - x}")
            last = "h"
        elif end_x == x:
            written.append(f"v{end_y - y}")
            last = "v"
        else:
            # after a first point, and after another line, two numbers are a line of themselves
            written.append(f"{' ' if last in 'lm' else 'l'}{end_x - x} {end_y - y}")
            last = "l"
        x, y = end_x, end_y
    return "".join(written).replace(" -", "-")
