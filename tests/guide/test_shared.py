"""What many books share is told once: no step is lost by it, none with numbers of its own is shared."""

from __future__ import annotations

from bookmaker.guide.items import Tick
from bookmaker.guide.shared import own_making, shared_items, shared_makings
from bookmaker.things.making import Chapter, Making

FOLD, PRESS = "Fold both folds, away from you.", "Press it overnight."
PRINT = "Print card.pdf, sheet 1, at 100 %. Measure the test line at the foot: more than 0.5 mm off, do not cut."


def chapter(title: str, *steps: str) -> Chapter:
    return Chapter(title, "", (Making("The cover", steps),))


def told(made: Chapter, *others: Chapter) -> list[str]:
    """The steps that are left to a book."""
    ticks = own_making(made.makings[0], shared_makings((made, *others)))[1]
    return [tick.text for tick in ticks]


BOOKS = [chapter(name, PRINT, f"Cut it out, {size} mm wide.", FOLD, PRESS) for name, size in
         (("One", "3.1"), ("Two", "3.2"), ("Three", "3.3"))]  # fmt: skip


def test_each_names_what_is_told_before_and_keeps_what_is_its_own() -> None:
    assert told(*BOOKS) == [
        "A1 take card.pdf, sheet 1, as printed",
        "Cut it out, 3.1 mm wide.",
        "A2 fold both folds; A3 press it overnight",
    ]


def test_it_is_told_once_in_the_order_of_the_work() -> None:
    paragraphs = [item.text for item in shared_items(shared_makings(BOOKS)) if hasattr(item, "text")]
    assert paragraphs[-3:] == [f"A1  {PRINT}", f"A2  {FOLD}", f"A3  {PRESS}"]


def test_few_books_share_nothing() -> None:
    assert shared_makings(BOOKS[:2]) == {}
    assert list(shared_items({})) == []
    assert own_making(BOOKS[0].makings[0], {})[1] == [Tick(step) for step in BOOKS[0].makings[0].steps]


def test_a_step_with_numbers_of_its_own_is_not_shared_even_if_many_have_it() -> None:
    alike = [chapter(name, "Cut it out, 3.1 mm wide.", FOLD) for name in ("One", "Two", "Three")]
    assert shared_makings(alike)["The cover"].steps == (FOLD,)
    assert told(*alike) == ["Cut it out, 3.1 mm wide.", "A1 fold both folds"]
