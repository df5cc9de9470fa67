"""The tool paths of a sheet as DXF, in true millimetres; a layer for each tool."""

from __future__ import annotations

import io
from pathlib import Path as FilePath

from ...sheets.toolpaths import Tool, ToolSheet

__all__ = ["write_dxf"]

COLOURS = {Tool.PEN: 30, Tool.SCORE: 4, Tool.CUT: 7}
"""Numbers of the format's own palette."""

DIGITS = 6


def write_dxf(path: FilePath, sheet: ToolSheet) -> None:
    """Write one sheet; one unit is one millimetre, y goes up from the lower edge of the sheet."""
    # Loading it takes as long as loading all the rest, and only who cuts by machine needs it.
    import ezdxf  # noqa: PLC0415
    from ezdxf.units import MM  # noqa: PLC0415

    usual = ezdxf.options.write_fixed_meta_data_for_testing
    # no dates and no random marks: the same sheet is to give the same bytes
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        drawing = ezdxf.new("R2000", setup=False)
        drawing.units = MM
        space = drawing.modelspace()
        for tool, paths in sheet.layers:
            drawing.layers.add(str(tool), color=COLOURS[tool])
            for one in paths:
                points = [(round(x, DIGITS), round(y, DIGITS)) for x, y in one.points]
                space.add_lwpolyline(points, close=one.closed, dxfattribs={"layer": str(tool)})
        text = io.StringIO()
        drawing.write(text)
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = usual
    path.write_text(text.getvalue(), encoding="utf-8", newline="\n")
