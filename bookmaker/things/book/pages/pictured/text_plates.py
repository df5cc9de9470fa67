"""The pictures that a text names, read from beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from .....ground.files import is_there
from .....ground.lost_files import meant_file
from .....ground.pictures import Picture, load_picture
from .....ground.problems import Problem, ShelfFileError
from .....typesetting.manuscripts.passage import Passage, Role

__all__ = ["as_figures", "load_plates"]

MOST_NAMED = 3
"""Missing pictures that a message names; the others are counted."""


def load_plates(name: str, passages: Sequence[Passage], folder: Path) -> tuple[dict[str, Picture], list[Problem]]:
    """The pictures of the text of this name, found from its folder, and what is wrong with others."""
    lines = {passage.mark: passage.line for passage in reversed(passages) if passage.role is Role.PLATE}
    wanted = dict(sorted(lines.items(), key=lambda plate: plate[1]))
    plates: dict[str, Picture] = {}
    missing: dict[str, int] = {}
    problems: list[Problem] = []
    for mark, line in wanted.items():
        if not is_there(folder / mark):
            missing[mark] = line
            continue
        try:
            plates[mark] = load_picture(folder / mark)
        except ShelfFileError as refusal:
            problems += _told(refusal.problems, f"line {line} of {name}")
    return plates, [*_missing(name, missing, folder), *problems]


def as_figures(
    passages: Sequence[Passage], plates: Mapping[str, Picture], *, turned: bool = False
) -> tuple[Passage, ...]:
    """Passages whose pictures stand among their text, each with its shape; it may be `turned` by a quarter."""
    return tuple(
        _figure(passage, plates[passage.mark], turned) if passage.role is Role.PLATE else passage
        for passage in passages
    )


def _figure(passage: Passage, picture: Picture, turned: bool) -> Passage:
    shape = picture.height_px / picture.width_px
    return passage._replace(role=Role.FIGURE, shape=1 / shape if turned else shape)


def _told(problems: Sequence[Problem], where: str) -> Iterator[Problem]:
    return (replace(problem, message=f"{where}: {problem.message}", field=("file",)) for problem in problems)


def _missing(name: str, lines: Mapping[str, int], folder: Path) -> Iterator[Problem]:
    if not lines:
        return
    meant = [found for mark in [*lines][:MOST_NAMED] if (found := meant_file(folder / mark, mark))]
    named = ", ".join(f"{mark} in line {line}" for mark, line in [*lines.items()][:MOST_NAMED])
    more = f" and {len(lines) - MOST_NAMED} more" if len(lines) > MOST_NAMED else ""
    which = "a picture that is" if len(lines) == 1 else f"{len(lines)} pictures that are"
    its = "it beside the text, or write its path" if len(lines) == 1 else "them beside the text, or write their paths"
    yield Problem(
        f"{name} names {which} not there: {named}{more}",
        f"did you mean {', '.join(meant)}?" if meant else f"put {its} as seen from the folder of the text",
        field=("file",),
    )
