"""Twice as much text takes about twice as long to set, not four times, however odd it is."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from bookmaker.ground.problems import ShelfFileError
from bookmaker.typesetting.standing_type import StandingType
from tests.kit.text_pages import FRAME, inside

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
