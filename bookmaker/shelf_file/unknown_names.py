"""What is said of a name that nothing of its kind has."""

from __future__ import annotations

from collections.abc import Collection

from ..ground.problems import FieldPath, Problem, near_match
from ..ground.quantities import show

__all__ = ["unknown_name"]


def unknown_name(what: str, name: str, known: Collection[str], field: FieldPath) -> Problem:
    """There is no such stock, space or surface; with the name that was meant, if one is near."""
    meant = near_match(name, known)
    if meant:
        remedy = f"did you mean {meant!r}?"
    elif known:
        remedy = ("write one of " if len(known) > 1 else "write ") + ", ".join(known)
    else:
        remedy = f"describe it under {what}s first"
    return Problem(f"there is no {what} {show(name)!r}", remedy, field=field, value=name, by_itself=True)
