"""Twice as much text takes about twice as long to set, not four times, however odd it is."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import ShelfFileError
from bookmaker.typesetting.lines.box_sets import BoxSets
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.lines.paragraphs import Lines, Measures
from bookmaker.typesetting.lines.set_lines import SetLine, SetLines
from bookmaker.typesetting.standing_type import StandingType
from tests.kit.text_pages import FACE, FRAME, inside

AT_MOST = 3
"""So many times longer for twice as much: what is linear takes 2, what grows with the square 4."""

TICK = 0.02
"""Seconds below which nothing is compared."""

TEXTS: dict[str, Callable[[int], str]] = {
    "short lines": lambda n: "a\n" * n,
    "short paragraphs": lambda n: "a\n\n" * n,
    "indents": lambda n: "".join("    " * (at % 4) + f"line {at}\n" for at in range(n)),
    "marks out of order": lambda n: ("a" + "\u0301\u0323" * 20 + " ") * (n // 8),
    "piles of marks": lambda n: ("a" + "\u0301\u0323" * 30) * (n // 4),
    "dashes": lambda n: "a--" * n,
    "digits": lambda n: "a 1" + "1" * 8 * n,
    "numerals": lambda n: "12.345,6 XVIII. " * n,
    "one word": lambda n: "abcde" * 2 * n,
    "hard breaks": lambda n: "word  \n" * n,
    "heads upon heads": lambda n: "".join("#" * (1 + at % 6) + f" Head {at}\n\n" for at in range(n // 2)) + "End.\n",
    "heads and texts": lambda n: "".join(f"# Head {at}\n\nText.\n\n" for at in range(n // 8)),
    "a long table": lambda n: "| a | b |\n|---|---|\n" + "| x | y |\n" * n,
    "a line of heads": lambda n: "# " * n + "a",
    "emphasis that never ends": lambda n: "*a " * n,
    "brackets": lambda n: "a [" * n,
    "notes": lambda n: "".join(f"a[^{at}]\n\n[^{at}]: note\n\n" for at in range(n // 8)),
}


def seconds(folder: Path, text: str) -> float:
    with StandingType().used():
        start = time.process_time()
        inside(folder, text, replace(FRAME, pages=2000))
        return time.process_time() - start


@pytest.mark.parametrize("what", TEXTS)
def test_odd_texts_are_set_in_time_that_grows_as_they_do(what: str, tmp_path: Path) -> None:
    make = TEXTS[what]
    seconds(tmp_path, make(10))  # what is made once
    measured = []
    for _ in range(4):  # what works beside a test only slows it: the best round counts
        once, twice = (min(seconds(tmp_path, make(count)) for _ in range(2)) for count in (1500, 3000))
        measured.append((once, twice))
        if twice <= AT_MOST * max(once, TICK):
            return
    raise AssertionError(measured)


def test_a_table_that_is_too_long_is_broken_into_lines_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    broken: list[str] = []

    def counted(self: Lines, words: Sequence[str], *rest: object, **more: object) -> SetLines:
        broken.append(" ".join(words))
        return lines_broken(self, words, *rest, **more)  # type: ignore[arg-type]

    lines_broken = Lines.broken
    monkeypatch.setattr(Lines, "broken", counted)

    def work(count: int) -> tuple[int, str]:
        broken.clear()
        text = "| a | b |\n|---|---|\n" + "".join(f"| x{at} | y{at} |\n" for at in range(count))
        with StandingType().used():
            found = inside(tmp_path, text, replace(FRAME, pages=100), weight="1 dot")
        return len(broken), found.problems[0].message

    once, twice = work(1500), work(3000)
    assert "fills" in once[1]
    assert "do not fit in 100 pages" in twice[1]
    assert twice[0] <= 2 * once[0]


CELLS = st.lists(
    st.sampled_from(
        ["", "fog", "–", "—", "A.", "I.", "Fogg", "v", "12", "km", "\u00a0", "AV-To", f"{Style.ITALIC}sea", "fi"]
    ),
    min_size=1,
    max_size=8,
)


@pytest.mark.parametrize("language", [None, "en_US", "cs", "fr"])
@given(words=CELLS)
def test_words_that_fit_on_a_line_stand_on_one(language: str | None, words: list[str]) -> None:
    fount = Fount({Style.ROMAN: FACE}, language)
    lines, boxes = Lines(fount), BoxSets(fount, hanging=True, loosening=0.0).sparing(80.0, hanging=False)
    cell = " ".join(words)
    found = lines.broken(words, boxes, boxes.ragged, Measures(0.0, (lines.width(cell) + 1e-9,)))
    assert found == SetLines((SetLine(cell, 0.0, 0.0, len(words)),))


def test_a_pile_of_marks_without_end_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as caught:
        inside(tmp_path, "Fog.\n\nFa" + "\u0301\u0323" * 31 + "r off.")
    (problem,) = caught.value.problems
    assert problem.message == "log.md has a letter with more than 60 marks on it in line 3"


def test_a_heading_without_end_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as caught:
        inside(tmp_path, "# " + "Fog " * 2501)
    (problem,) = caught.value.problems
    assert problem.message == "log.md has a heading of 10003 letters, more than 10000: 'Fog Fog Fog Fog Fog '…"
