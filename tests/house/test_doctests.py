"""The worked examples in the docstrings, each run in its module."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import bookmaker


def test_every_worked_example_is_true() -> None:
    names = [found.name for found in pkgutil.walk_packages(bookmaker.__path__, "bookmaker.")]
    results = {name: doctest.testmod(importlib.import_module(name)) for name in names if not name.endswith("__main__")}
    assert [name for name, result in results.items() if result.failed] == []
    assert sum(result.attempted for result in results.values()) > 80
