"""Kinds are told apart by their tables alone: each stands in one, and nobody else asks which it has before it."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator
from pathlib import Path

import pytest

import bookmaker
from bookmaker.shelf_file.fields.entry import Entry
from bookmaker.things.book.blocks.block import BlockEntry
from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.cover import CoverEntry
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from bookmaker.things.book.designs.design import Design
from bookmaker.things.book.designs.kinds import KINDS as DESIGNS
from bookmaker.things.book.pages.kinds import KINDS as PAGES
from bookmaker.things.book.pages.part import Part

ROOT = Path(bookmaker.__file__).parent
TABLES: tuple[tuple[type[Entry], tuple[type[Entry], ...], str], ...] = (
    (BlockEntry, BLOCKS, "kind"),
    (CoverEntry, COVERS, "kind"),
    (Part, PAGES, "kind"),
    (Design, DESIGNS, "style"),
)

every_table = pytest.mark.parametrize(
    ("base", "kinds", "key"), TABLES, ids=lambda value: getattr(value, "__name__", "")
)


def concrete(base: type[Entry], key: str) -> Iterator[type[Entry]]:
    """What is made of a base class, has all answers, and names itself."""
    for one in base.__subclasses__():
        if not inspect.isabstract(one) and key in one.model_fields and one.__module__.startswith("bookmaker."):
            yield one
        yield from concrete(one, key)


@every_table
def test_every_kind_stands_in_its_table_once_under_a_name_of_its_own(
    base: type[Entry], kinds: tuple[type[Entry], ...], key: str
) -> None:
    assert sorted(kind.__name__ for kind in concrete(base, key)) == sorted(kind.__name__ for kind in kinds)
    names = [kind.model_fields[key].default for kind in kinds]
    assert len(names) == len(set(names)) > 1


def test_no_other_family_imports_a_kind() -> None:
    for _, table, _ in TABLES:
        kinds = {(kind.__module__.split(".")[-1], kind.__name__) for kind in table}
        (family,) = {"/".join(kind.__module__.split(".")[1:4]) for kind in table}
        for path in sorted(ROOT.rglob("*.py")):
            if not path.is_relative_to(ROOT / family):
                for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                    if isinstance(node, ast.ImportFrom) and node.module:
                        named = {(node.module.split(".")[-1], name.name) for name in node.names}
                        assert not named & kinds, f"{path.relative_to(ROOT)} imports {named & kinds}"


def test_no_module_is_passed_and_no_method_looked_up_by_its_name() -> None:
    for path in sorted((ROOT / "things").rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        assert "ModuleType" not in text, path
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                assert node.func.id not in ("hasattr", "setattr"), path
