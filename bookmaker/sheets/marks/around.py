"""What stands around the pieces of a sheet: cut and fold marks, labels, and the marks the binding hides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import dist

from ...ground.art import Filled, Stroked, Written
from ...ground.drawing import Art, Pen
from ...ground.geometry import Path, Point, Rect, Transform, polygon
from ...ground.typefaces import TextLine, Typeface, bundled, set_line
from ...paper.printer_entry import Turn
from ...typesetting.stand_ins import face_with
from ..flat import MarkKind, Stroke
from ..layout import Placement, Sheet
from .foot import footer, rule_lines
from .ink import CROSS, CUT, FOLD_PENS, PERFORATION, SCORE, TRIM, bead, blot, casing, hole_casing, note

__all__ = ["Furniture", "furnish", "furnish_reverse"]

HOLE = 0.3
"""Diameter of the dot where the needle goes through, in mm."""

NEAR = 1e-6
"""Lengths that differ by less count as equal, in mm."""

MARK_GAP = 0.3
"""Between the piece and its marks, in mm."""

CLOSE = 1.0
"""Marks nearer to one another are hard to tell apart, in mm."""

MARK_LENGTH = 1.7
FOOT_LENGTH = 1.1
"""Lengths of marks in mm; those at the foot stop above the label."""

LABEL_SIZE, LABEL_DROP = 1.35, 2.75
"""The em of labels, and how far their baseline lies below the bleed, in mm."""


@dataclass(frozen=True, slots=True)
class Furniture:
    """All that stands on a sheet besides the art of its pieces.

    `marks` lie on the pieces, where the binding hides them or the trim takes them off; everything else lies
    outside. `casings` lie under `cuts`. `beads` are the dots at the ends of the `folds` that are mountains.
    """

    casings: tuple[Art, ...] = ()
    cuts: tuple[Stroked, ...] = ()
    folds: tuple[Stroked, ...] = ()
    beads: tuple[Filled, ...] = ()
    notes: tuple[Art, ...] = ()
    marks: tuple[Art, ...] = ()
    crosses: tuple[Stroked, ...] = ()


def furnish(sheet: Sheet, shelf_name: str) -> Furniture:
    """Everything to draw around the pieces of a sheet."""
    casings: list[Art] = []
    cuts: list[Stroked] = []
    folds: list[Stroked] = []
    notes: list[Art] = list(footer(sheet, shelf_name))
    marks: list[Art] = []
    for placement in sheet.placements:
        casings += _casings(placement)
        cuts += _cut_marks(placement)
        folds += _fold_marks(placement)
        notes.append(_label(placement))
        marks += _binding_marks(placement)
        marks += _trim_marks(placement)
    crosses = tuple(Stroked.line(start, end, CROSS) for start, end in sheet.crosses)
    beads = tuple(filter(None, map(bead, folds)))
    return Furniture(tuple(casings), tuple(cuts), tuple(folds), beads, tuple(notes), tuple(marks), crosses)


def furnish_reverse(sheet: Sheet, mirror: Transform, turn: Turn) -> Furniture:
    """What stands on the reverse: which sheet it is, and the test line behind that of the front.

    `mirror` takes a point seen through the front to the page of the reverse.
    """
    area = sheet.foot
    foot = mirror.apply_to(area)
    rule = [Stroked(line.path.transformed(mirror), line.pen) for line in rule_lines(area)]
    words = (
        f"reverse of {sheet.stock.name}, sheet {sheet.number} of {sheet.count} · flipped on the {turn} · "
        "against the light, the end marks of the rule cover those of the front"
    )
    line = set_line(bundled("sans"), 2.0, words, foot.width)
    return Furniture(notes=(*rule, note(line, Point(foot.x, foot.y + 0.8))))


def _cut_marks(placement: Placement) -> list[Stroked]:
    """Two short lines outside each corner, and every edge that no steel rule finds from corner to corner."""
    flat = placement.piece.flat
    width, height = flat.size
    start = flat.bleed + MARK_GAP
    marks: list[tuple[Point, Point]] = []
    for y in (0.0, height):
        marks += [(Point(-start, y), Point(-start - MARK_LENGTH, y))]
        marks += [(Point(width + start, y), Point(width + start + MARK_LENGTH, y))]
    for x in (0.0, width):
        marks += [(Point(x, -start), Point(x, -start - FOOT_LENGTH))]
        marks += [(Point(x, height + start), Point(x, height + start + MARK_LENGTH))]
    inner = list(_inner_edges(flat.outline, Rect(0, 0, width, height)))
    drawn = [_on_sheet(placement, begin, end, CUT) for begin, end in (*marks, *inner)]
    holes = [Stroked(polygon(hole), CUT) for hole in placement.holes]
    return drawn + holes + _surrounded(placement, dict.fromkeys(flat.cuts, CUT))


def _inner_edges(outline: Sequence[Point], box: Rect) -> Iterator[tuple[Point, Point]]:
    """Edges of the outline that do not lie on its bounding box: mitres and notches."""
    for begin, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        level = begin.y == end.y and begin.y in (box.y, box.top)
        upright = begin.x == end.x and begin.x in (box.x, box.right)
        if not level and not upright:
            yield begin, end


def _casings(placement: Placement) -> list[Art]:
    """One for a piece that has edges to cut which no steel rule finds, and one for each hole."""
    flat = placement.piece.flat
    edges = list(_inner_edges(flat.outline, Rect(0, 0, *flat.size)))
    move = placement.to_sheet.apply
    cased = tuple((move(begin), move(end)) for begin, end in edges)
    return [*([casing(cased, placement.outline)] if cased else []), *map(hole_casing, placement.holes)]


def _fold_marks(placement: Placement) -> list[Stroked]:
    """Each fold, score and perforation carried on beyond the bleed at both ends."""
    flat = placement.piece.flat
    lines = {Stroke(fold.start, fold.end): FOLD_PENS[fold.kind] for fold in flat.folds}
    lines |= dict.fromkeys(flat.scores, SCORE) | dict.fromkeys(flat.perforations, PERFORATION)
    return _surrounded(placement, lines)


def _surrounded(placement: Placement, strokes: Mapping[Stroke, Pen]) -> list[Stroked]:
    """Lines across a flat as marks outside its bleed at both ends.

    Of several that lie in one line, as the folds of an octavo do, each end has the mark of the nearest. Of two
    that lie side by side, as the folds of a slipcase's tabs and its top do, the one that ends farther in is shorter.
    """
    flat = placement.piece.flat
    width, height = flat.size
    start = flat.bleed + MARK_GAP
    marks: dict[tuple[Point, Point], tuple[Pen, float]] = {}
    from_low_to_high = sorted(strokes.items(), key=lambda item: min(item[0].start, item[0].end))
    for stroke, pen in from_low_to_high:
        low, high = sorted(stroke)
        x, y = low
        if abs(x - high.x) < 1e-9:
            marks.setdefault((Point(x, -start), Point(x, -start - FOOT_LENGTH)), (pen, y))
            marks[Point(x, height + start), Point(x, height + start + MARK_LENGTH)] = pen, height - high.y
        elif abs(y - high.y) < 1e-9:
            marks.setdefault((Point(-start, y), Point(-start - MARK_LENGTH, y)), (pen, x))
            marks[Point(width + start, y), Point(width + start + MARK_LENGTH, y)] = pen, width - high.x
        else:
            marks |= {
                _slanted(*way, Rect(0, 0, width, height).grown(start)): (pen, 0.0) for way in (stroke, stroke[::-1])
            }
    return [_on_sheet(placement, begin, end, pen) for begin, end, pen in _told_apart(marks)]


def _slanted(start: Point, end: Point, box: Rect) -> tuple[Point, Point]:
    """The mark beyond the end of a line that slants, where that leaves a box."""
    length = dist(start, end)
    x, y = (end.x - start.x) / length, (end.y - start.y) / length
    aside = ((box.right if x > 0 else box.x) - end.x) / x
    above = ((box.top if y > 0 else box.y) - end.y) / y
    long = min(MARK_LENGTH, FOOT_LENGTH / -y) if y < 0 and above < aside else MARK_LENGTH
    out = min(aside, above)
    return end.plus(x * out, y * out), end.plus(x * (out + long), y * (out + long))


def _told_apart(marks: Mapping[tuple[Point, Point], tuple[Pen, float]]) -> Iterator[tuple[Point, Point, Pen]]:
    """Marks with how far in their lines end: of two too close to be told apart, the one that is farther in halved."""
    for (begin, end), (pen, inset) in marks.items():
        nearest = min(other for (at, _), (_, other) in marks.items() if dist(begin, at) < CLOSE)
        halfway = Point((begin.x + end.x) / 2, (begin.y + end.y) / 2)
        yield begin, halfway if nearest < inset - NEAR else end, pen


def _binding_marks(placement: Placement) -> Iterator[Filled]:
    """Holes for the needle and collation marks, on the fold that the binding hides."""
    for mark in placement.piece.flat.marks:
        area = placement.to_sheet.apply_to(mark.rect)
        dot = mark.kind is MarkKind.HOLE
        yield blot(Path.circle(area.centre, HOLE / 2) if dot else Path.rectangle(area))


def _trim_marks(placement: Placement) -> Iterator[Stroked]:
    """Each line to trim along, where it runs through paper that is trimmed off: there it is still to be seen then."""
    flat = placement.piece.flat
    for start, end in flat.trims:
        upright = abs(start.x - end.x) < NEAR
        shown = [_reach(panel.rect, upright) for panel in flat.panels if _touches(panel.rect, start, upright)]
        for low, high in _without(_along(start, end, upright), shown):
            begin = Point(start.x, low) if upright else Point(low, start.y)
            finish = Point(start.x, high) if upright else Point(high, start.y)
            yield _on_sheet(placement, begin, finish, TRIM)


def _along(start: Point, end: Point, upright: bool) -> tuple[float, float]:
    return (start.y, end.y) if upright else (start.x, end.x)


def _reach(rect: Rect, upright: bool) -> tuple[float, float]:
    return (rect.y, rect.top) if upright else (rect.x, rect.right)


def _touches(rect: Rect, point: Point, upright: bool) -> bool:
    """Whether a line through the point runs along a rectangle or through it."""
    low, high = _reach(rect, not upright)
    across = point.x if upright else point.y
    return low - NEAR <= across <= high + NEAR


def _without(whole: tuple[float, float], parts: Sequence[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """What is left of an interval when others are taken out."""
    at, end = min(whole), max(whole)
    for low, high in sorted(parts):
        if low - at > NEAR:
            yield at, min(low, end)
        at = max(at, high)
    if end - at > NEAR:
        yield at, end


def _on_sheet(placement: Placement, begin: Point, end: Point, pen: Pen) -> Stroked:
    move = placement.to_sheet.apply
    return Stroked.line(move(begin), move(end), pen)


def _label(placement: Placement) -> Written:
    """The label in the margin at the foot, as long as the piece with its bleed at the most."""
    flat = placement.piece.flat
    room = flat.size.width + 2 * flat.bleed
    piece = placement.piece
    line = _shortened(face_with(" · ".join(piece.label), "sans", piece.face), piece.label, room)
    at = placement.to_sheet.apply(Point(-flat.bleed, -flat.bleed - LABEL_DROP))
    return note(line, at, int(placement.turned))


def _shortened(typeface: Typeface, label: tuple[str, str], room: float) -> TextLine:
    """The whole label, or as much of the name as leaves room for the part; its number or first word always stays."""
    book, part = label
    number, _, _ = book.partition(" ")
    kept = len(book)
    line = set_line(typeface, LABEL_SIZE, f"{book} · {part}")
    while line.width > room and kept > len(number):
        kept -= 1
        line = set_line(typeface, LABEL_SIZE, f"{book[:kept].rstrip()}… · {part}")
    short = number if number.endswith(".") or number == book else f"{number}…"
    return line if line.width <= room else set_line(typeface, LABEL_SIZE, f"{short} {part}", room)
