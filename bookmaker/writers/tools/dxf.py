"""The tool paths of a sheet as DXF, in true millimetres; a layer for each tool.

A drawing is a list of groups, each a number that says what follows, and a value. What stands here is the least that
release 2000 asks for (*AutoCAD 2000 DXF Reference*, Autodesk, 1999): a header, tables, the blocks of model and paper,
the paths, and the dictionary at the root of all objects.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import chain
from pathlib import Path as FilePath

from ...sheets.toolpaths import Tool, ToolPath, ToolSheet

__all__ = ["write_dxf"]

COLOURS = {Tool.PEN: 30, Tool.SCORE: 4, Tool.PERFORATE: 6, Tool.CUT: 7}
"""Numbers of the format's own palette."""

RELEASE_2000, MILLIMETRES, METRIC = "AC1015", 4, 1
"""Values of $ACADVER, $INSUNITS and $MEASUREMENT."""

DIGITS = 6

Value = str | int | float
Groups = tuple[tuple[int, Value], ...]

FLAGS = 70
"""The group code of flags; those of small numbers follow it."""

NOBODY = "0"
"""The owner of what belongs to nothing."""


def write_dxf(path: FilePath, sheet: ToolSheet) -> None:
    """Write one sheet; one unit is one millimetre, y goes up from the lower edge of the sheet."""
    drawing = _Drawing()
    model = _write_tables(drawing, [tool for tool, _ in sheet.layers])
    drawing.begin("ENTITIES")
    for tool, paths in sheet.layers:
        for one in paths:
            _write_path(drawing, model, tool, one)
    drawing.begin("OBJECTS")
    root = drawing.record("DICTIONARY", NOBODY, "AcDbDictionary")
    groups = drawing.handle()
    drawing.put((281, 1), (3, "ACAD_GROUP"), (350, groups))
    drawing.record("DICTIONARY", root, "AcDbDictionary", handle=groups)
    drawing.put((281, 1))
    path.write_text(drawing.text(), encoding="utf-8", newline="\n")


def _write_tables(drawing: _Drawing, tools: Sequence[Tool]) -> str:
    """Tables and blocks; returns the handle of the model, to which everything drawn belongs."""
    line = ((3, ""), (FLAGS + 2, ord("A")), (FLAGS + 3, 0), (40, 0.0))
    layers = {"0": 7, **{str(tool): COLOURS[tool] for tool in tools}}
    letters = ((40, 0.0), (41, 1.0), (50, 0.0), (71, 0), (42, 2.5), (3, "txt"), (4, ""))
    drawing.begin("TABLES")
    drawing.table("VPORT", "", {})
    drawing.table("LTYPE", "AcDbLinetypeTableRecord", dict.fromkeys(("ByBlock", "ByLayer", "Continuous"), line))
    coloured = {name: ((62, colour), (6, "Continuous")) for name, colour in layers.items()}
    drawing.table("LAYER", "AcDbLayerTableRecord", coloured)
    drawing.table("STYLE", "AcDbTextStyleTableRecord", {"Standard": letters})
    drawing.table("VIEW", "", {})
    drawing.table("UCS", "", {})
    drawing.table("APPID", "AcDbRegAppTableRecord", {"ACAD": ()})
    drawing.table("DIMSTYLE", "AcDbDimStyleTableRecord", {"Standard": ()})
    blocks = drawing.table("BLOCK_RECORD", "AcDbBlockTableRecord", {"*Model_Space": (), "*Paper_Space": ()})
    drawing.begin("BLOCKS")
    for name, owner in blocks.items():
        drawing.record("BLOCK", owner, "AcDbEntity")
        drawing.put((8, "0"), (100, "AcDbBlockBegin"), (2, name), (70, 0), (10, 0.0), (20, 0.0), (30, 0.0), (3, name))
        drawing.put((1, ""))
        drawing.record("ENDBLK", owner, "AcDbEntity")
        drawing.put((8, "0"), (100, "AcDbBlockEnd"))
    return blocks["*Model_Space"]


def _write_path(drawing: _Drawing, owner: str, tool: Tool, path: ToolPath) -> None:
    drawing.record("LWPOLYLINE", owner, "AcDbEntity")
    drawing.put((8, str(tool)), (100, "AcDbPolyline"), (90, len(path.points)), (70, int(path.closed)))
    for x, y in path.points:
        drawing.put((10, round(x, DIGITS)), (20, round(y, DIGITS)))


class _Drawing:
    """The groups of each section as they are gathered, and the handles given so far."""

    def __init__(self) -> None:
        self._sections: dict[str, list[tuple[int, Value]]] = {"HEADER": [], "CLASSES": []}
        self._groups = self._sections["HEADER"]
        self._handles = 0

    def begin(self, section: str) -> None:
        """What comes now stands in another section."""
        self._groups = self._sections.setdefault(section, [])

    def put(self, *groups: tuple[int, Value]) -> None:
        """Add groups."""
        self._groups += groups

    def handle(self) -> str:
        """A name for something, which nothing else has."""
        self._handles += 1
        return f"{self._handles:X}"

    def record(self, kind: str, owner: str, *subclasses: str, handle: str = "") -> str:
        """Begin something that has a handle and an owner; returns the handle."""
        handle = handle or self.handle()
        # the handle of this one kind has another number
        self.put((0, kind), (105 if kind == "DIMSTYLE" else 5, handle), (330, owner))
        self.put(*((100, subclass) for subclass in subclasses))
        return handle

    def table(self, name: str, subclass: str, entries: Mapping[str, Groups]) -> dict[str, str]:
        """Add a table; returns the handles of its entries."""
        self.put((0, "TABLE"), (2, name))
        handle = self.handle()
        self.put((5, handle), (330, NOBODY), (100, "AcDbSymbolTable"), (70, len(entries)))
        if name == "DIMSTYLE":
            self.put((100, "AcDbDimStyleTable"))
        found: dict[str, str] = {}
        for entry, groups in entries.items():
            found[entry] = self.record(name, handle, "AcDbSymbolTableRecord", subclass)
            self.put((2, entry), *(() if name == "BLOCK_RECORD" else ((70, 0),)), *groups)
        self.put((0, "ENDTAB"))
        return found

    def text(self) -> str:
        """The whole drawing: a value to a line, after its number."""
        self.begin("HEADER")
        self.put((9, "$ACADVER"), (1, RELEASE_2000), (9, "$HANDSEED"), (5, self.handle()))
        self.put((9, "$INSUNITS"), (70, MILLIMETRES), (9, "$MEASUREMENT"), (70, METRIC))
        sections = (((0, "SECTION"), (2, name), *groups, (0, "ENDSEC")) for name, groups in self._sections.items())
        return "".join(f"{code}\n{value}\n" for code, value in (*chain.from_iterable(sections), (0, "EOF")))
