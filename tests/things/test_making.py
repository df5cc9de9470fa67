"""How things are made: one action a step, cautions before what they concern, drawings where words do not do."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bookmaker.things.making import CAUTION, Chapter, Making
from tests.kit.every_making import drawn_outside, every_chapter, figures_of

ACTIONS = (
    *("bend", "brush", "clamp", "clip", "close", "cut", "draw", "dry", "finish", "fold", "gather", "glue", "join"),
    *("knock", "lay", "leave", "measure", "nip", "pin", "press", "prick", "push", "put", "rub", "run", "sand", "saw"),
    *("score", "sew", "sharpen", "slide", "spread", "tape", "tie", "tip", "tone", "trim", "turn", "wrap", "write"),
)
"""What a hand does in a step."""

BEGINS = re.compile(rf"(?:^|[.;:] |, and |, then | then | and )({'|'.join(ACTIONS)})\b(?! thinly)", re.IGNORECASE)

DRAWN = re.compile(r"\[([^\[\]:]+)(?:: [^\[\]]+)?\]")


@pytest.fixture(scope="module")
def chapters(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Chapter]:
    return every_chapter(tmp_path_factory.mktemp("every"))


def makings(chapters: dict[str, Chapter]) -> list[tuple[str, Making]]:
    return [(id, making) for id, chapter in chapters.items() for making in chapter.makings]


def test_a_step_is_one_action(chapters: dict[str, Chapter]) -> None:
    for id, making in makings(chapters):
        for step in making.steps:
            if not step.startswith(CAUTION):
                found = BEGINS.findall(step)
                assert len(found) <= 1, (id, step, found)


def test_a_step_says_what_to_do_in_few_sentences(chapters: dict[str, Chapter]) -> None:
    for id, making in makings(chapters):
        for step in making.steps:
            assert len(re.findall(r"[.!?](?: |$)", step)) <= 3, (id, step)
            assert step.endswith("."), (id, step)
            assert step[0].isupper(), (id, step)


def test_a_caution_stands_before_a_step(chapters: dict[str, Chapter]) -> None:
    """Spray before the first use of it in a part of the work, the saw and the dust before what they concern."""
    for id, making in makings(chapters):
        steps = making.steps
        assert not steps[-1].startswith(CAUTION), id
        for word, warned in (
            ("spray adhesive", "spray"),
            ("Sand ", "dust"),
            ("Saw ", "saw"),
            ("with the needle", "needle"),
        ):
            at = next(
                (number for number, step in enumerate(steps) if word in step and not step.startswith(CAUTION)), None
            )
            if at is not None:
                before = " ".join(step for step in steps[:at] if step.startswith(CAUTION))
                assert warned in before, (id, steps[at])


def test_no_step_prints_or_films(chapters: dict[str, Chapter]) -> None:
    """A sheet is printed and filmed once for all that is on it, so no step of a thing may ask for it."""
    for id, making in makings(chapters):
        assert not [step for step in making.steps if re.search(r"\b([Pp]rint \S+\.pdf|lay the clear film)", step)], id


def test_steps_name_the_drawings_that_come_with_them(chapters: dict[str, Chapter]) -> None:
    for id, making in makings(chapters):
        named = {name for step in making.steps for name in DRAWN.findall(step)}
        assert named == {manner.name for manner in making.manners}, id


NEEDED = {
    "strips joined at tabs": ("an accordion strip",),
    "one strip": ("an accordion strip",),
    "folio in": ("a folio sheet folded", "sewing all along through 3 holes", "the kettle stitch"),
    "octavo": ("an octavo sheet folded", "sewing all along through 4 holes", "the kettle stitch"),
    "quarto, two on": ("a quarto sheet folded", "sewing two on through 3 holes", "the kettle stitch"),
    "one section": ("one section sewn through 3 holes",),
    "two holes": ("one section sewn through 2 holes",),
    "many holes": ("one section sewn through 9 holes",),
    "stapled": ("a staple",),
    "flush": ("marks pricked through",),
    "in turned in": ("marks pricked through", "a corner turned in"),
    "in full": ("marks pricked through", "a corner turned in over a board", "a block hung in its case"),
    "in quarter": ("marks pricked through", "a corner turned in over a board"),
    "in half": ("marks pricked through", "a corner turned in over a board"),
    "wrapped": ("rails sawn to mitres", "paper round a rail"),
    "mitred": ("rails sawn to mitres", "a frame held square"),
    "butt": ("a frame held square",),
}
"""What a part of a title of a thing asks for in drawings."""


@pytest.mark.parametrize("kind", NEEDED)
def test_each_binding_has_the_drawings_that_its_steps_need(chapters: dict[str, Chapter], kind: str) -> None:
    found = [chapter for id, chapter in chapters.items() if kind in chapter.title or kind == id]
    assert found
    for chapter in found:
        drawn = {
            manner.name.removesuffix(", from the right") for making in chapter.makings for manner in making.manners
        }
        assert drawn >= set(NEEDED[kind]), chapter.title


FOLDED = ("slipcase-pair", "tuck", "lidded", "cigars", "matches", "tray", "letter", "post", "map")


@pytest.mark.parametrize("id", FOLDED)
def test_what_is_folded_is_drawn_in_its_order(chapters: dict[str, Chapter], id: str) -> None:
    captions = [figure.caption for figure in figures_of(chapters[id])]
    assert any("step by step" in caption for caption in captions)


@pytest.mark.parametrize("room", [72.0, 89.0, 135.0])
def test_drawings_stay_in_their_frames(tmp_path: Path, room: float) -> None:
    """In the narrowest column of a guide, in that of A4, on a page with one column; lines may be half a pen outside."""
    for id, chapter in every_chapter(tmp_path, room).items():
        for figure in figures_of(chapter):
            assert figure.size.width <= room + 1e-6, (id, figure.caption)
            assert drawn_outside(figure, 0.3) == [], (id, figure.caption)
