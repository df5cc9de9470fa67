"""What stands on a sheet besides the pieces: cut and fold marks, labels, the check rule, the legend, the notes.

Everything here is drawn in nominal millimetres like the pieces, so the printer's calibration keeps marks
and art together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from .apron import FOOTER_HEIGHT
from .drawing import WHITE, Art, Canvas, Colour, Pen
from .flat import FoldKind, MarkKind, Stroke
from .geometry import Path, Point, Rect, Transform, polygon
from .sheets import Placement, Sheet
from .spec.sheets import Turn
from .typefaces import TextLine, Typeface, bundled, set_line

__all__ = ["CUT", "FOLD_PENS", "TRIM", "Blot", "Furniture", "Line", "Note", "furnish", "furnish_reverse"]

INK = Colour(0.25, 0.25, 0.25)
CUT = Pen(0.12, INK)
"""Cut marks: a thin unbroken line."""

CASING = 0.4
"""White beside a cut line that crosses print, on the waste, so that the line shows on dark colours too: in mm."""

FOLD_PENS = {
    FoldKind.MOUNTAIN: Pen(0.15, INK, (0.5, 0.15, 0.12, 0.15)),
    FoldKind.VALLEY: Pen(0.15, INK, (0.25, 0.2)),
}
"""Fold marks: mountains in dash and dot, valleys in short dashes."""

TRIM = Pen(0.2, INK, (0.2, 0.2))
"""Trim marks, dotted: the bound block is trimmed there."""

CROSS = Pen(0.15)
"""Alignment crosses of a cutting machine."""

HOLE = 0.3
"""Diameter of the dot where the needle goes through, in mm."""

MARK_GAP = 0.3
"""Between the piece and its marks, in mm."""

MARK_LENGTH = 1.7
FOOT_LENGTH = 1.1
"""Lengths of marks in mm; those at the foot stop above the label."""

LABEL_SIZE, LABEL_DROP = 1.35, 2.75
"""The em of labels, and how far their baseline lies below the bleed, in mm."""

RULE_PEN = Pen(0.15)
RULE_LENGTHS = (100.0, 50.0, 20.0)
"""The check rule is the longest of these that the sheet holds, in mm."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line drawn with one pen."""

    start: Point
    end: Point
    pen: Pen

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""
        canvas.stroke(Path.line(self.start, self.end), self.pen)


@dataclass(frozen=True, slots=True)
class Note:
    """A line of text at a point, turned counter-clockwise with its piece if that lies turned."""

    line: TextLine
    at: Point
    turned: bool = False

    def draw(self, canvas: Canvas) -> None:
        """Set it."""
        if not self.turned:
            canvas.text(self.line, self.at, INK)
            return
        with canvas.placed(Transform.quarter_turn().moved(*self.at)):
            canvas.text(self.line, Point(0.0, 0.0), INK)


@dataclass(frozen=True, slots=True)
class Blot:
    """A filled shape."""

    shape: Path

    def draw(self, canvas: Canvas) -> None:
        """Fill it."""
        canvas.fill(self.shape, INK)


