"""The evenings keep to the order of work: blocks, those that fill their space, covers, and what holds other things."""

from __future__ import annotations

import re
from pathlib import Path
from random import Random

import pytest

from bookmaker import check
from bookmaker.guide.evenings import evening_items
from bookmaker.guide.items import Tick
from bookmaker.guide.member import Member
from bookmaker.shelf.plan import ShelfPlan
from bookmaker.shelf_file.whereabouts import whereabouts
from bookmaker.things.making import Bench
from bookmaker.things.prints import Prints
from bookmaker.workshop import Checked
from tests.kit.every_making import BLOCKS, COVERS, HEAD, THINGS
from tests.kit.guide_shelves import spelled, words_of
from tests.kit.shelves import made, written

FILL = "kind: dummy, thickness: fill, at_most: 12 mm"


def shelf(chance: Random) -> str:
    ways = [(chance.choice([*BLOCKS.values(), FILL, FILL]), chance.choice([*COVERS.values()]))
            for _ in range(chance.randint(9, 26))]  # fmt: skip
    return HEAD + "books:\n" + "".join(book(number, *way) for number, way in enumerate(ways, start=1)) + THINGS


def book(number: int, block: str, cover: str) -> str:
    """One that is boxed fills nothing."""
    block = "kind: dummy, thickness: 5 mm" if block == FILL and number < 3 else block
    size = "size: {height: 21 mm, width: 15 mm}, space: hall"
    return f"  - {{title: Volume {number}, {size}, block: {{{block}}}, cover: {{{cover}}}}}\n"


def evenings(checked: Checked) -> list[str]:
    """What each evening says; nothing of it is printed."""
    plan = checked.plan
    members = []
    for id, one in plan.plans.items():
        where = whereabouts(checked.shelf, plan.register.fields[id])
        chapter = one.family.chapter(one, Bench(plan.stocks, Prints(()), 89.0, where), plan)
        members.append(Member(id, one, chapter, Prints(())))
    return [item.text for item in evening_items(members, plan) if isinstance(item, Tick)]


def done(told: list[str], words: str) -> dict[int, int]:
    """The evening on which something is done to each book, once."""
    found: dict[int, int] = {}
    for evening, text in enumerate(told):
        for numbers in re.findall(words, text):
            for number in spelled(numbers):
                assert number not in found, (number, words)
                found[number] = evening
    return found


@pytest.mark.parametrize("seed", range(6))
def test_nothing_is_done_before_its_turn(seed: int, tmp_path: Path) -> None:
    checked = check(written(shelf(Random(seed)), tmp_path))
    plan = checked.plan
    told = evenings(checked)
    assert [text.split(".")[0] for text in told] == [f"Evening {number}" for number in range(1, len(told) + 1)]
    books = {number: plan.plans[id] for id in plan.plans if (number := plan.number_of(id))}
    filling = {number for number, one in books.items() if one.stretch}
    glued = done(told, r"glue the blocks of ([\d, andto]+)\.")
    filled = done(told, r"Make the blocks of ([\d, andto]+): they fill")
    measured = done(told, r"Measure the blocks of ([\d, andto]+), which")
    covered = done(told, r"Make the covers of ([\d, andto]+),")
    assert (set(glued), set(filled)) == (set(books) - filling, filling)
    assert set(measured) == set(covered) == set(books)
    assert min(filled.values(), default=99) >= max(measured[number] for number in glued)
    worked_out = [evening for evening, text in enumerate(told) if "run make --changed" in text]
    for number in books:
        made_on = (glued | filled)[number]
        assert made_on < measured[number] <= covered[number], number
        assert any(measured[number] <= evening <= covered[number] for evening in worked_out), number
    assert min(covered.values()) > max(glued.values())
    assert_holders_come_last(told, plan, max(covered.values()))


def assert_holders_come_last(told: list[str], plan: ShelfPlan, covered: int) -> None:
    """Every other thing is made once, after all books and after what goes into it."""
    others = [id for id in plan.plans if not plan.number_of(id)]
    text = " ".join(told[covered + 1 :])
    at = {id: text.index(plan.printed(id)) for id in others}
    for id in others:
        assert all(at[held] < at[id] for held in plan.plans[id].held if held in at), id
    assert [id for id in others if plan.plans[id].held]


def test_a_box_is_no_book(tmp_path: Path) -> None:
    """It has two parts, as a book has, and neither block nor cover."""
    books = "".join(book(number, BLOCKS["one strip"], COVERS["flush"]) for number in range(1, 9))
    assert evenings(check(written(f"{HEAD}books:\n{books}{THINGS}", tmp_path))) == []


def test_what_was_printed_with_the_blocks_may_have_changed_since(tmp_path: Path) -> None:
    """On one paper for all the covers lie on the sheets of the blocks, which are printed before these are measured."""
    cover = COVERS["flush"].replace("card", "bond")
    books = "".join(book(number, BLOCKS["one strip"], cover) for number in range(1, 11))
    plan, out = made(f"{HEAD}books:\n{books}", tmp_path)
    assert {sheet["file"] for sheet in plan["sheets"]} == {"bond.pdf"}
    words = words_of(out / "guide.pdf")
    assert "The parts were printed before: what has changed since, make --changed prints anew. Make the covers" in words
