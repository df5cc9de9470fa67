"""The shape of the program: what may import what, and what each module offers."""

from __future__ import annotations

import ast
import importlib
from pathlib import Path

import pytest

import bookmaker

ROOT = Path(bookmaker.__file__).parent

RANKS = (
    "errors geometry thickness",
    "apron flat output packing quantities scripts starter yaml_tree",
    "defaults spec_errors typefaces units",
    "papers pictures",
    "drawing",
    "piece spec",
    "designs pages shelf stock",
    "blocks covers",
    "sheets shelf_spec",
    "marks plan reading schema",
    "drafting findings writers",
    "pipeline ruler",
    "reports",
    "cli",
    "__main__",
)
"""Modules and packages from the ground up; each may import only what stands on lower lines, or its own package."""

RANK = {name: rank for rank, line in enumerate(RANKS) for name in line.split()}
FILES = {
    ".".join(("bookmaker", *path.relative_to(ROOT).with_suffix("").parts)).removesuffix(".__init__"): path
    for path in sorted(ROOT.rglob("*.py"))
}


def imports(module: str, source: str) -> set[str]:
    """The modules of this program that a module imports, in full."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            package = module if FILES[module].name == "__init__.py" else module.rpartition(".")[0]
            for _ in range(node.level - 1):
                package = package.rpartition(".")[0]
            base = ".".join(part for part in (package if node.level else "", node.module or "") if part)
            parts = {f"{base}.{alias.name}" for alias in node.names}
            found |= {part for part in parts if part in FILES} or {base}
            if any(part not in FILES for part in parts):
                found.add(base)
    return {name for name in found if name in FILES}


def part(module: str) -> str:
    """The row of the table a module belongs to."""
    return module.split(".")[1] if "." in module else ""


GRAPH = {module: imports(module, path.read_text(encoding="utf-8")) for module, path in FILES.items()}


def test_the_table_names_exactly_what_there_is() -> None:
    assert set(RANK) == {part(module) for module in FILES} - {""}


@pytest.mark.parametrize("module", [module for module in FILES if part(module)])
def test_a_module_imports_only_what_ranks_below_it(module: str) -> None:
    upward = {
        target
        for target in GRAPH[module]
        if part(target) not in ("", part(module)) and RANK[part(target)] >= RANK[part(module)]
    }
    assert not upward


def test_there_are_no_import_cycles() -> None:
    done: set[str] = set()

    def visit(module: str, trail: tuple[str, ...]) -> None:
        assert module not in trail, " → ".join((*trail, module))
        if module not in done:
            for target in GRAPH[module] - {module}:
                visit(target, (*trail, module))
            done.add(module)

    for module in GRAPH:
        visit(module, ())


@pytest.mark.parametrize("module", FILES)
def test_there_are_no_star_imports(module: str) -> None:
    nodes = ast.walk(ast.parse(FILES[module].read_text(encoding="utf-8")))
    assert not [node.lineno for node in nodes if isinstance(node, ast.ImportFrom) and node.names[0].name == "*"]


@pytest.mark.parametrize("module", [module for module, path in FILES.items() if path.stem not in ("__main__",)])
def test_all_names_what_exists(module: str) -> None:
    source = FILES[module].read_text(encoding="utf-8")
    if not [node for node in ast.parse(source).body if not isinstance(node, ast.Expr)]:
        return  # nothing but a docstring
    offered = importlib.import_module(module).__all__
    assert list(offered) == sorted(set(offered), key=offered.index)
    assert not [name for name in offered if not hasattr(importlib.import_module(module), name)]
