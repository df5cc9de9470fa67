"""A scan of a real cover laid on a flat: as one picture, or back, spine and front each fitted to its own face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise

from ..drawing import Art, Drawn
from ..errors import Problem, Severity
from ..flat import Flat, Role
from ..geometry import Rect, Size
from ..imported import ImportedPage
from ..pictures import Picture
from .run_on import filling
from .shapes import FilledPage, FilledPicture

__all__ = ["face_of_scan", "scanned", "size_of", "stretched_problems"]

SHOWN = (Role.BACK, Role.SPINE, Role.FRONT, Role.JOINT)

STRETCHED = 1.25
"""A part of a scan that is printed so much wider or narrower than its height asks for is told."""

PARTS = ("left side", "spine", "right side")

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
    stretched to it, and the sides to what is left on either side.
    """
    places = _places(face, widths, flat)
    if not places:
        return filling(scan, face)
    shares = pairwise(accumulate((width / sum(widths) for width in widths), initial=0.0))
    return Drawn(tuple(_part(scan, place, *share) for place, share in zip(places, shares, strict=True)))


def stretched_problems(scan: Scan, face: Rect, widths: Sequence[float], flat: Flat) -> Iterator[Problem]:
    """A note on each part of a scan that looks stretched or squeezed."""
    size, places = size_of(scan), _places(face, widths, flat)
    for name, place, width in zip(PARTS, places, widths, strict=True) if places else ():
        wider = place.width / place.height * size.height / (size.width * width / sum(widths))
        if not 1 / STRETCHED <= wider <= STRETCHED:
            yield Problem(
                f"the {name} of {scan.path.name} is printed at {wider:.0%} of its width",
                "it is fitted to this book; write the widths as they are in the scan if that is not so",
                Severity.NOTE,
                field=("widths",),
            )


def _places(face: Rect, widths: Sequence[float], flat: Flat) -> tuple[Rect, ...]:
    """Left side, spine and right side of a flat that has a spine."""
    spine = next((panel.rect for panel in flat.panels if panel.role is Role.SPINE), None)
    if not widths or spine is None:
        return ()
    edges = (face.x, spine.x, spine.right, face.right)
    return tuple(Rect(left, face.y, right - left, face.height) for left, right in pairwise(edges))


def _part(scan: Scan, place: Rect, low: float, high: float) -> Art:
    """The part of a scan between two shares of its width, stretched to its place."""
    width = place.width / (high - low)
    whole = Rect(place.x - low * width, place.y, width, place.height)
    return FilledPicture(scan, whole, place) if isinstance(scan, Picture) else FilledPage(scan, whole, place)
