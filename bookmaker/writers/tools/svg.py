"""The tool paths of a sheet as SVG, in true millimetres; a group for each tool."""

from __future__ import annotations

from pathlib import Path as FilePath
from xml.sax.saxutils import escape

from ...ground.geometry import Point
from ...sheets.toolpaths import Tool, ToolPath, ToolSheet

__all__ = ["write_svg"]

COLOURS = {Tool.PEN: "#b05a00", Tool.SCORE: "#00707a", Tool.PERFORATE: "#8c1a80", Tool.CUT: "#000000"}


def write_svg(path: FilePath, title: str, sheet: ToolSheet) -> None:
    """Write one sheet; one unit is one millimetre, y goes down from the upper edge of the sheet."""
    width, height = (_number(side) for side in sheet.size)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}">',
        f"<title>{escape(title)}</title>",
    ]
    for tool, paths in sheet.layers:
        lines.append(f'<g id="{tool}" fill="none" stroke="{COLOURS[tool]}" stroke-width="0.1">')
        lines += [f'<path d="{_outline(one, sheet.size.height)}"/>' for one in paths]
        lines.append("</g>")
    path.write_text("\n".join([*lines, "</svg>", ""]), encoding="utf-8", newline="\n")


def _outline(path: ToolPath, height: float) -> str:
    first, *rest = (_point(point, height) for point in path.points)
    return " ".join([f"M {first}", *(f"L {point}" for point in rest), *(["Z"] if path.closed else [])])


def _point(point: Point, height: float) -> str:
    return f"{_number(point.x)} {_number(height - point.y)}"


def _number(value: float) -> str:
    return f"{round(value, 4) + 0.0:.4f}".rstrip("0").rstrip(".")
