"""Outlines as SVG path data: whole thousandths of a millimetre, each step counted from where the last one ended."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.geometry import Path, Rect

__all__ = ["MICROMETRES", "path_data"]

MICROMETRES = 1000
"""Units to the millimetre: finer than any screen or printer shows, and numbers need no point."""

Subpath = list[tuple[str | float, ...]]


def path_data(path: Path, window: Rect | None = None, reach: float = 0.0) -> str:
    """The `d` of a path; parts of it that lie outside the window, by more than `reach` mm, are left out.

    A part that ends before the next one begins paints nothing outside the rectangle around its points, so that
    nothing in the window changes.

    >>> path_data(Path.rectangle(Rect(1, 2, 0.5, 3)))
    'm1000 2000h500v3000h-500z'
    """
    shown = window.grown(reach) if window else None
    written: list[str] = []
    at = (0, 0)
    for part in _parts(path):
        if shown is None or _meets(part, shown):
            at = _write(part, at, written)
    return "".join(written).replace(" -", "-")


def _parts(path: Path) -> Iterator[Subpath]:
    """The subpaths, each from its first point on."""
    part: Subpath = []
    for command in path.commands:
        if command[0] == "M" and part:
            yield part
            part = []
        part.append(command)
    if part:
        yield part


def _meets(part: Subpath, window: Rect) -> bool:
    """Whether the rectangle around the points of a part, handles of curves included, touches the window."""
    numbers: list[float] = [value for command in part for value in command[1:]]  # type: ignore[misc]
    xs, ys = numbers[0::2], numbers[1::2]
    return min(xs) <= window.right and max(xs) >= window.x and min(ys) <= window.top and max(ys) >= window.y


def _write(part: Subpath, at: tuple[int, int], written: list[str]) -> tuple[int, int]:
    """Append a part that follows on a point, in whole units; returns where the pen is afterwards."""
    x, y = at
    first = at
    last = ""
    for command in part:
        kind = command[0]
        if kind == "Z":
            written.append("z")
            x, y = first
            last = "z"
            continue
        numbers = [round(value * MICROMETRES) for value in command[1:]]  # type: ignore[arg-type]
        end_x, end_y = numbers[-2:]
        if kind == "M":
            written.append(f"m{end_x - x} {end_y - y}")
            first, last = (end_x, end_y), "m"
        elif kind == "C":
            written.append(("" if last == "c" else "c") + _steps(numbers, x, y, last == "c"))
            last = "c"
        elif end_y == y:
            written.append(f"h{end_x - x}")
            last = "h"
        elif end_x == x:
            written.append(f"v{end_y - y}")
            last = "v"
        else:
            # after a first point, and after another line, a pair of numbers is a line of itself
            written.append(f"{' ' if last in ('l', 'm') else 'l'}{end_x - x} {end_y - y}")
            last = "l"
        x, y = end_x, end_y
    return x, y


def _steps(numbers: Sequence[int], x: int, y: int, follows: bool) -> str:
    """The three points of a curve as steps from its beginning."""
    x1, y1, x2, y2, x3, y3 = numbers
    steps = f"{x1 - x} {y1 - y} {x2 - x} {y2 - y} {x3 - x} {y3 - y}"
    return f" {steps}" if follows else steps
