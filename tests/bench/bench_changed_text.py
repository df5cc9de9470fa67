"""One paragraph of a long text changed: from the new file to set pages, what is said of them, and the art of new pages.

    python -m tests.bench.bench_changed_text [WORDS] [EDITS]

A text of WORDS (50 000) in plain text and in Markdown with chapters, on as many pages as it needs and fitted into 900.
EDITS (20) times one paragraph, anywhere in it, has a few words put in or taken out; then the file is read, its extent
found, its pages are composed, and those that are not what they were are drawn. Beside it stands what the same costs
when nothing has been kept.
"""

from __future__ import annotations

import random
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from bookmaker.ground.collection import uncollected
from bookmaker.things.book.pages.prose.setpage import SetPage
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import Inside, PageFrame
from bookmaker.typesetting.standing_type import StandingType
from tests.kit.prose import paragraphs
from tests.kit.recording import record

WIDTH, HEIGHT, LEADING = 15.0, 21.0, 1.25

WORDS_A_CHAPTER = 60
"""Paragraphs, rather, between two headings of the Markdown text."""


def in_markdown(text: list[str]) -> list[str]:
    """The paragraphs in chapters, every ninth with emphasis."""
    found = list[str]()
    for number, paragraph in enumerate(text):
        first, _, rest = paragraph.partition(" ")
        found += [f"# Chapter {number}"] if number % WORDS_A_CHAPTER == 0 else []
        found.append(f"*{first}* {rest}" if number % 9 == 0 else paragraph)
    return found


def changed(text: list[str], chance: random.Random) -> list[str]:
    """The text with one paragraph changed."""
    at = chance.choice([place for place, paragraph in enumerate(text) if paragraph[0] not in "#*"])
    words = text[at].split()
    place = chance.randrange(len(words))
    words[place:place] = chance.choice((["fog"], ["thick", "fog", "and", "rain"], ["nothing"]))
    return [*text[:at], " ".join(words), *text[at + 1 :]]


def set_text(file: Path, size: str) -> Inside:
    """The text on its pages."""
    loaded = TextInside.model_validate({"file": file.name, "size": size, "leading": LEADING}).load(file.parent)
    frame = PageFrame(WIDTH, HEIGHT, 0)
    pages = loaded.extent(frame) or 900
    return loaded.compose(PageFrame(WIDTH, HEIGHT, pages))


def made(inside: Inside) -> list[object]:
    """What stands on each page."""
    return [
        next((layer.made for layer in layers_of(page) if isinstance(layer, SetPage)), None) for page in inside.pages
    ]


def layers_of(art: object) -> list[object]:
    """The pieces of art that one consists of."""
    inner = getattr(art, "layers", None) or getattr(art, "parts", None)
    return [piece for layer in inner for piece in layers_of(layer)] if inner else [art]


def taken(work: Callable[[], object]) -> float:
    """Seconds of CPU that some work takes."""
    start = time.process_time()
    with uncollected():
        work()
    return time.process_time() - start


def measure(folder: Path, name: str, text: list[str], size: str, edits: int) -> None:
    """Edit a text again and again; print what an edit costs."""
    chance, file, kept = random.Random(11), folder / name, StandingType()
    file.write_text("\n\n".join(text), encoding="utf-8")
    with StandingType().used():
        fresh = taken(lambda: set_text(file, size))
    setting, drawing, drawn = list[float](), list[float](), list[int]()
    with kept.used():
        before = made(set_text(file, size))
        for _ in range(edits):
            text = changed(text, chance)
            file.write_text("\n\n".join(text), encoding="utf-8")

            inside = Inside(())

            def again() -> None:
                nonlocal inside
                inside = set_text(file, size)

            setting.append(taken(again))
            now = made(inside)
            new = [place for place, page in enumerate(now) if page != (before[place : place + 1] or [None])[0]]
            drawing.append(taken(lambda: [record(inside.pages[place]) for place in new]))  # noqa: B023 (done at once)
            drawn.append(len(new))
            before = now
    both = [one + other for one, other in zip(setting, drawing, strict=True)]
    print(
        f"{name:9} {size:6} afresh {fresh:.2f} s; a paragraph changed: median {statistics.median(both):.3f} s, "
        f"worst {max(both):.3f} s, of it for setting {statistics.median(setting):.3f} and {max(setting):.3f} s; "
        f"pages drawn: median {statistics.median(drawn):.0f}, most {max(drawn)} of {len(before)}"
    )


def main() -> None:
    """Run the benchmark and print what was measured."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50_000
    edits = int(sys.argv[2]) if len(sys.argv) > 2 else 20
    text = paragraphs(count)
    with tempfile.TemporaryDirectory() as folder:
        for name, written in (("story.txt", text), ("story.md", in_markdown(text))):
            for size in ("2.2 pt", "fit"):
                measure(Path(folder), name, written, size, edits)


if __name__ == "__main__":
    main()
