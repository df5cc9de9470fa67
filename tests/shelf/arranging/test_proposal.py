"""Proposals of where books stand: the best there is of few, never worse, all housed that can be, and written back."""

from __future__ import annotations

import json
from itertools import permutations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.drawing import Colour
from bookmaker.shelf.arranging.costs import cost_of
from bookmaker.shelf.arranging.keys import ArrangeEntry, Rule
from bookmaker.shelf.arranging.order import best_order
from bookmaker.shelf.arranging.pleasing import Worn, costs_of
from tests.kit.arranged_rows import HEAD, ROW, book, proposal_of, write
from tests.kit.command_line import bookmaker
from tests.kit.shelves import written

WORN = st.builds(
    Worn,
    st.floats(10, 30),
    st.floats(1, 9),
    st.sampled_from(["cloth", "leather", "paper boards"]),
    st.builds(Colour, st.floats(0, 1), st.floats(0, 1), st.floats(0, 1)),
)


@given(st.lists(WORN, min_size=1, max_size=6))
def test_few_stand_in_the_best_order_there_is(row: list[Worn]) -> None:
    costs = costs_of(row, row, ArrangeEntry())
    found = best_order(costs, range(len(row)))
    assert cost_of(costs, found) == pytest.approx(min(cost_of(costs, one) for one in permutations(range(len(row)))))


@given(st.lists(WORN, min_size=10, max_size=25))
@settings(max_examples=5, suppress_health_check=[HealthCheck.too_slow], deadline=None)
def test_an_order_is_never_worse_and_the_same_every_time(row: list[Worn]) -> None:
    costs = costs_of(row, row, ArrangeEntry())
    found = best_order(costs, range(len(row)))
    assert cost_of(costs, found) <= cost_of(costs, range(len(row)))
    assert found == best_order(costs, range(len(row)))


def test_what_is_written_is_what_was_proposed_and_notes_stay_beside_their_books(tmp_path: Path) -> None:
    path = written(ROW, tmp_path)
    proposal = proposal_of(path)
    (low, _) = proposal.spaces
    assert low.before is not None and low.after < low.before
    write(path, proposal)
    text = path.read_text(encoding="utf-8")
    fit = next(fit for fit in check(path).plan.spaces if fit.name == "low")
    assert fit.things == low.things
    lines = text.splitlines()
    assert sorted(lines) == sorted(ROW.splitlines())
    for number, line in enumerate(lines):
        if line.startswith("  # about "):
            assert f"title: {line.removeprefix('  # about ')}," in lines[number + 1]
    assert not proposal_of(path).changes


def test_a_table_is_put_in_order_line_by_line(tmp_path: Path) -> None:
    rows = [f"Book {number};{18 + number * 7 % 9} mm;14 mm;{2 + number % 3} mm;low" for number in range(7)]
    (tmp_path / "list.csv").write_text(
        "\n".join(["title;height;width;thickness;space", *rows]) + "\n", encoding="utf-8"
    )
    path = written(HEAD.replace("books:\n", "books: from list.csv\n"), tmp_path)
    proposal = proposal_of(path, rule="thickness")
    write(path, proposal)
    lines = (tmp_path / "list.csv").read_text(encoding="utf-8").splitlines()
    assert sorted(lines[1:]) == sorted(rows)
    thick = [float(line.split(";")[3].split()[0]) for line in lines[1:]]
    assert thick == sorted(thick, reverse=True)


def test_what_does_not_fit_goes_where_it_does_and_what_fits_nowhere_is_told(tmp_path: Path) -> None:
    books = (
        book("Tall", 26, 4, space="high")
        + book("Short", 16, 4, space="high")
        + book("Lost", 18, 3, space=None)
        + book("Giant", 34, 5, space=None)
    )
    path = written(HEAD + books, tmp_path)
    proposal = proposal_of(path)
    assert proposal.moved == {"tall": "low", "lost": "high"}
    assert proposal.left_over == ("giant",)
    write(path, proposal)
    fits = {fit.name: fit for fit in check(path).plan.spaces}
    assert set(fits["high"].things) == {"short", "lost"}
    assert set(fits["low"].things) == {"tall"}
    assert not any(fit.stands_out for fit in fits.values())


def test_a_space_that_is_too_full_gives_the_least_it_must(tmp_path: Path) -> None:
    books = "".join(book(f"Wide {number}", 18, thickness) for number, thickness in enumerate((20, 19, 12, 16)))
    proposal = proposal_of(written(HEAD + books, tmp_path))
    assert proposal.moved == {"wide-2": "high"}


@pytest.mark.parametrize("rule", ["height", "thickness", "title"])
def test_plain_orders(tmp_path: Path, rule: Rule) -> None:
    path = written(ROW, tmp_path)
    checked = check(path)
    low, _ = proposal_of(path, rule=rule).spaces
    seen = [checked.plan.plans[id] for id in low.things]
    keys = {
        "height": [-round(one.standing.height, 6) for one in seen if one.standing],
        "thickness": [-round(one.standing.thickness, 6) for one in seen if one.standing],
        "title": [one.name for one in seen],
    }
    assert keys[rule] == sorted(keys[rule])  # type: ignore[type-var]


def test_a_book_at_an_end_stays_there_if_asked(tmp_path: Path) -> None:
    path = written(ROW, tmp_path)
    low, _ = proposal_of(path, keep=frozenset({"book-0", "book-7"})).spaces
    assert (low.things[0], low.things[-1]) == ("book-0", "book-7")


def test_rows_of_one_entry_stay_together(tmp_path: Path) -> None:
    row = "  - {size: {height: 20 mm, width: 14 mm}, block: {thickness: 3 mm}, space: low, row: [Alpha, Beta, Gamma]}\n"
    path = written(HEAD + book("One", 18, 3) + row + book("Two", 24, 5), tmp_path)
    proposal = proposal_of(path, rule="height")
    low, _ = proposal.spaces
    assert low.things == ("two", "alpha", "beta", "gamma", "one")
    write(path, proposal)
    assert next(fit for fit in check(path).plan.spaces if fit.name == "low").things == low.things


def test_the_command_changes_nothing_until_it_is_told_to(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    path = written(ROW, tmp_path)
    said = bookmaker("arrange", "--into", "order.html")
    assert (said.code, path.read_text(encoding="utf-8")) == (0, ROW)
    assert "low: order costs" in said.out
    assert "--write puts this order into the file" in said.out
    page = (tmp_path / "order.html").read_text(encoding="utf-8")
    assert page.count("<svg") == 2
    assert bookmaker("arrange", "--write").code == 0
    assert path.read_text(encoding="utf-8") != ROW
    assert "nothing to change" in bookmaker("arrange").out
    assert json.loads(bookmaker("check", "--json").out)["spaces"]


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (("--by", "hight"), "--by: there is no order 'hight'; write one of height, thickness, colour, title, author"),
        (("--colour", "-1"), "--colour: -1 is not a weight; write a number from 0 to 100"),
        (("--keep", "Book 9"), "--keep: "),
    ],
)
def test_what_cannot_be_asked_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, arguments: tuple[str, ...], told: str
) -> None:
    monkeypatch.chdir(tmp_path)
    written(ROW, tmp_path)
    said = bookmaker("arrange", *arguments)
    assert said.code == 2
    assert told in said.err
