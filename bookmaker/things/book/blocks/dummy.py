"""The dummy block: a dummy book, a real cover around a piece of wood, card or a pad of waste paper.

Its edges may be dressed with one printed strip, glued around head, fore-edge and tail. The block is then cut
smaller by the strip's caliper and its glue, so that the dressed block has exactly the size of the page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING, Annotated, Literal, Self

from pydantic import BeforeValidator, Field, model_validator

from ....ground.drawing import Art, Colour
from ....ground.geometry import Axis, Point, Rect, Size
from ....ground.problems import Problem, ShelfFileError
from ....ground.quantities import show
from ....ground.units import print_mm
from ....paper.stock import Stock
from ....paper.thickness import Layer, Thickness
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from ....sheets.sheet_room import flat_too_large
from ....shelf_file.fields.measures import BlockThickness, DummyThickness
from ....shelf_file.fields.words import Ink, StockName, Title, refuse
from ..edges.kinds import KINDS as EDGES
from ..edges.kinds import edge_art
from ..edges.strip import Layout
from .block import BlockEntry
from .block_plan import BlockPlan
from .stiffness import THICKEST_STRIP, too_thick_folds

__all__ = ["EDGE_STRIP", "Dummy"]

EDGE_STRIP = "edge strip"
"""The kind of flat that is glued around the edges."""

EDGE_BLEED = 1.0
"""How far print runs past the edges of the strip, in mm: it is trimmed level with the block after gluing."""

NARROWEST = 2.0
"""A thinner block has no spine to letter, in mm (common practice)."""

SMALLEST_SIDE = 1.0
"""A block of which less is left inside its edge strip cannot be cut, in mm."""


COLOURS = frozenset({"red", "green", "blue", "yellow", "black", "white", "brown", "grey", "orange", "purple", "pink"})
"""Words for a colour, where makers write one in place of how the edges are made."""


def _read_edges(value: object) -> object:
    if isinstance(value, str) and (value.strip().casefold() in COLOURS or value.startswith("#")):
        colour = value if value.startswith("#") else "#8c3b2e"
        remedy = f'write edges: stained and edge_colour: "{colour}", in quotes'
        raise refuse(f"{show(value)} is a colour, not how edges are made", remedy)
    return value


if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

    Edges = str
else:
    Edges = Annotated[Literal[("none", *EDGES)], BeforeValidator(_read_edges)]


class Dummy(BlockEntry):
    """A block without pages."""

    kind: Literal["dummy"] = "dummy"
    thickness: BlockThickness = Field(
        description="thickness of the block, such as 4 mm, or fill for what is left on its space"
    )
    at_least: DummyThickness = Field(NARROWEST, description="the thinnest that fill may become")
    at_most: DummyThickness | None = Field(None, description="the thickest that fill may become")
    material: Title = Field("wood", description="what the block is cut from, for the cutting list")
    edges: Edges = Field("none", description="what is printed on the strip around its three edges")
    edge_stock: StockName | None = Field(None, description="paper of the edge strip, as under stocks")
    edge_colour: Ink = Field(Colour.from_hex("#8c3b2e"), description='colour of stained edges, such as "#8c3b2e"')

    @model_validator(mode="before")
    @classmethod
    def _no_pages(cls, written: object) -> object:
        if isinstance(written, dict) and "pages" in written:
            raise refuse("has pages, but it is a dummy", "leave pages out, or write another kind")
        return written

    @model_validator(mode="after")
    def _bounds_and_stock(self) -> Self:
        if self.at_most is not None and self.at_least > self.at_most:
            raise refuse(
                f"has at_least {print_mm(self.at_least)} above at_most {print_mm(self.at_most)}",
                "write a smaller at_least or a larger at_most",
            )
        if self.edges != "none" and self.edge_stock is None:
            raise refuse(f"has {self.edges} edges, but no edge_stock", "add edge_stock: with a name from stocks")
        return self

    @property
    def fills(self) -> bool:
        """Whether its thickness is still to be taken from what is left on its space."""
        return self.thickness == "fill" and self.measured_thickness is None

    @property
    def stretch(self) -> tuple[float, float | None] | None:
        """The bounds that were written, if it fills."""
        return (self.at_least, self.at_most) if self.fills else None

    @property
    def as_cut(self) -> float:
        """The thickness to cut in mm; until its row is known, the least that a block to fill may have."""
        if self.thickness != "fill":
            return self.thickness
        return self.at_least if self.measured_thickness is None else self.measured_thickness

    def of_thickness(self, thickness: float) -> Self:
        """The same with its bounds closed on one thickness."""
        return self.model_copy(update={"at_least": thickness, "at_most": thickness})

    def making(self, job: BookJob) -> Making:
        """A block cut to size, and the strip around its edges."""
        from ..steps.dummy import dummy_making

        return dummy_making(job, self.material, fills=self.fills)

    def dressing(self, flat: Flat, seed: str, resolution_dpi: float) -> Art | None:
        """The art of the edge strip, which has no pages."""
        return edge_art(self.edges, Layout.on(flat, seed, resolution_dpi, self.edge_colour))

    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:  # noqa: ARG002 (a strip reads both ways)
        """Work out the block.

        Raises:
            ShelfFileError: the edge strip leaves nothing of the block, cannot be folded, or is larger than its sheet.
        """
        what = "block as cut to fill its space" if self.fills else "block as cut"
        thickness = Thickness((Layer(what, 1, self.as_cut),), self.measured_thickness)
        strip = None
        if self.edges != "none":
            assert self.edge_stock is not None  # no entry has edges without one
            strip = _strip(page, thickness.value, stocks[self.edge_stock])
        cut = strip.block if strip else page
        return BlockPlan(
            kind=self.kind,
            pages=0,
            panels=0,
            thickness=thickness,
            flats=(strip.flat,) if strip else (),
            cut_list=(CutPart("block", self.material, cut.height, cut.width, thickness.value),),
        )


@dataclass(frozen=True, slots=True)
class _Strip:
    """The edge strip, and the face of the block it goes around."""

    flat: Flat
    block: Size


def _strip(page: Size, thickness: float, stock: Stock) -> _Strip:
    """Head, fore-edge and tail on one strip, around a block that is smaller by the strip and its glue.

    Inside the folds a leg is W − c and the back of the strip H − 2c; each scored right angle takes π/4·c,
    half on either side. In all 2W + H − 4c + π/2·c: with W = 15, H = 21 and c = 0.1 it is 50.757 mm.
    """
    caliper = stock.covered
    around = caliper + stock.glue
    block = Size(page.width - around, page.height - 2 * around)
    if min(block) < SMALLEST_SIDE:
        raise _refused(
            f"an edge strip of {stock.name} with its glue is {print_mm(around)} thick: it leaves a block of "
            f"{print_mm(max(0.0, block.width))} × {print_mm(max(0.0, block.height))}",
            "write a thinner edge_stock, a larger book, or edges: none",
        )
    leg = page.width - caliper + pi / 8 * caliper
    back = page.height - 2 * caliper + pi / 4 * caliper
    flat = _flat(leg, back, thickness, stock)
    field = ("block", "edge_stock")
    problems = too_thick_folds("an edge strip", stock, THICKEST_STRIP, field)
    if problems := (*problems, *flat_too_large("the edge strip", flat, stock, field)):
        raise ShelfFileError(problems)
    return _Strip(flat, block)


def _flat(leg: float, back: float, thickness: float, stock: Stock) -> Flat:
    """The strip as it lies printed face up, head on the left; the face that was the front of the book is on top."""
    panels = (Rect(0, 0, leg, thickness), Rect(leg, 0, back, thickness), Rect(leg + back, 0, leg, thickness))
    return Flat(
        kind=EDGE_STRIP,
        name=EDGE_STRIP,
        stock=stock.name,
        outline=Rect(0, 0, 2 * leg + back, thickness).corners,
        folds=tuple(Fold(FoldKind.MOUNTAIN, Point(x, 0), Point(x, thickness)) for x in (leg, leg + back)),
        panels=tuple(Panel(Role.EDGE, rect) for rect in panels),
        grain=Axis.Y,
        bleed=EDGE_BLEED,
    )


def _refused(message: str, remedy: str) -> ShelfFileError:
    return ShelfFileError((Problem(message, remedy, field=("block", "edge_stock")),))
