"""What is sent to the page as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterable

from ..ground.problems import Problem
from .shown import Value, problem_shown

__all__ = ["as_json", "refusal"]


def as_json(value: Value | list[Value]) -> bytes:
    """A value as JSON, as short as it can be."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode()


def refusal(problems: Iterable[Problem]) -> bytes:
    """Why something was not done."""
    return as_json({"problems": [problem_shown(problem) for problem in problems]})
