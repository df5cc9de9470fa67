"""Lists on pages: no item of a single line is left alone at the foot of a page, and none at the head of the next."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.drawing import Art
from tests.kit.text_pages import PROSE, inside, lines


def items_of(page: Art) -> int:
    return sum(line.text in {"\u2022", "1."} or line.text.rstrip(".").isdigit() for line in lines(page))


@pytest.mark.parametrize("count", [2, 3, 4, 5])
@pytest.mark.parametrize("over", range(14, 26))
def test_no_item_of_one_line_stands_alone_at_the_foot_or_the_head_of_a_page(
    tmp_path: Path, count: int, over: int
) -> None:
    verses = "\\\n".join("The lamp is lit" for _ in range(over))
    listed = "\n".join(f"- wind the clock {number}" for number in range(count))
    found = inside(tmp_path, f"{verses}\n\n{listed}\n\n{PROSE}")
    counts = [here for page in found.pages if (here := items_of(page))]
    assert sum(counts) == count
    assert 1 not in counts


def test_a_long_list_goes_on_over_the_page_all_the_same(tmp_path: Path) -> None:
    listed = "\n".join(f"{number}. wind the clock" for number in range(1, 60))
    counts = [items_of(page) for page in inside(tmp_path, listed).pages]
    assert sum(counts) == 59
    assert max(counts) == counts[0] > 10
