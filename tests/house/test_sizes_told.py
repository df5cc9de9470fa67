"""Sizes are told in one order, width × height and then depth, by every step, table, message and manual page."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "bookmaker"

HIGH, WIDE = r"(?:height|high|tall)", r"(?:width|wide|long)"

OTHER_WAY = re.compile(
    rf"\b{HIGH} (?:×|and) {WIDE}\b"
    rf"|\b{HIGH} × deep\b"
    rf"|{HIGH}\b[^{{}}×]*\}} × \{{[^{{}}×]*{WIDE}\b"
    rf"|\}} high(?:,| and) \{{[^{{}}]*\}} (?:wide|long)\b"
)
"""Words, or values of an f-string, with the height before the width."""


def texts(tree: ast.AST) -> Iterator[tuple[int, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield node.lineno, ast.unparse(node)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def other_way(path: Path) -> Iterator[str]:
    """Where the order is the other one."""
    source = path.read_text(encoding="utf-8")
    found = texts(ast.parse(source)) if path.suffix == ".py" else enumerate(source.splitlines(), start=1)
    for line, text in found:
        if OTHER_WAY.search(text):
            yield f"{path.relative_to(PACKAGE)}:{line}: {text}"


def test_the_width_comes_first() -> None:
    paths = sorted({*PACKAGE.rglob("*.py"), *PACKAGE.rglob("*.md")})
    assert [found for path in paths for found in other_way(path)] == []


@pytest.mark.parametrize(
    "text",
    [
        'f"{sides(size)} high and wide"',
        '"Parts, height × width"',
        '"book high × deep"',
        'f"{long(size.height)} × {long(size.width)}"',
        'f"{long(page.height)} high, {long(page.width)} wide"',
    ],
)
def test_the_other_order_is_seen(text: str) -> None:
    assert any(OTHER_WAY.search(told) for _, told in texts(ast.parse(text)))
