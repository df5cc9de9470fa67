"""What many books share is told once: no step is lost by it, none with numbers of its own is shared."""

from __future__ import annotations

from bookmaker.guide.items import Caution, Tick
from bookmaker.guide.shared import own_making, shared_items, shared_makings, step_item
from bookmaker.things.making import Chapter, Making, caution

FOLD, PRESS = "Fold both folds, away from you.", "Press it overnight."
TRY = "Try it dry, front to front: it fits."


def chapter(title: str, *steps: str) -> Chapter:
    return Chapter(title, "", (Making("The cover", steps),))


def told(made: Chapter, *others: Chapter) -> list[str]:
    """The steps that are left to a book."""
    return own_making(made.makings[0], shared_makings((made, *others)))[1]


BOOKS = [chapter(name, TRY, f"Cut it out, {size} mm wide.", FOLD, PRESS) for name, size in
         (("One", "3.1"), ("Two", "3.2"), ("Three", "3.3"))]  # fmt: skip


def test_each_names_what_is_told_before_and_keeps_what_is_its_own() -> None:
    assert told(*BOOKS) == [
        "A1 try it dry",
        "Cut it out, 3.1 mm wide.",
        "A2 fold both folds; A3 press it overnight",
    ]


def test_it_is_told_once_in_the_order_of_the_work() -> None:
    paragraphs = [item.text for item in shared_items(shared_makings(BOOKS)) if hasattr(item, "text")]
    assert paragraphs[-3:] == [f"A1  {TRY}", f"A2  {FOLD}", f"A3  {PRESS}"]


def test_few_books_share_nothing() -> None:
    assert shared_makings(BOOKS[:2]) == {}
    assert list(shared_items({})) == []
    assert own_making(BOOKS[0].makings[0], {})[1] == list(BOOKS[0].makings[0].steps)


def test_a_step_with_numbers_of_its_own_is_not_shared_even_if_many_have_it() -> None:
    alike = [chapter(name, "Cut it out, 3.1 mm wide.", FOLD) for name in ("One", "Two", "Three")]
    assert shared_makings(alike)["The cover"].steps == (FOLD,)
    assert told(*alike) == ["Cut it out, 3.1 mm wide.", "A1 fold both folds"]


def test_a_caution_stays_before_its_step_in_every_book_and_is_not_ticked() -> None:
    sharp = caution("it is sharp.")
    alike = [chapter(name, TRY, sharp, FOLD) for name in ("One", "Two", "Three")]
    assert sharp not in shared_makings(alike)["The cover"].steps
    assert told(*alike) == ["A1 try it dry", sharp, "A2 fold both folds"]
    assert (step_item(sharp), step_item(FOLD)) == (Caution(sharp), Tick(FOLD))
    assert Caution(sharp).leads


def test_what_some_do_instead_stands_together() -> None:
    """Two ways of gluing between one beginning and one end are told one after the other, not mixed."""
    paste = [chapter(str(number), TRY, "Paste it.", "Rub it.", PRESS) for number in range(3)]
    tape = [chapter(str(number), TRY, "Tape it.", "Peel it.", PRESS) for number in range(3)]
    steps = shared_makings([*paste, *tape])["The cover"].steps
    assert (steps[0], steps[-1]) == (TRY, PRESS)
    assert steps[1:-1] in (
        ("Paste it.", "Rub it.", "Tape it.", "Peel it."),
        ("Tape it.", "Peel it.", "Paste it.", "Rub it."),
    )
