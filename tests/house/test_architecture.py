"""No module imports itself in a ring, and each offers what it says; ranks are checked in test_developers."""

from __future__ import annotations

import ast
import importlib
from pathlib import Path

import pytest

import bookmaker

ROOT = Path(bookmaker.__file__).parent

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


GRAPH = {module: imports(module, path.read_text(encoding="utf-8")) for module, path in FILES.items()}


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


@pytest.mark.parametrize("module", [module for module, path in FILES.items() if path.stem not in ("__main__",)])
def test_all_names_what_exists(module: str) -> None:
    source = FILES[module].read_text(encoding="utf-8")
    if not [node for node in ast.parse(source).body if not isinstance(node, ast.Expr)]:
        return  # nothing but a docstring
    offered = importlib.import_module(module).__all__
    assert list(offered) == sorted(set(offered), key=offered.index)
    assert not [name for name in offered if not hasattr(importlib.import_module(module), name)]
