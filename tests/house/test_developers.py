"""DEVELOPERS.md tells the truth: the rooms are those of the table, and each imports only from rooms below it."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PACKAGE = ROOT / "bookmaker"
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path != PACKAGE / "__init__.py")


def ranks() -> dict[str, int]:
    """How far up each room stands, as the table has it: the ground is 0."""
    table = GUIDE.partition("## Rooms")[2].partition("\n## ")[0]
    rooms = re.findall(r"^\| `(\w+)` \|", table, re.MULTILINE)
    assert len(rooms) == len(set(rooms)), "a room stands twice in the table"
    return {room: rank for rank, room in enumerate(reversed(rooms))}


def unit(path: Path) -> str:
    """The module or subpackage of bookmaker that a file belongs to."""
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def named(name: str) -> str:
    """The room that a name of the package stands for; what programs import of it rests on the workshop."""
    is_room = (PACKAGE / name).is_dir() or (PACKAGE / f"{name}.py").is_file()
    return unit(PACKAGE / name) if is_room else "workshop"


def imported(path: Path) -> Iterator[str]:
    """The modules and subpackages of bookmaker that a file imports."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level:
            folder = path.parents[node.level - 1]
            if node.module:
                yield unit(folder / node.module.split(".")[0]) if folder == PACKAGE else unit(folder)
            else:
                yield from (named(name.name) if folder == PACKAGE else unit(folder) for name in node.names)
        elif isinstance(node, (ast.Import, ast.ImportFrom)):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else [name.name for name in node.names]
            assert not any(name.split(".")[0] == "bookmaker" for name in names), "import it as . or .."


def test_every_room_has_its_place() -> None:
    assert set(ranks()) == {unit(path) for path in MODULES}
    assert len(ranks()) <= 14, "a house of at most fourteen rooms"


def test_no_folder_is_crowded() -> None:
    folders = Counter(path.parent for path in MODULES if path.name != "__init__.py")
    assert [(str(folder), files) for folder, files in folders.items() if files > 20] == [], "rooms of their own"


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
