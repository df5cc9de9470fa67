"""A scan of a real cover laid on a flat: as one picture, or back, spine and front each fitted to its own face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from .....ground.art import Group, Imported, Pictured
from .....ground.drawing import Art
from .....ground.geometry import Path, Rect, Size
from .....ground.imported import ImportedPage
from .....ground.pictures import Picture
from .....ground.problems import Problem, Severity
from .....sheets.flat import Flat, Role
from ..artwork import Fit
from .surround import filling

__all__ = ["cropped_problems", "face_of_scan", "scanned", "size_of"]

SHOWN = (Role.BACK, Role.SPINE, Role.FRONT, Role.JOINT)

MOST_LOST = 0.08
"""A side of a scan of which a larger share is cropped is told."""

SIDES, SPINE = ("left side", "right side"), "spine"

Scan = Picture | ImportedPage


def size_of(scan: Scan) -> Size:
    """Width and height: pixels of a picture, mm of a page."""
    return Size(scan.width_px, scan.height_px) if isinstance(scan, Picture) else scan.size


def face_of_scan(scan: Scan, flat: Flat) -> Rect | None:
    """Where a scan lies on a flat; None if nothing of it is seen there.

    A flat that holds only a part of the book shows that part of a scan: the front its right end, the back its
    left end (the other way round where the front lies on the left), the spine piece its middle.
    """
    panels = {role: [panel.rect for panel in flat.panels if panel.role is role] for role in (*SHOWN, Role.TAB)}
    rects = [corner for role in SHOWN for rect in panels[role] for corner in rect.corners]
    if not rects:
        return None
    seen = Rect.around(rects)
    if panels[Role.FRONT] and panels[Role.BACK] and not panels[Role.TAB]:
        return seen
    width = seen.height * size_of(scan).width / size_of(scan).height
    left = seen.centre.x - width / 2
    if not panels[Role.BACK]:
        left = seen.right - width if panels[Role.FRONT] else left
    elif not panels[Role.FRONT]:
        left = seen.x
    return Rect(left, seen.y, width, seen.height)


def scanned(scan: Scan, face: Rect, widths: Sequence[float], flat: Flat) -> Art:
    """A scan that fills a face; with the widths of its three parts from the left, each part fills its own.

    The spine of a scan is as wide as the book it comes from, not as this one: on a flat with a spine it is
    stretched to it. The sides keep their proportions, and are cropped evenly.
    """
    return Group(tuple(_part(part) for part in _parts(scan, face, widths, flat))) if widths else filling(scan, face)


def cropped_problems(scan: Scan, face: Rect, widths: Sequence[float], flat: Flat) -> Iterator[Problem]:
    """A note on each side of a scan that loses much of itself."""
    for part in _parts(scan, face, widths, flat):
        fit = Fit.of(Size(size_of(scan).width * (part.high - part.low), size_of(scan).height), part.place.size)
        if part.name in SIDES and fit.lost > MOST_LOST:
            yield Problem(
                f"{part.name} of {scan.path.name}: {fit.cropped}",
                "write the widths as they are in the scan, if that is not so; or crop the scan to this book",
                Severity.NOTE,
                field=("widths",),
            )


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a scan, between two shares of its width, and its place on the flat."""

    name: str
    scan: Scan
    low: float
    high: float
    place: Rect


def _parts(scan: Scan, face: Rect, widths: Sequence[float], flat: Flat) -> list[_Part]:
    """Left side, spine and right side of a scan; all of it where the flat has no spine."""
    spine = next((panel.rect for panel in flat.panels if panel.role is Role.SPINE), None)
    if spine is None:
        return [_Part("", scan, 0.0, 1.0, face)]
    shares = pairwise(accumulate((width / sum(widths) for width in widths), initial=0.0))
    edges = pairwise((face.x, spine.x, spine.right, face.right))
    places = [Rect(left, face.y, right - left, face.height) for left, right in edges]
    named = zip((SIDES[0], SPINE, SIDES[1]), shares, places, strict=True)
    return [_Part(name, scan, low, high, place) for name, (low, high), place in named]


def _part(part: _Part) -> Art:
    """A part in its place: the spine is stretched to it, a side covers it."""
    place, share, size = part.place, part.high - part.low, size_of(part.scan)
    width, height = place.width / share, place.height
    if part.name != SPINE:
        scale = max(width / size.width, height / size.height)
        width, height = size.width * scale, size.height * scale
    middle = (part.low + part.high) / 2 * width
    whole = Rect(place.centre.x - middle, place.centre.y - height / 2, width, height)
    picture = part.scan
    shown = Pictured(picture, whole) if isinstance(picture, Picture) else Imported(picture, whole)
    return Group((shown,), clip=Path.rectangle(place))
