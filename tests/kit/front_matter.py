"""Parts of a book composed together, and what stands on their pages."""

from __future__ import annotations

from pathlib import Path

from pydantic import TypeAdapter

from bookmaker.ground.drawing import Art
from bookmaker.ground.problems import Severity
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.kinds import AnyInside
from bookmaker.typesetting.page import BookWords, Inside, PageFrame
from tests.kit.recording import Written, record

__all__ = ["BOOK", "SMALL", "errors", "inside", "said", "texts"]

SMALL = PageFrame(15, 21, 0)
BOOK = BookWords("The Long Quay", "P. Stannard", "The Net Loft")


def inside(parts: list[dict[str, str]], pages: int, folder: Path, frame: PageFrame = SMALL) -> Inside:
    entry = TypeAdapter(AnyInside).validate_python(parts)
    book = BOOK if frame.book == BookWords() else frame.book
    given = PageFrame(frame.width, frame.height, pages, frame.right_to_left, book=book, step=frame.step)
    return load_inside(entry, folder).compose(given)


def texts(page: Art) -> list[Written]:
    return record(page).texts


def said(page: Art) -> list[str]:
    return [text.text for text in texts(page)]


def errors(found: Inside) -> list[str]:
    return [str(problem) for problem in found.problems if problem.severity is Severity.ERROR]
