"""The keys of a case in the shelf file."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from .....shelf_file.fields.joints import Joint, JointWidth
from .....shelf_file.fields.measures import Margin, SmallLength
from .....shelf_file.fields.words import StockName
from ..cover import CoverEntry

__all__ = ["USUAL_JOINT", "CaseKeys"]

USUAL_JOINT = Joint(boards=1.5)
"""A. W. Johnson, "A Joint Venture", Skin Deep 15 (2003)."""


class CaseKeys(CoverEntry):
    """The keys of a case."""

    kind: Literal["case"] = "case"
    boards: StockName = Field(description="name of the board, as under stocks")
    binding: Literal["full", "quarter", "half"] = Field(
        "full", description="one covering, or spine piece and sides, or corners as well"
    )
    square: SmallLength = Field(
        0.4, description="how far the boards stand out beyond the pages at head, tail and fore-edge"
    )
    turn_in: Margin = Field(5.0, description="covering folded in around the boards, measured on the flat")
    joint: JointWidth | None = Field(None, description="gap between board and stiffener: 1.5 boards, or a length")
    stiffener: Literal["sections and boards", "sections", "none"] = Field(
        "sections and boards", description="how wide the strip behind the spine is"
    )
    stiffener_stock: StockName | None = Field(None, description="its card; the board if not given")
    spine_stock: StockName | None = Field(None, description="spine piece and corners of a quarter or half binding")
    spine_reach: Margin | None = Field(None, description="how far the spine piece shows on the boards")
    corner: Margin | None = Field(None, description="how far the corners of a half binding show along each edge")
    lap: SmallLength = Field(1.0, description="how far the sides lie over spine piece and corners")
    endpapers: StockName | None = Field(None, description="paper of the endpapers, if there are any")
    templates: StockName | None = Field(None, description="paper to print board templates on, if wanted")