@dataclass(frozen=True, slots=True)
class Casing:
    """White along some edges of an outline that runs counter-clockwise, outside of it: none falls on the piece."""

    edges: tuple[tuple[Point, Point], ...]
    outline: tuple[Point, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw along the edges, clipped to the waste."""
        around = Rect.around(self.outline).grown(CASING).corners
        # The outer rectangle runs the other way, so that the piece is the hole in it.
        waste = Path((*polygon(around[::-1]).commands, *polygon(self.outline).commands))
        with canvas.placed(Transform(), waste):
            for begin, end in self.edges:
                canvas.stroke(Path.line(begin, end), Pen(2 * CASING, WHITE))


@dataclass(frozen=True, slots=True)
class Furniture:
    """All that stands on a sheet besides the art of its pieces.

    `marks` lie on the pieces, where the binding hides them; everything else lies outside. `casings` lie under `cuts`.
    """

    casings: tuple[Art, ...] = ()
    cuts: tuple[Line, ...] = ()
    folds: tuple[Line, ...] = ()
    notes: tuple[Art, ...] = ()
    marks: tuple[Art, ...] = ()
    crosses: tuple[Line, ...] = ()


def furnish(sheet: Sheet, shelf_name: str) -> Furniture:
    """Everything to draw around the pieces of a sheet."""
    casings: list[Art] = []
    cuts: list[Line] = []
    folds: list[Line] = []
    notes: list[Art] = list(_footer(sheet, shelf_name))
    marks: list[Art] = []
    for placement in sheet.placements:
        casings += _casings(placement)
        cuts += _cut_marks(placement)
        folds += _fold_marks(placement)
        notes.append(_label(placement))
        marks += _binding_marks(placement)
    crosses = tuple(Line(start, end, CROSS) for start, end in sheet.crosses)
    return Furniture(tuple(casings), tuple(cuts), tuple(folds), tuple(notes), tuple(marks), crosses)


def furnish_reverse(sheet: Sheet, mirror: Transform, turn: Turn) -> Furniture:
    """What stands on the reverse: which sheet it is, and the check rule behind that of the front.

    `mirror` takes a point seen through the front to the page of the reverse.
    """
    area = sheet.foot
    foot = mirror.apply_to(area)
    rule = [Line(mirror.apply(line.start), mirror.apply(line.end), line.pen) for line in _rule_lines(area)]
    words = (
        f"reverse of {sheet.stock.name}, sheet {sheet.number} of {sheet.count} · turned on the {turn} · "
        "against the light, the end marks of the rule cover those of the front"
    )
    sans = bundled("sans")
    line = set_line(sans, min(2.0, foot.width / sans.shape(words).width), words)
    return Furniture(notes=(*rule, Note(line, Point(foot.x, foot.y + 0.8))))


def _cut_marks(placement: Placement) -> list[Line]:
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
    drawn += _carried_on(placement, dict.fromkeys(flat.cuts, CUT))
    return drawn + _carried_on(placement, dict.fromkeys(flat.trims, TRIM))


def _inner_edges(outline: Sequence[Point], box: Rect) -> Iterator[tuple[Point, Point]]:
    """Edges of the outline that do not lie on its bounding box: mitres and notches."""
    for begin, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        level = begin.y == end.y and begin.y in (box.y, box.top)
        upright = begin.x == end.x and begin.x in (box.x, box.right)
        if not level and not upright:
            yield begin, end


def _casings(placement: Placement) -> list[Art]:
    """One for a piece that has edges to cut which no steel rule finds."""
    flat = placement.piece.flat
    edges = list(_inner_edges(flat.outline, Rect(0, 0, *flat.size)))
    move = placement.to_sheet.apply
    cased = tuple((move(begin), move(end)) for begin, end in edges)
    return [Casing(cased, placement.outline)] if cased else []


def _fold_marks(placement: Placement) -> list[Line]:
    """Each fold carried on beyond the bleed at both ends."""
    folds = placement.piece.flat.folds
    return _carried_on(placement, {Stroke(fold.start, fold.end): FOLD_PENS[fold.kind] for fold in folds})


def _carried_on(placement: Placement, strokes: Mapping[Stroke, Pen]) -> list[Line]:
    """Lines across a flat as marks outside its bleed at both ends.

    Of several that lie in one line, as the folds of an octavo do, each end has the mark of the nearest.
    """
    flat = placement.piece.flat
    width, height = flat.size
    start = flat.bleed + MARK_GAP
    marks: dict[tuple[Point, Point], Pen] = {}
    from_low_to_high = sorted(strokes.items(), key=lambda item: min(item[0].start, item[0].end))
    for stroke, pen in from_low_to_high:
        x, y = stroke.start
        if abs(x - stroke.end.x) < 1e-9:
            marks.setdefault((Point(x, -start), Point(x, -start - FOOT_LENGTH)), pen)
            marks[Point(x, height + start), Point(x, height + start + MARK_LENGTH)] = pen
        else:
            marks.setdefault((Point(-start, y), Point(-start - MARK_LENGTH, y)), pen)
            marks[Point(width + start, y), Point(width + start + MARK_LENGTH, y)] = pen
    return [_on_sheet(placement, begin, end, pen) for (begin, end), pen in marks.items()]


def _binding_marks(placement: Placement) -> Iterator[Blot]:
    """Holes for the needle and collation marks, on the fold that the binding hides."""
    for mark in placement.piece.flat.marks:
        area = placement.to_sheet.apply_to(mark.rect)
        dot = mark.kind is MarkKind.HOLE
        yield Blot(Path.circle(area.centre, HOLE / 2) if dot else Path.rectangle(area))


def _on_sheet(placement: Placement, begin: Point, end: Point, pen: Pen) -> Line:
    move = placement.to_sheet.apply
    return Line(move(begin), move(end), pen)


def _label(placement: Placement) -> Note:
    """The label in the apron at the foot, as long as the piece with its bleed at the most."""
    flat = placement.piece.flat
    room = flat.size.width + 2 * flat.bleed
    line = _shortened(bundled("sans"), placement.piece.label, room)
    at = placement.to_sheet.apply(Point(-flat.bleed, -flat.bleed - LABEL_DROP))
    return Note(line, at, placement.turned)


def _shortened(typeface: Typeface, label: tuple[str, str], room: float) -> TextLine:
    """The whole label, or as much of the book's name as leaves room for the part."""
    book, part = label
    whole = set_line(typeface, LABEL_SIZE, f"{book} · {part}")
    if whole.width <= room:
        return whole
    kept = max(0, int(len(book) * (1 - (whole.width - room) / set_line(typeface, LABEL_SIZE, book).width)))
    while kept > 0:
        line = set_line(typeface, LABEL_SIZE, f"{book[:kept].rstrip()}… · {part}")
        if line.width <= room:
            return line
        kept -= 1
    return set_line(typeface, LABEL_SIZE, part)


def _footer(sheet: Sheet, shelf_name: str) -> Iterator[Art]:
    area = sheet.foot
    length = _rule_length(area)
    sans = bundled("sans")
    yield from _rule_lines(area)
    words = f"{length:.0f} mm from end to end: measure it before you cut"
    yield Note(set_line(sans, 2.0, words), Point(area.x + 2, area.y + 6.8))
    yield from _legend(
        Rect(area.x + length + 5, area.y + 4, area.width - length - 5, FOOTER_HEIGHT - 4), _meanings(sheet), sans
    )
    text = f"{shelf_name} · {sheet.stock.title} · sheet {sheet.number} of {sheet.count} · print at 100 %, no scaling"
    size = min(2.3, area.width / sans.shape(text).width)
    yield Note(set_line(sans, size, text), Point(area.x, area.y + 0.8))


def _rule_length(area: Rect) -> float:
    return next((length for length in RULE_LENGTHS if length <= area.width), RULE_LENGTHS[-1])


def _rule_lines(area: Rect) -> Iterator[Line]:
    """A rule with a tick every 10 mm; its end ticks are what to measure between."""
    y, length = area.y + 4.6, _rule_length(area)
    yield Line(Point(area.x, y), Point(area.x + length, y), RULE_PEN)
    last = round(length / 10)
    for step in range(last + 1):
        tall = 3.0 if step in (0, last) else 1.2
        # The end ticks lie wholly inside, so that their outer edges are the length apart.
        x = area.x + step * 10 + RULE_PEN.width / 2 * ((step == 0) - (step == last))
        yield Line(Point(x, y), Point(x, y + tall), RULE_PEN)


def _meanings(sheet: Sheet) -> list[tuple[Pen, str]]:
    """The lines of a sheet and what they mean; on a sheet printed on both sides "the printed face" says nothing."""
    turns_away, meets = (
        ("mountain fold: this face comes outside", "valley fold: this face comes inside")
        if sheet.two_sided
        else ("mountain fold: the printed faces turn away from each other", "valley fold: the printed faces meet")
    )
    meanings = [(CUT, "cut"), (FOLD_PENS[FoldKind.MOUNTAIN], turns_away), (FOLD_PENS[FoldKind.VALLEY], meets)]
    if any(placement.piece.flat.trims for placement in sheet.placements):
        meanings.append((TRIM, "trim here when the block is bound"))
    return meanings


def _legend(room: Rect, rows: Sequence[tuple[Pen, str]], sans: Typeface) -> Iterator[Art]:
    """One sample of each line with its meaning."""
    size = min(2.0, max(1.0, (room.width - 10) / max(sans.shape(words).width for _, words in rows)))
    step = min(2.5, (room.height - 0.6) / len(rows))
    for row, (pen, words) in enumerate(rows):
        y = room.top - 1.6 - row * step
        yield Line(Point(room.x, y), Point(room.x + 8, y), pen)
        yield Note(set_line(sans, size, words), Point(room.x + 9.5, y - size * 0.33))
