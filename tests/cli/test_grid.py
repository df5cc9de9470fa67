"""Tables fit the terminal: columns go in the order that is stated, and a name keeps its first letters."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.cli.grid import BOLD, PLAIN, SHORTEST_NAME, Grid, width_of

COLUMNS = (("", True), ("book", False), ("pages", True), ("thick", True), ("seen", False))
LETTERS = st.characters(codec="utf-8", categories=("L", "M", "N", "P", "S"))
NAMES = st.text(LETTERS, max_size=50)


def grid_of(*names: str) -> Grid:
    grid = Grid("Salt: books", COLUMNS)
    for number, name in enumerate(names, start=1):
        grid.add_row(str(number), name, "48", "4.56", "readable")
    return grid


def shown(line: str) -> str:
    return line.removeprefix(BOLD).removesuffix(PLAIN)


def test_with_room_enough_everything_is_shown() -> None:
    assert list(map(shown, grid_of("Tide Tables", "Brine").lines())) == [
        "Salt: books",
        "",
        "     book          pages   thick   seen",
        " " + "─" * 42,
        " 1   Tide Tables      48    4.56   readable",
        " 2   Brine            48    4.56   readable",
        "",
    ]


def test_columns_go_in_their_order_and_it_is_said_which() -> None:
    lines = list(map(shown, grid_of("The Cartographer of the Northern Lights").lines(40, ("pages", "seen", "thick"))))
    assert lines[2].split() == ["book", "thick"]
    assert lines[4] == " 1   The Cartographer of the No…    4.56"
    assert lines[5:] == [" no room for pages, seen: --wide shows", " all", ""]


@given(names=st.lists(NAMES, min_size=1, max_size=4), room=st.integers(36, 120))
def test_no_line_is_wider_than_the_room_and_names_keep_twenty_letters(names: list[str], room: int) -> None:
    grid = grid_of(*names)
    lines = list(map(shown, grid.lines(room, ("pages", "seen", "thick"))))
    assert max(map(width_of, lines)) <= room
    first = next(number for number, line in enumerate(lines) if "─" in line) + 1
    for number, name in enumerate(names):
        line = lines[first + number].removeprefix(f" {number + 1}   ")
        if not line.startswith(name):
            kept, *_ = line.partition("…")
            assert name.startswith(kept)
            assert width_of(kept) >= SHORTEST_NAME - 3  # the ellipsis, and a blank and a wide letter before it


@pytest.mark.parametrize(("text", "width"), [("Salt", 4), ("Το νησί", 7), ("灯台", 4), ("e\u0301", 1), ("\u200bx", 1)])
def test_widths_are_those_of_a_terminal(text: str, width: int) -> None:
    assert width_of(text) == width


def test_a_row_may_be_marked() -> None:
    grid = Grid("spaces", (("space", False), ("verdict", False)))
    grid.add_row("ledge", "over", style=BOLD)
    assert f"{BOLD} ledge   over{PLAIN}" in list(grid.lines())
