"""What is sent to the page as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

from ..ground.problems import Problem

__all__ = ["Value", "as_json", "problem_shown", "refusal"]


Value = dict[str, Any]
"""What becomes JSON."""


def problem_shown(problem: Problem) -> Value:
    """What is wrong, where, and what to do about it."""
    place = problem.place
    return {
        "severity": str(problem.severity),
        "message": problem.message,
        "remedy": problem.remedy,
        "place": str(place) if place else "",
        "source": place.source.strip()[:200] if place else "",
        "thing": problem.thing,
        "field": list(problem.field),
    }


def as_json(value: Value | list[Value]) -> bytes:
    """A value as JSON, as short as it can be."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode()


def refusal(problems: Iterable[Problem]) -> bytes:
    """Why something was not done."""
    return as_json({"problems": [problem_shown(problem) for problem in problems]})
