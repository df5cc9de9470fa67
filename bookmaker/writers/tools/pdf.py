"""The tool paths of all sheets of one paper as PDF; a layer for each tool."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path as FilePath

from ...ground.art import Layer, Stroked
from ...ground.drawing import Colour, Pen
from ...ground.geometry import Path, polygon
from ...sheets.toolpaths import Tool, ToolPath, ToolSheet
from ..pdf import PdfFile

__all__ = ["write_tools_pdf"]

PENS = {
    Tool.PEN: Pen(0.1, Colour(0.69, 0.35, 0.0)),
    Tool.SCORE: Pen(0.1, Colour(0.0, 0.44, 0.48)),
    Tool.PERFORATE: Pen(0.1, Colour(0.55, 0.1, 0.5)),
    Tool.CUT: Pen(0.1),
}


def write_tools_pdf(path: FilePath, title: str, sheets: Sequence[ToolSheet]) -> None:
    """Write one page a sheet, at true size: the printer's calibration has no place on a cutting machine."""
    with PdfFile(path, title=title) as pdf:
        for sheet in sheets:
            with pdf.page(sheet.size) as canvas:
                for tool, paths in sheet.layers:
                    Layer(str(tool), tuple(Stroked(_outline(one), PENS[tool]) for one in paths)).draw(canvas)


def _outline(path: ToolPath) -> Path:
    return polygon(path.points) if path.closed else Path.line(*path.points)
