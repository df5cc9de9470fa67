"""DEVELOPERS.md tells the truth: every module has a rank, and imports only what ranks below it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PACKAGE = ROOT / "bookmaker"
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path != PACKAGE / "__init__.py")


def ranks() -> dict[str, int]:
    """The rank of each module and subpackage, as the table has it."""
    found: dict[str, int] = {}
    for rank, names in re.findall(r"^\| (\d+) \| ([^|]+) \|", GUIDE, re.MULTILINE):
        for name in re.findall(r"`(\w+)`", names):
            assert name not in found, f"{name} has two ranks"
            found[name] = int(rank)
    return found


def unit(path: Path) -> str:
    """The module or subpackage of bookmaker that a file belongs to."""
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def imported(path: Path) -> Iterator[str]:
    """The modules and subpackages of bookmaker that a file imports."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level:
            folder = path.parents[node.level - 1]
            if node.module:
                yield unit(folder / node.module.split(".")[0]) if folder == PACKAGE else unit(folder)
            else:
                yield from (unit(folder / name.name) if folder == PACKAGE else unit(folder) for name in node.names)
        elif isinstance(node, (ast.Import, ast.ImportFrom)):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else [name.name for name in node.names]
            assert not any(name.split(".")[0] == "bookmaker" for name in names), "import it as . or .."


def test_every_module_has_a_rank() -> None:
    assert set(ranks()) == {unit(path) for path in MODULES}


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_go_down(path: Path) -> None:
    rank = ranks()
    own = unit(path)
    upward = {name for name in imported(path) if name != own and rank[name] >= rank[own]}
    assert upward == set()


def test_no_star_imports() -> None:
    for path in MODULES:
        assert not re.search(r"^from .* import \*", path.read_text(encoding="utf-8"), re.MULTILINE), path


def test_links_and_names_lead_somewhere() -> None:
    for target in re.findall(r"\]\(([^)]+)\)", GUIDE):
        assert (ROOT / target).exists(), target
    for name in re.findall(r"`(tests/[\w/.]+|\.ci/run|bookmaker/[\w/.]+)`", GUIDE):
        assert (ROOT / name).exists(), name


def test_seven_steps_name_functions_there_are() -> None:
    steps = re.findall(r"^\d\. \*\*[\w ]+\*\*: `([\w.]+)`", GUIDE, re.MULTILINE)
    assert len(steps) == 7
    for step in steps:
        module, _, function = step.rpartition(".")
        path = PACKAGE / Path(*module.split("."))
        file = path / "__init__.py" if path.is_dir() else path.with_suffix(".py")
        assert f"def {function}(" in file.read_text(encoding="utf-8"), step
