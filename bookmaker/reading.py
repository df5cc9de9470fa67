"""From a shelf file on disk to a checked `ShelfSpec` that remembers where everything was written."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError

from .defaults import with_defaults
from .errors import Place, Problem, ShelfFileError
from .shelf_spec import ShelfSpec, cross_check
from .spec_errors import explain
from .yaml_tree import Tree, parse_tree

__all__ = ["ShelfFile", "read_shelf"]

LARGEST_FILE = 2_000_000
"""Bytes; a shelf of 5000 books stays well below."""


@dataclass(frozen=True, slots=True)
class ShelfFile:
    """A shelf file that was read: what it says, and where it says it. `folder` is what its paths start from."""

    path: Path
    spec: ShelfSpec
    tree: Tree

    @property
    def folder(self) -> Path:
        """The folder that paths in the file start from."""
        return self.path.parent

    def located(self, problems: Iterable[Problem]) -> tuple[Problem, ...]:
        """The problems with the places of their fields."""
        return tuple(_located(problem, self.tree) for problem in problems)


def read_shelf(path: Path) -> ShelfFile:
    """Read and check a shelf file.

    Raises:
        ShelfFileError: with everything that is wrong in the file, each problem with its place.
    """
    tree = with_defaults(parse_tree(_read_text(path), path.name))
    return ShelfFile(path, _validated(tree), tree)


def _validated(tree: Tree) -> ShelfSpec:
    if not isinstance(tree.value, dict):
        raise ShelfFileError(
            (
                Problem(
                    "a shelf file is a list of keys and values",
                    "start with shelf: and a name",
                    place=tree.place,
                ),
            )
        )
    try:
        spec = ShelfSpec.model_validate(tree.plain())
    except ValidationError as failure:
        found = [_located(problem, tree) for problem in explain(failure, ShelfSpec)]
        raise ShelfFileError(_in_file_order(found)) from None
    crossed = [_located(problem, tree) for problem in cross_check(spec)]
    if crossed:
        raise ShelfFileError(_in_file_order(crossed))
    return spec


def _in_file_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: (problem.place or Place("")).line))


def _located(problem: Problem, tree: Tree) -> Problem:
    return problem if problem.place else problem.at(tree.place_of(problem.field))


def _read_text(path: Path) -> str:
    """The text of a shelf file, refused with a reason if it is none."""

    def refused(message: str, remedy: str) -> ShelfFileError:
        return ShelfFileError((Problem(message, remedy, place=Place(path.name)),))

    if path.is_dir():
        raise refused("this is a folder", "name the shelf file in it")
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise refused(
                f"the file has {size / 1e6:.1f} MB; a shelf file has at most {LARGEST_FILE / 1e6:.0f}",
                "keep long texts in files of their own and name them under inside",
            )
        data = path.read_bytes()
    except OSError as trouble:
        raise refused(
            f"the file cannot be read ({trouble.strerror})", "check its name and that you may open it"
        ) from None
    if b"\0" in data:
        raise refused("this is not a text file", "write the shelf in a text editor and save it as UTF-8")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line = data.count(b"\n", 0, trouble.start) + 1
        raise refused(f"line {line} is not UTF-8 text", "save the file with the encoding UTF-8") from None
