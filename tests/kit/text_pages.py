"""Pages of a text set on a grid of rows, and read back by row."""

from __future__ import annotations

from pathlib import Path

from bookmaker.ground.drawing import Art
from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import BookWords, Inside, PageFrame
from tests.kit.recording import Written, record

__all__ = ["FACE", "FRAME", "PROSE", "SIZE", "STEP", "inside", "lines", "row", "said"]

FACE = bundled("text")
SIZE = 0.8
STEP = 1.25 * SIZE
FRAME = PageFrame(24, 30, 12, book=BookWords("Salt Verses", "M. Sterrick"))
PROSE = "The keeper trims the lamp at dusk and writes down the wind, the sea and the state of the sky. " * 3


def inside(folder: Path, text: str, frame: PageFrame = FRAME, **keys: object) -> Inside:
    (folder / "log.md").write_text(text, encoding="utf-8")
    entry = TextInside.model_validate({"file": "log.md", "size": SIZE, "numbers": "no", "hanging": "no", **keys})
    return entry.load(folder).compose(frame)


def lines(page: Art) -> list[Written]:
    return record(page).texts


def row(line: Written, number: int = 1, frame: PageFrame = FRAME) -> float:
    """The row of the grid a line stands on, from 0."""
    return (frame.type_area(number).top - FACE.shape("dfl").top * SIZE - line.at.y) / STEP


def said(inside: Inside) -> list[str]:
    return [str(problem) for problem in inside.problems if problem.severity is not Severity.NOTE]
