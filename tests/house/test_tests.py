"""The tests keep house too: what they share stands in tests/kit, and none imports from another test."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

TESTS = Path(__file__).parents[1]
FILES = sorted(TESTS.rglob("*.py"))
KIT = TESTS / "kit"


def imported(path: Path) -> Iterator[str]:
    """The modules of the tests that a file imports."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom):
            assert not node.level, "import it in full"
            yield from (f"{node.module}.{alias.name}" for alias in node.names)
        elif isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)


def test_only_the_kit_is_shared() -> None:
    for path in FILES:
        shared = [name for name in imported(path) if name.split(".")[0] in ("tests", "conftest")]
        assert [name for name in shared if not name.startswith("tests.kit.")] == [], path


def test_the_kit_holds_no_tests_and_none_of_it_lies_idle() -> None:
    used = {name for path in FILES for name in imported(path)}
    for path in KIT.glob("[!_]*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        assert ast.get_docstring(tree), path.name
        (offered,) = [
            ast.literal_eval(node.value)
            for node in tree.body
            if isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "__all__"
        ]
        assert [name for name in offered if name.startswith(("test_", "_"))] == []
        module = f"tests.kit.{path.stem}"
        assert {module, *(f"{module}.{name}" for name in offered)} & used, path.name
