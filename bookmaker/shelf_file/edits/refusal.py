"""Why a place cannot be edited, raised where it is found and returned as a problem by what is called from outside."""

from __future__ import annotations

from ...ground.problems import FieldPath, Problem

__all__ = ["EditRefused", "absent", "refused", "refused_of"]


class EditRefused(Exception):  # noqa: N818 - it reads as a sentence where it is caught
    """An edit that cannot be made, with the problem to tell."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(str(problem))
        self.problem = problem


def refused(message: str, remedy: str, field: FieldPath = ()) -> EditRefused:
    """A refusal in words: what is in the way, what to do instead, and of which field it is told."""
    return EditRefused(Problem(message, remedy, field=field))


def refused_of(subject: FieldPath, message: str, remedy: str, field: FieldPath | None = None) -> EditRefused:
    """A refusal whose message says something of a field, which is named once it is told; `field` is usually that."""
    return EditRefused(Problem(message, remedy, field=subject if field is None else field, subject=subject))


def absent(path: FieldPath) -> EditRefused:
    """The refusal where nothing stands at a path."""
    remedy = "choose something that is; what comes from defaults or a row is changed there"
    return refused_of(path, "is not written here", remedy)
