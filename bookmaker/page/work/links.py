"""Where the manual tells of a key, or of what is wrong: the anchors that the page leads to."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from pydantic import BaseModel

from ...ground.problems import FieldPath, Problem
from ...shelf.entries import ShelfSpec, shelf_model
from ...shelf_file.fields.keys import kinds_at
from ...things.families import all_families
from ...writers.manual.places import MESSAGES, key_place, message_place
from ..replies import Value, as_json, problem_shown

__all__ = ["problem_told", "refusal_told"]


def problem_told(problem: Problem) -> Value:
    """What is wrong, where, what to do about it, and where the manual has more."""
    return problem_shown(problem) | {"manual": _place(problem)}


def refusal_told(problems: Iterable[Problem]) -> bytes:
    """Why something was not done."""
    return as_json({"problems": [problem_told(problem) for problem in problems]})


def _place(problem: Problem) -> str:
    return message_place(problem.message) or _field_place(problem.field) or MESSAGES


def _field_place(field: FieldPath) -> str | None:
    """The row about the last key of a field of the shelf, told by the first kind of group that has it."""
    while field and isinstance(field[-1], int):
        field = field[:-1]
    groups = kinds_at(_model(), field[:-1]) if field else []
    for group in groups:
        if isinstance(group, type) and issubclass(group, BaseModel) and field[-1] in group.model_fields:
            return key_place(str(field[-1]), group.model_fields)
    return None


@cache
def _model() -> type[ShelfSpec]:
    return shelf_model(all_families())
