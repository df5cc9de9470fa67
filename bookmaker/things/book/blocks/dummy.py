"""The dummy block: a dummy book, a real cover around a piece of wood, card or a pad of waste paper.

Its edges may be dressed with one printed strip, glued around head, fore-edge and tail. The block is then cut
smaller by the strip's caliper and its glue, so that the dressed block has exactly the size of the page.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
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
from ....shelf_file.fields.words import Ink, StockName, StockNames, Title, refuse
from ..edges.kinds import KINDS as EDGES
from ..edges.kinds import edge_art, edge_tone
from ..edges.strip import Layout
from .block import BlockEntry
from .block_plan import BlockPlan, Stretching
from .layered import THICKEST, Makeup, makeups
from .stiffness import THICKEST_STRIP, too_thick_folds

__all__ = ["EDGE_STRIP", "Dummy"]

EDGE_STRIP = "edge strip"
"""The kind of flat that is glued around the edges."""

EDGE_BLEED = 1.0
"""How far print runs past the edges of the strip, in mm: it is trimmed level with the block after gluing."""

NARROWEST = 2.0
"""A thinner block has no spine to letter, in mm (common practice)."""

THINNEST, STRETCHED, NEAR = 1.0, 0.2, 0.005
"""A block is no thinner than the first, in mm; one that is about as thick as somebody said keeps to it within the
second, as a share, unless bounds are written; and makeups that differ by less than the third, in mm, are the same."""

IN_WORDS = re.compile(r"(?:about (?P<about>.+?))?(?:(?:(?<!^) in )?layers of (?P<layers>.+))?", re.IGNORECASE)

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
        description="thickness of the block: 4 mm, about 4 mm, layers of a stock, or fill for what is left on its space"
    )
    about: DummyThickness | None = Field(None, description="what fill is to be about, stretched with all that are so")
    layers_of: StockNames = Field((), description="stocks that the block is glued of, in whole layers")
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
        return _with_thickness_in_words(written) if isinstance(written, dict) else written

    @model_validator(mode="after")
    def _bounds_and_stock(self) -> Self:
        if self.about is not None and not self._low <= self.about <= (self.at_most or self.about):
            given = " and ".join(
                f"{name} {print_mm(bound)}"
                for name, bound in (("at_least", self._low), ("at_most", self.at_most))
                if bound is not None
            )
            raise refuse(f"is about {print_mm(self.about)}, which does not go with {given}", "write bounds around it")
        if self.at_most is not None and self._low > self.at_most:
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
    def _low(self) -> float:
        """The thinnest that it may become."""
        if self.about is None or "at_least" in self.model_fields_set:
            return self.at_least
        return max(THINNEST, (1 - STRETCHED) * self.about)

    @property
    def _high(self) -> float | None:
        """The thickest that it may become; None for any."""
        if self.about is None or self.at_most is not None:
            return self.at_most
        return (1 + STRETCHED) * self.about

    def _made_of(self, stocks: Mapping[str, Stock]) -> tuple[Makeup, ...]:
        """All makeups it may have, if it is made of layers."""
        if not self.layers_of:
            return ()
        given = [stocks[name] for name in self.layers_of]
        settled = self.thickness if self.thickness != "fill" else self.measured_thickness
        low, high = (self._low, self._high or THICKEST) if settled is None else (settled - NEAR, settled + NEAR)
        found = makeups(given, low, high)
        if not found:
            names = " and ".join(self.layers_of)
            wide = f"{print_mm(low, 2)} and {print_mm(high, 2)}"
            thin = min(given, key=lambda stock: stock.caliper)
            raise ShelfFileError(
                (
                    Problem(
                        f"no number of whole layers of {names} is between {wide} thick",
                        f"write wider bounds, or add a paper that is thinner than {thin.name}",
                        field=("block", "layers_of"),
                    ),
                )
            )
        return found

    def _thickness(self, found: Sequence[Makeup]) -> tuple[Thickness, Makeup | None]:
        """As it is cut or glued: of the thicknesses it may have, that which is wanted, or else the thinnest."""
        wanted = self.as_cut
        makeup = min(found, key=lambda one: abs(one.thickness - wanted), default=None)
        what = "block as cut to fill its space" if self.fills else "block as cut"
        layers = makeup.layers if makeup else (Layer(what, 1, wanted),)
        return Thickness(layers, self.measured_thickness), makeup

    @property
    def as_cut(self) -> float:
        """The thickness to cut in mm; until its row is known, what it is about, or the least it may have."""
        if self.thickness != "fill":
            return self.thickness
        if self.measured_thickness is not None:
            return self.measured_thickness
        return min(max(self._low, self.about or 0.0), self._high or THICKEST)

    def of_thickness(self, thickness: float) -> Self:
        """The same with its bounds closed on one thickness."""
        return self.model_copy(update={"at_least": thickness, "at_most": thickness})

    def making(self, job: BookJob) -> Making:
        """A block cut to size, and the strip around its edges."""
        from ..steps.dummy import dummy_making

        return dummy_making(job, self.material, fills=self.fills, layered=bool(self.layers_of))

    @property
    def edge_tone(self) -> Colour | None:
        """That of its strip."""
        return edge_tone(self.edges, self.edge_colour)

    def dressing(self, flat: Flat, seed: str, resolution_dpi: float) -> Art | None:
        """The art of the edge strip, which has no pages."""
        return edge_art(self.edges, Layout.on(flat, seed, resolution_dpi, self.edge_colour))

    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:  # noqa: ARG002 (a strip reads both ways)
        """Work out the block.

        Raises:
            ShelfFileError: the edge strip leaves nothing of the block, cannot be folded, or is larger than its sheet.
        """
        found = self._made_of(stocks)
        thickness, makeup = self._thickness(found)
        strip = None
        if self.edges != "none":
            assert self.edge_stock is not None  # no entry has edges without one
            strip = _strip(page, thickness.value, stocks[self.edge_stock])
        cut = strip.block if strip else page
        return BlockPlan(
            kind=self.kind,
            pages=0,
            panels=0,
            bare=thickness,
            flats=(strip.flat,) if strip else (),
            cut_list=_parts(makeup, self.material, cut, thickness.value),
            stretch=self._stretching(found),
        )

    def _stretching(self, found: Sequence[Makeup]) -> Stretching | None:
        """The bounds that were written, if it fills."""
        choices = tuple(one.thickness for one in found)
        return Stretching(self._low, self._high, self.about, choices) if self.fills else None


def _parts(makeup: Makeup | None, material: str, cut: Size, thickness: float) -> tuple[CutPart, ...]:
    """What is cut by hand: one block, or its layers."""
    if makeup is None:
        return (CutPart("block", material, cut.height, cut.width, thickness),)
    return tuple(
        CutPart("layer", stock.name, cut.height, cut.width, stock.caliper, count) for stock, count in makeup.counts
    )


def _with_thickness_in_words(written: dict[str, object]) -> dict[str, object]:
    """`about 5 mm`, `layers of grey board and card`, or both, as the keys they stand for."""
    said = written.get("thickness")
    found = IN_WORDS.fullmatch(" ".join(said.split())) if isinstance(said, str) else None
    if not found or not (found["about"] or found["layers"]):
        return written
    keys: dict[str, object] = {**written, "thickness": "fill"}
    if found["about"]:
        keys["about"] = found["about"]
    if found["layers"]:
        keys["layers_of"] = [name for name in re.split(r", | and ", found["layers"]) if name]
    return keys


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
