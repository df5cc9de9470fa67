"""No text for makers names a metric unit by itself: with `units: inches` it would stay what it is."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "bookmaker"

METRIC = re.compile(r"(?<![\w-])(?:mm|cm|cm²|µm|um|ml|millimetres?|g/m2|g/m²)(?![\w/³])")

BOTH = re.compile(r"\d in\b|\binches\b")
"""What a text names that is for makers of both kinds."""

FREE = (
    *("shelf/schema_forms.py", "shelf/schema.py", "ground/units.py", "ground/told.py", "ground/amounts.py"),
    *(
        "paper/papers.py",
        "paper/printer_entry.py",
        "paper/stock_entry.py",
        "shelf_file/fields/measures.py",
        "shelf_file/starter.py",
        "shelf_file/spec_errors.py",
    ),
    *("guide/wrapping.py", "shelf_file/book_list/listed.py", "page/work/first_shelf.py"),
)
"""They say which units there are, or write a file with those that are asked for."""

WRITTEN = (
    *("writers/plan_schema.py", "writers/schema_parts.py", "writers/plan_json.py", "writers/sheet_json.py"),
    *("writers/room_json.py", "writers/manual/keys.py"),
    *("writers/svg/document.py", "writers/tools/svg.py", "typesetting/lines/ties.py"),
    *(
        "shelf_file/invented/wall.py",
        "shelf_file/slips/marks.py",
        "ruler/readings.py",
        "things/book/designs/letters/wording.py",
    ),
    *("sheets/packing/items.py", "sheets/strip_layout.py"),
)
"""They write for programs, or read what others wrote, or what they say is for who mends them."""

CALLS = ("in_units", "_length_schema", "WithJsonSchema", "OrOneLength")
"""Who takes a text for millimetres, and examples of the schema."""

KEYWORDS = ("description", "examples")
"""What stands in the schema: one for all makers."""


def _texts(tree: ast.AST, *, free: bool = False) -> Iterator[ast.Constant]:
    """Texts that may be told, without docstrings and what `FREE` calls and keywords take."""
    for child in ast.iter_child_nodes(tree):
        if isinstance(child, ast.Expr) and isinstance(child.value, ast.Constant):
            continue
        called = isinstance(child, ast.Call) and isinstance(child.func, ast.Name) and child.func.id in CALLS
        named = isinstance(child, ast.keyword) and child.arg in KEYWORDS
        if isinstance(child, ast.Constant) and isinstance(child.value, str) and not free:
            yield child
        yield from _texts(child, free=free or called or named)


def metric_texts(path: Path) -> Iterator[str]:
    for text in _texts(ast.parse(path.read_text(encoding="utf-8"))):
        if METRIC.search(str(text.value)) and not BOTH.search(str(text.value)):
            yield f"{path.relative_to(PACKAGE)}:{text.lineno}: {text.value}"


def test_no_text_names_a_metric_unit_by_itself() -> None:
    modules = [path for path in PACKAGE.rglob("*.py") if path.relative_to(PACKAGE).as_posix() not in FREE + WRITTEN]
    found = [text for path in sorted(modules) for text in metric_texts(path)]
    assert not found, "\n".join(found)


def test_one_function_makes_plurals() -> None:
    """A noun that takes an s by hand is one that `counted` or `numbered` would have written."""
    by_hand = re.compile(r"""\{'s' if |else 's'\}|\{'' if [^}]+ else 's'""")
    homes = {"ground/quantities.py", "things/wording.py"}
    modules = [path for path in PACKAGE.rglob("*.py") if path.relative_to(PACKAGE).as_posix() not in homes]
    assert [str(path) for path in modules if by_hand.search(path.read_text(encoding="utf-8"))] == []
