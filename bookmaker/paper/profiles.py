"""A printer's profile: a file of its own, laid under what the shelf file says of the printer."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from pydantic import ValidationError

from ..ground.problems import Place, Problem, ShelfFileError
from ..ground.quantities import show
from ..shelf_file.reading import in_file_order, place_in
from ..shelf_file.source_text import PROFILE, source_text
from ..shelf_file.spec_errors import explain
from ..shelf_file.yaml_tree import Tree, parse_tree
from .printer_entry import PrinterEntry, Profile

__all__ = ["read_printer", "with_profiles"]

Read = Callable[[str, Place], Tree]
"""Reads the file of a profile by its name; problems with it are shown at the place that names it."""


def with_profiles(shelf: Tree, read: Read) -> tuple[Tree, tuple[Problem, ...]]:
    """The shelf with the profiles it names laid under its printer and under those of its stocks.

    What the shelf says itself wins, key by key. A printer whose profile cannot be used is left out, and what is
    wrong comes beside the shelf.
    """
    problems: list[Problem] = []
    stocks = shelf.child("stocks")
    if stocks and isinstance(shelf.value, dict) and isinstance(stocks.value, dict):
        profiled = {name: _or_without(stock, read, problems) for name, stock in stocks.value.items()}
        shelf = replace(shelf, value={**shelf.value, "stocks": replace(stocks, value=profiled)})
    return _or_without(shelf, read, problems), tuple(problems)


def read_printer(path: Path) -> PrinterEntry:
    """Read and check the profile of a printer.

    Raises:
        ShelfFileError: with everything that is wrong in the file.
    """
    tree = _of_a_printer(parse_tree(source_text(path, PROFILE), path.name))
    whole = Tree({"printer": tree}, tree.place)
    try:
        return Profile.model_validate(whole.plain()).printer
    except ValidationError as failure:
        found = [problem.at(place_in(problem, whole)) for problem in explain(failure, Profile)]
        raise ShelfFileError(in_file_order(found)) from None


def _or_without(owner: Tree, read: Read, problems: list[Problem]) -> Tree:
    try:
        return _with_profile(owner, read)
    except ShelfFileError as refusal:
        problems += refusal.problems
        keys = owner.value if isinstance(owner.value, dict) else {}
        return replace(owner, value={key: value for key, value in keys.items() if key != "printer"})


def _with_profile(owner: Tree, read: Read) -> Tree:
    """What has a printer, the shelf or a stock, with the profile of it."""
    written = owner.child("printer")
    if written is None or not isinstance(owner.value, dict):
        return owner
    named = written if isinstance(written.value, str) else written.child("profile")
    if named is None or not isinstance(named.value, str):
        return owner
    profile = _of_a_printer(read(named.value, named.place))
    own = written.value if isinstance(written.value, dict) else {}
    _check_name(profile, written, named.value)
    under = profile.value if isinstance(profile.value, dict) else {}
    printer = Tree({**under, **own, "profile": named}, written.place, {**profile.keys, **written.keys})
    return replace(owner, value={**owner.value, "printer": printer})


def _of_a_printer(profile: Tree) -> Tree:
    """The tree of a profile's file.

    Raises:
        ShelfFileError: it holds something else.
    """
    keys = profile.value if isinstance(profile.value, dict) else {}
    if "name" in keys and "profile" not in keys:
        return profile
    found = "a shelf file" if "shelf" in keys else "no profile of a printer"
    remedy = "write one with bookmaker ruler --measured, or begin it with name: and the printer and its paper path"
    raise ShelfFileError((Problem(f"this is {found}", remedy, place=profile.place),))


def _check_name(profile: Tree, written: Tree, file: str) -> None:
    """A shelf that says which printer it is made for does not take another one's profile."""
    wanted, given = written.child("name"), profile.child("name")
    if wanted is None or given is None or wanted.plain() == given.plain():
        return
    raise ShelfFileError(
        (
            Problem(
                f"{file} is the profile of {show(str(given.plain()))!r}, not of {show(str(wanted.plain()))!r}",
                "name the other profile, or leave name out",
                place=wanted.place,
            ),
        )
    )
