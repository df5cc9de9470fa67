"""A stock as the rest of the work needs it: caliper, error, grain and the area that can be printed."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from ..ground.amounts import a_pile, parse_basis_weight
from ..ground.geometry import Axis, Rect, Size, Transform
from ..ground.problems import FieldPath, Problem, ShelfFileError
from ..ground.units import NotAMeasure, print_mm
from .glue import FILM_SHARE, GLUES, films_of
from .grades import caliper_from_bulk, grammage_from_basis, nominal_caliper, usual_bulk
from .mark_margin import CROSS_ROOM, FOOTER_HEIGHT, MARK_MARGIN
from .papers import SheetFormat
from .printer_entry import PaperPath, PrinterEntry
from .reverse import reached_on_both, upright_within
from .stock_entry import Grain, StockEntry, Tolerance

SMALLEST_AREA = 40.0
"""A printable area below this, in mm, holds no book and no notes."""

__all__ = ["SMALLEST_AREA", "USUAL", "Stock", "calibration", "distortion", "lean", "make_stock", "tolerances_of"]

NOMINAL_TOLERANCE = 0.10
PILE_TOLERANCE = 0.02
"""Shares of the caliper (common practice; the GPO standard's ± 0.013 mm is 8 to 17 % of book papers)."""


TO_TOLERANCE = 2 / math.sqrt(3)
"""From limits within which nothing is likelier than anything else to two standard deviations (GUM 4.3.7: a/√3)."""

USUAL = PaperPath()
"""A printer of which nothing is known."""


@dataclass(frozen=True, slots=True)
class Stock:
    """One paper or card. Lengths in mm; `tolerance` is that of the caliper; `printable` lies on the sheet.

    `reached_on_both` is the part of `printable` that the printer reaches on the reverse too, if it is not all of it.
    `glue` is a dry film of its glue. `stated` is the caliper it should have
    by other accounts, if a measured pile overrides them. `printed_on` names its printer and tray, if they are not the
    usual ones, `sold_as` is its basis weight and grade as they are written, if they are.
    """

    name: str
    caliper: float
    film: float
    tolerance: float
    glue: float
    grain: Grain
    sheet: SheetFormat
    printable: Rect
    reached_on_both: Rect | None = None
    grammage: float | None = None
    stated: float | None = None
    crosses: bool = False
    off_cut: bool = False
    off_cuts: tuple[Stock, ...] = ()
    printer: PaperPath = USUAL
    printed_on: str = ""
    sold_as: str = ""

    @property
    def title(self) -> str:
        """The name, and for an off-cut its size."""
        return f"{self.name}, off-cut {self.sheet.name}" if self.off_cut else self.name

    @property
    def covered(self) -> float:
        """The caliper with the films over the print."""
        return self.caliper + self.film

    @property
    def usable(self) -> Rect:
        """The printable area above the notes at the foot of the sheet, and below an alignment cross if there is one."""
        return self.printable.grown(0, -FOOTER_HEIGHT, 0, -CROSS_ROOM if self.crosses else 0)

    @property
    def on_both_sides(self) -> Stock:
        """The stock and its off-cuts as they can be used for what is printed on both sides."""
        area = self.reached_on_both or self.printable
        return replace(self, printable=area, off_cuts=tuple(off_cut.on_both_sides for off_cut in self.off_cuts))

    @property
    def grain_axis(self) -> Axis | None:
        """Which way the fibres run on the sheet as it is printed, or None if that is not known.

        >>> # grain-long A4, printed upright: the fibres run up the sheet, Axis.Y
        """
        if self.grain is Grain.UNKNOWN:
            return None
        width, height = self.sheet.size
        upright = height >= width
        return Axis.Y if upright == (self.grain is Grain.LONG) else Axis.X

    def openings(self, grain: Axis | None) -> tuple[Size, ...]:
        """The room for one piece, in the piece's own directions, for each way it may lie on the sheet.

        `grain` is the direction on the piece its fibres must run; without a demand, or if the stock's grain
        is not known, the piece may lie either way, and the wider opening comes first.
        """
        room = self.usable.size
        upright, turned = MARK_MARGIN.within(room), MARK_MARGIN.within(room.turned)
        if grain is None or self.grain_axis is None:
            return tuple(sorted((upright, turned), reverse=True))
        return (upright if grain is self.grain_axis else turned,)


def lean(printer: PaperPath) -> float:
    """The sine of the angle by which what is drawn upright leans to the right on the printed sheet.

    By the law of cosines in the printed square: (rising² - falling²) / (4 · width · height). Diagonals of
    141.6 and 141.2 mm on a square of 100 mm: (20050.56 - 19937.44) / 40000 = 0.0028, or 0.16°.
    """
    if printer.diagonals is None:
        return 0.0
    width, height = (side * printer.diagonals.drawn for side in (printer.rules.across_off, printer.rules.up_off))
    return (printer.diagonals.rising**2 - printer.diagonals.falling**2) / (4 * width * height)


def distortion(printer: PaperPath, sheet: SheetFormat) -> Transform:
    """What the printer does to lengths and angles, as measured: about the sheet's middle, level lines stay level."""
    across, up = printer.rules.across_off, printer.rules.up_off
    sine = lean(printer)
    return _about_the_middle(Transform(a=across, c=up * sine, d=up * math.sqrt(1 - sine * sine)), sheet)


def calibration(printer: PaperPath, sheet: SheetFormat) -> Transform:
    """What undoes the printer's own distortion.

    A 150 mm rule that measures 149.4 asks for a factor of 150/149.4 = 1.00402.
    """
    across, up = 1 / printer.rules.across_off, 1 / printer.rules.up_off
    sine = lean(printer)
    cosine = math.sqrt(1 - sine * sine)
    return _about_the_middle(Transform(a=across, c=-across * sine / cosine, d=up / cosine), sheet)


def _about_the_middle(transform: Transform, sheet: SheetFormat) -> Transform:
    width, height = sheet.size
    return Transform.move(-width / 2, -height / 2).then(transform).moved(width / 2, height / 2)


def tolerances_of(stocks: Collection[Stock], glues: Mapping[float, Tolerance]) -> dict[str, float]:
    """How far calipers and films of glue may be off, ± mm, by the names of the stocks and of the films.

    `glues` says it of films, by their thickness; of any other it is the usual share.
    """
    usual = Tolerance(share=FILM_SHARE)
    films = {*GLUES.values(), *(stock.glue for stock in stocks)}
    known = {films_of(film): glues.get(film, usual).of(film) for film in films}
    return {**known, **{stock.name: stock.tolerance for stock in stocks}}


def make_stock(name: str, entry: StockEntry, printer: PrinterEntry) -> Stock:
    """Work out a stock from what was written about it, and about the usual printer.

    Raises:
        ShelfFileError: the weight's grade is unknown, or the printer's margins leave no room on the sheet.
    """
    path = entry.printed_by(printer)
    sheet = entry.sheet or path.sheet
    grammage, stated = _weight_and_stated_caliper(name, entry)
    caliper = entry.pile.caliper if entry.pile else stated
    if caliper is None:
        raise ShelfFileError((_unlisted(name, entry.basis_weight or ""),))
    if entry.tolerance is not None:
        tolerance = entry.tolerance.of(caliper)
    elif entry.limits is not None:
        tolerance = entry.limits.of(caliper) * TO_TOLERANCE
    else:
        tolerance = caliper * (PILE_TOLERANCE if entry.pile else NOMINAL_TOLERANCE)
    printable = _printable(path, sheet, _that_settles_the_room(name, entry))
    stock = Stock(
        name=name,
        caliper=caliper,
        film=sum(entry.film),
        tolerance=tolerance,
        glue=entry.glue,
        grain=entry.grain,
        sheet=sheet,
        printable=printable,
        reached_on_both=reached_on_both(path, Size(*sheet.size), printable),
        grammage=grammage,
        crosses=printer.cutting_machine,
        stated=stated if entry.pile else None,
        printer=path,
        printed_on=(path.name or path.profile or "") if entry.printer else "",
        sold_as=entry.basis_weight or "",
    )
    return replace(stock, off_cuts=tuple(_off_cut(stock, size) for size in entry.off_cuts))


def _that_settles_the_room(name: str, entry: StockEntry) -> FieldPath:
    """The field that is to blame if the sheet of a stock has no room."""
    if entry.sheet:
        return ("stocks", name, "sheet")
    return ("stocks", name, "printer") if entry.printer else ("printer", "margins")


def _off_cut(stock: Stock, size: SheetFormat) -> Stock:
    """A partly used sheet of a stock as a stock of its own; its fibres run as they did on the whole sheet."""
    width, height = size.size
    if min(size.size) > min(stock.sheet.size) + 1e-6 or max(size.size) > max(stock.sheet.size) + 1e-6:
        raise ShelfFileError(
            (
                Problem(
                    f"an off-cut of {size.name} is larger than the {stock.sheet.name} sheet it was cut from",
                    "measure it again, or write the sheet it came from as sheet:",
                    field=("stocks", stock.name, "off_cuts"),
                ),
            )
        )
    upright = height >= width
    grain = Grain.UNKNOWN
    if stock.grain_axis is not None:
        grain = Grain.LONG if upright == (stock.grain_axis is Axis.Y) else Grain.SHORT
    printable = _printable(stock.printer, size, ("stocks", stock.name, "off_cuts"))
    both = reached_on_both(stock.printer, Size(*size.size), printable)
    return replace(stock, sheet=size, grain=grain, printable=printable, reached_on_both=both, off_cut=True)


def _weight_and_stated_caliper(name: str, entry: StockEntry) -> tuple[float | None, float | None]:
    """Grammage and caliper as far as they are given by anything but a pile."""
    given = entry.caliper if entry.caliper is not None else entry.thickness
    grammage, nominal = entry.grammage, None
    if entry.basis_weight is not None:
        grammage, nominal = _from_basis_weight(entry.basis_weight, ("stocks", name, "basis_weight"))
    if given is not None:
        return grammage, given
    if entry.bulk is not None and grammage is not None:
        return grammage, caliper_from_bulk(grammage, entry.bulk)
    return grammage, nominal


def _unlisted(name: str, written: str) -> Problem:
    pounds, grade = parse_basis_weight(written)
    bulk = usual_bulk(grammage_from_basis(pounds, grade), grade)
    return Problem(
        f"the caliper of {written} is in no table here",
        f"add bulk: {bulk:g} cm3/g, as papers of this grade have, or best a measured pile: {a_pile()}",
        field=("stocks", name, "basis_weight"),
    )


def _from_basis_weight(written: str, field: FieldPath) -> tuple[float, float | None]:
    """Grammage, and nominal caliper if a table lists it."""
    try:
        pounds, grade = parse_basis_weight(written)
        grammage = grammage_from_basis(pounds, grade)
        return grammage, nominal_caliper(grammage, grade)
    except NotAMeasure as problem:
        meant = StockEntry.in_one_value(written)
        remedy = f"write {meant} in its place" if meant else problem.remedy
        raise ShelfFileError((Problem(problem.message, remedy, field=field),)) from None


def _printable(printer: PaperPath, sheet: SheetFormat, field: FieldPath) -> Rect:
    """The area the printer reaches, in nominal mm before calibration."""
    width, height = sheet.size
    margins = printer.margins
    reached = Rect(
        margins.left,
        margins.bottom,
        width - margins.left - margins.right,
        height - margins.bottom - margins.top,
    )
    if min(reached.size) < SMALLEST_AREA:
        raise ShelfFileError(
            (
                Problem(
                    f"the margins leave {print_mm(reached.width)} × {print_mm(reached.height)} of {sheet.name}",
                    f"write smaller margins or a larger sheet: {print_mm(SMALLEST_AREA)} must be left each way",
                    field=field,
                ),
            )
        )
    return upright_within(reached, calibration(printer, sheet))
