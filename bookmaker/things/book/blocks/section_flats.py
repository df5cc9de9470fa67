"""The printed sheets of sections: every page on its panel, creep, folds, trims, holes and marks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ....ground.geometry import Axis, Point, Rect, Size
from ....sheets.flat import Flat, Fold, FoldKind, Mark, Panel, Role, Stroke
from ....sheets.mirror import mirrored
from .creep import creep
from .imposition import Cell, Imposed, page_in_section
from .sewing import collation_mark, hole_marks
from .trimming import join_strokes, trim_lines

__all__ = ["Gathering", "Make", "section_flats", "sheet_size"]


@dataclass(frozen=True, slots=True)
class Make:
    """How all sheets of a book are made: lengths in mm.

    `leaf` is the thickness of one leaf, `pages` how many are printed, `holes` how far each lies above the tail.
    """

    page: Size
    trim: float
    leaf: float
    stock: str
    imposed: Imposed
    pages: int
    holes: tuple[float, ...]
    right_to_left: bool


@dataclass(frozen=True, slots=True)
class Gathering:
    """Where a section stands: its number from 0, of how many, its sheets, and the pages before it."""

    number: int
    of: int
    sheets: int
    before: int

    def pages(self, imposed: Imposed) -> int:
        """How many pages it has."""
        return self.sheets * imposed.pages


def sheet_size(make: Make, sheet: int) -> Size:
    """A sheet as it is cut; of single folds, each inner one is cut narrower by its creep, so that all end flush."""
    cell = _cell_size(make, sheet)
    return Size(make.imposed.columns * cell.width, make.imposed.rows * cell.height)


def _cell_size(make: Make, sheet: int) -> Size:
    narrower = creep(sheet, make.leaf) if make.imposed.pages == 4 else 0.0
    return Size(make.page.width + make.trim - narrower, make.page.height + 2 * make.trim)


def section_flats(make: Make, section: Gathering) -> Iterator[Flat]:
    """The sheets of a section, the outermost first."""
    for sheet in range(section.sheets):
        flat = _sheet_flat(make, section, sheet)
        yield mirrored(flat, across=True) if make.right_to_left else flat


def _sheet_flat(make: Make, section: Gathering, sheet: int) -> Flat:
    size = _cell_size(make, sheet)
    panels: dict[int, Panel] = {}
    trims: list[Stroke] = []
    for cell in make.imposed.cells:
        room = Rect(cell.column * size.width, cell.row * size.height, *size)
        panels[cell.page] = panel = _panel(make, section, sheet, cell, room)
        trims += trim_lines(panel.rect, room)
    return Flat(
        kind="section sheet",
        name=_name(section, sheet),
        stock=make.stock,
        outline=Rect(0, 0, *sheet_size(make, sheet)).corners,
        folds=_folds(make.imposed, size),
        panels=tuple(panels.values()),
        grain=Axis.Y,
        trims=join_strokes(trims),
        marks=_marks(make, section, panels[1].rect) if sheet == 0 else (),
    )


def _name(section: Gathering, sheet: int) -> str:
    """Sheets are counted from the outermost, as they are laid out for nesting."""
    name = f"section {section.number + 1} of {section.of}" if section.of > 1 else "section"
    return f"{name}, sheet {sheet + 1} of {section.sheets} from outside" if section.sheets > 1 else name


def _panel(make: Make, section: Gathering, sheet: int, cell: Cell, room: Rect) -> Panel:
    """A page at its spine fold, narrower by its creep; pages beyond the last printed one are blank."""
    sheet_pages = make.imposed.pages
    out = creep(sheet * sheet_pages // 4 + make.imposed.depth(cell.page), make.leaf)
    width = make.page.width - out
    left = room.right - width if cell.column % 2 == 0 else room.x
    rect = Rect(left, room.y + make.trim, width, make.page.height)
    page = section.before + page_in_section(cell.page, sheet, sheet_pages, section.pages(make.imposed))
    if page > make.pages:
        return Panel(Role.FLYLEAF, rect, None, cell.face, cell.head_down, out)
    return Panel(Role.PAGE, rect, page, cell.face, cell.head_down, out)


def _folds(imposed: Imposed, cell: Size) -> tuple[Fold, ...]:
    """Each fold in as few lines as its kinds allow: where it changes from mountain to valley, a new one begins."""
    folds: list[Fold] = []
    for kind in FoldKind:
        strokes = []
        for crease in imposed.creases:
            if crease.kind is kind:
                right, top = (crease.column + 1) * cell.width, (crease.row + 1) * cell.height
                start = Point(right, top - cell.height) if crease.upright else Point(right - cell.width, top)
                strokes.append(Stroke(start, Point(right, top)))
        folds += [Fold(kind, *stroke) for stroke in join_strokes(strokes)]
    return tuple(folds)


def _marks(make: Make, section: Gathering, first: Rect) -> tuple[Mark, ...]:
    """Holes and the mark of the order on the spine fold, which is the left edge of the section's first page."""
    marks = [*hole_marks(first.x, first.y, make.holes)]
    if section.of > 1:
        low, high = make.holes[-2:] if make.holes else (make.page.height * 0.6, make.page.height * 0.9)
        room = (first.y + low + 0.3, first.y + high - 0.3)
        width = section.pages(make.imposed) / 2 * make.leaf
        marks.append(collation_mark(section.number, section.of, first.x, room, width))
    return tuple(marks)
