"""Sections: sheets folded once, twice or three times, nested, and sewn, stapled or glued through the fold."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate
from math import floor
from typing import TYPE_CHECKING

from ....ground.geometry import Axis, Size
from ....ground.problems import Problem, Severity, ShelfFileError
from ....ground.thin import print_caliper
from ....ground.units import print_mm
from ....paper.glue import glue_films
from ....paper.stock import Stock
from ....paper.thickness import Layer, Thickness
from ....sheets.sheet_room import part_too_large
from .block_plan import BlockPlan
from .creep import creep
from .imposition import FOLDINGS, fold_sheet, on_one_side
from .section_flats import Gathering, Make, section_flats, sheet_size
from .section_keys import OPENING_TRIM, SectionKeys
from .sewing import CLOSEST, holes, stations_for
from .stiffness import stiff_folds
from .trimming import wasteful_trim

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["Sections"]

USUAL_PAGES = 16
"""Pages of a section where nothing else is asked (common practice)."""
THICKEST_FOLD = 1.0
"""Paper that can be folded as one, in mm: ten sheets of copier paper; more springs open (common practice)."""
INNER_MARGIN = 1 / 9
"""The inner margin as a share of the page's width (J. Tschichold's canon): no image may creep further."""


class Sections(SectionKeys):
    """Folded and nested sheets."""

    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
        """Work out the block.

        Raises:
            ShelfFileError: with everything that cannot be folded, sewn, trimmed or printed as it was asked for.
        """
        stock = stocks[self.stock] if self.one_side else stocks[self.stock].on_both_sides
        make = _make(self, page, stock, right_to_left)
        sections = _gatherings(self, make)
        problems = [*_problems(self, page, stock, make, sections)]
        if problems:
            raise ShelfFileError(problems)
        panels = sum(section.pages(make.imposed) for section in sections)
        if self.fill_sections:
            make = replace(make, pages=panels)
        return BlockPlan(
            kind=self.kind,
            pages=make.pages,
            panels=panels,
            bare=_thickness(self, stock, panels, len(sections)).as_measured(self.measured_thickness),
            thickness_of_a_page=make.leaf / 2,
            flats=tuple(flat for section in sections for flat in section_flats(make, section)),
            notes=tuple(_padding(make.pages, panels)),
        )

    def making(self, job: BookJob) -> Making:
        """Sheets folded and nested, sections gathered, fastened, and glued at the spine."""
        from ..steps.sections import sections_making

        return sections_making(job, self)


def _make(entry: SectionKeys, page: Size, stock: Stock, right_to_left: bool) -> Make:
    folded = fold_sheet(FOLDINGS[entry.fold])
    wanted = 0
    if entry.fastening != "glued":
        wanted = entry.stations or stations_for(page.height, stapled=entry.fastening == "stapled")
    return Make(
        page=page,
        trim=entry.trimmed,
        leaf=2 * stock.caliper + stock.glue if entry.one_side else stock.caliper,
        stock=entry.stock,
        imposed=on_one_side(folded) if entry.one_side and entry.fold == "folio" else folded,
        pages=entry.printed_pages,
        holes=holes(wanted, page.height) if wanted else (),
        right_to_left=right_to_left,
    )


def _most_pages(make: Make, page: Size) -> int:
    """The most pages a section can have, by what can be folded as one and by how far leaves may creep."""
    by_fold = floor(THICKEST_FOLD / make.leaf + 1e-9)
    by_creep = floor(page.width * INNER_MARGIN / creep(1, make.leaf) + 1e-9) + 1
    most = 4 * min(by_fold, by_creep)
    return most - most % make.imposed.pages


def _gatherings(entry: SectionKeys, make: Make) -> tuple[Gathering, ...]:
    """As many sheets to a section as asked for; else few sections of at most 16 pages, as alike as can be."""
    on_sheet = make.imposed.pages
    sheets = -(-entry.printed_pages // on_sheet)
    if entry.pages_in_section is not None:
        each = max(1, entry.pages_in_section // on_sheet)
        counts = [each] * -(-sheets // each)
    elif entry.fastening == "stapled":
        counts = [sheets]
    else:
        most = max(1, min(USUAL_PAGES, _most_pages(make, make.page)) // on_sheet)
        number = -(-sheets // most)
        counts = [sheets // number + (section < sheets % number) for section in range(number)]
    before = accumulate((count * on_sheet for count in counts), initial=0)
    return tuple(
        Gathering(number, len(counts), count, start)
        for number, (count, start) in enumerate(zip(counts, before, strict=False))
    )


def _thickness(entry: SectionKeys, stock: Stock, panels: int, sections: int) -> Thickness:
    """n/2 · t and the swell of the thread, which lies in every section, or two on in every other one."""
    if entry.one_side:
        layers = [
            Layer("leaves of two layers", panels, stock.caliper, stock.name),
            glue_films("glue films between backs", panels // 2, stock.glue),
        ]
    else:
        layers = [Layer("leaves", panels // 2, stock.caliper, stock.name)]
    if entry.fastening == "sewn":
        share = 0.5 if entry.sewing == "two on" else 1.0
        layers.append(Layer("swell of the thread", sections * share, entry.thread))
    elif entry.fastening == "stapled":
        layers.append(Layer("wire of the staples", 1, entry.thread))
    return Thickness(tuple(layers))


def _padding(pages: int, panels: int) -> Iterator[Problem]:
    blank = panels - pages
    if blank:
        yield Problem(
            f"{pages} pages do not fill the sections: {blank} blank pages follow the last one",
            f"write pages: {panels} for none, or fill_sections: yes",
            Severity.NOTE,
            field=("block", "pages"),
        )


def _problems(
    entry: SectionKeys, page: Size, stock: Stock, make: Make, sections: Sequence[Gathering]
) -> Iterator[Problem]:
    """Everything that is wrong, in the order of the work: paper, folding, nesting, sewing, trimming."""
    yield from part_too_large(f"the {entry.fold} sheet", sheet_size(make, 0), stock, Axis.Y, ("block", "stock"))
    yield from stiff_folds(stock, scored=entry.scored)
    yield from _of_folding(entry, page)
    yield from _of_section_pages(entry, make)
    yield from _of_nesting(entry, page, make, sections)
    yield from _of_fastening(entry, page, make, sections)


def _of_folding(entry: SectionKeys, page: Size) -> Iterator[Problem]:
    if entry.one_side and entry.fold != "folio":
        yield Problem(
            f"no {entry.fold} sheet can be printed on one side and glued back to back",
            "write fold: folio, or printing: both sides",
            field=("block", "printing"),
        )
    if entry.fold != "folio" and entry.trimmed == 0:
        yield Problem(
            f"without a trim the folds at the head of the {entry.fold} stay closed and its pages cannot be opened",
            f"write trim: {print_mm(OPENING_TRIM)}, or leave it out",
            field=("block", "trim"),
        )
    yield from wasteful_trim(entry.trimmed, page)


def _of_section_pages(entry: SectionKeys, make: Make) -> Iterator[Problem]:
    """Whole sheets to a section, and no more of them than the book has."""
    written, on_sheet = entry.pages_in_section, make.imposed.pages
    if written is None:
        return
    most = -(-entry.printed_pages // on_sheet) * on_sheet
    if written > most:
        yield Problem(
            f"a section of {written} pages is larger than the whole book, which has {entry.printed_pages}",
            f"write {most} or less, or automatic",
            field=("block", "pages_in_section"),
            limit=str(most),
        )
    elif written % on_sheet:
        below = written - written % on_sheet
        near = f"{below} or {below + on_sheet}" if below else f"{on_sheet}"
        yield Problem(
            f"{written} pages are not a whole number of {entry.fold} sheets of {on_sheet} pages",
            f"write {near}",
            field=("block", "pages_in_section"),
        )


def _of_nesting(entry: SectionKeys, page: Size, make: Make, sections: Sequence[Gathering]) -> Iterator[Problem]:
    """No section too thick to fold, no leaf that creeps further than its inner margin."""
    pages = max(section.pages(make.imposed) for section in sections)
    fold, out = pages / 4 * make.leaf, creep(pages // 4 - 1, make.leaf)
    margin = page.width * INNER_MARGIN
    remedy = _smaller_section(entry, _most_pages(make, page))
    if fold > THICKEST_FOLD + 1e-9:
        yield Problem(
            f"a section of {pages} pages is {print_caliper(fold, 2)} of paper in one fold, which springs open",
            f"{remedy}: {print_caliper(THICKEST_FOLD)} can be folded",
            field=("block", "pages_in_section"),
            limit=print_caliper(THICKEST_FOLD),
        )
    if out > margin + 1e-9:
        yield Problem(
            f"the innermost leaf of a section of {pages} pages creeps {print_mm(out, 2)}, more than its inner margin, "
            f"a ninth of the page: {print_mm(margin, 2)}",
            remedy,
            field=("block", "pages_in_section"),
            limit=print_mm(margin, 2),
        )


def _smaller_section(entry: SectionKeys, most: int) -> str:
    if most == 0:
        return "write fold: folio, or take a thinner paper" if entry.fold != "folio" else "take a thinner paper"
    if entry.fastening == "stapled":
        return f"write fastening: sewn and pages_in_section: {most} or less, or at most {most} pages"
    return f"write pages_in_section: {most} or less, or take a thinner paper"


def _of_fastening(entry: SectionKeys, page: Size, make: Make, sections: Sequence[Gathering]) -> Iterator[Problem]:
    if entry.fastening == "stapled" and len(sections) > 1:
        yield Problem(
            f"staples hold one section, but the book has {len(sections)}",
            "write fastening: sewn, or leave out pages_in_section",
            field=("block", "fastening"),
        )
    if entry.sewing == "two on" and entry.fastening == "sewn" and len(sections) == 1:
        yield Problem(
            "two on needs at least two sections, but the book has one",
            "write sewing: all along",
            field=("block", "sewing"),
        )
    yield from _of_stations(entry, page, make)


def _of_stations(entry: SectionKeys, page: Size, make: Make) -> Iterator[Problem]:
    written = entry.stations
    if written is not None and entry.fastening == "glued":
        yield Problem(
            "glued sections have no holes", "leave stations out, or write fastening: sewn", field=("block", "stations")
        )
    if written is not None and entry.fastening == "stapled" and written % 2:
        yield Problem(
            f"{written} holes are not a whole number of staples",
            f"write {written - 1} or {written + 1}: each staple has two",
            field=("block", "stations"),
        )
    if make.holes and make.holes[1] - make.holes[0] < CLOSEST - 1e-9:
        most = 1 + floor((make.holes[-1] - make.holes[0]) / CLOSEST + 1e-9)
        apart = print_mm(make.holes[1] - make.holes[0], 2)
        yield Problem(
            f"{len(make.holes)} holes on a page {print_mm(page.height)} high are {apart} apart and tear out",
            f"write stations: {most} or less: {print_mm(CLOSEST)} hold" if most > 1 else "write fastening: glued",
            field=("block", "stations"),
        )
