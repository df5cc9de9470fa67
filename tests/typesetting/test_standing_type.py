"""Standing type: what is found standing is what would be set, and only what differs is set."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker.ground.problems import Problem
from bookmaker.things.book.pages.prose.copyfit import Copy, Proof
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.galleys.setting import Manner
from bookmaker.typesetting.page import PageFrame
from bookmaker.typesetting.standing_type import StandingType, standing_type

SENTENCE = (
    "the keeper trims lamp at dusk, writes down Mrs Quill “wind” and 20 kg of extraordinarily straightforward fog."
)
WORDS = SENTENCE.split()

BLOCKS = st.builds(
    lambda kind, words: {
        "body": " ".join(words),
        "head": f"# {' '.join(words[:4])}",
        "quoted": f"> {' '.join(words)}",
        "verse": "\\\n".join(" ".join(words[at : at + 5]) for at in range(0, len(words), 5)),
        "item": f"- {' '.join(words)}",
        "table": f"| {words[0]} | {words[-1]} |\n|---|---|\n| {' '.join(words)} | fog |",
        "styled": f"*{' '.join(words)}* **fog**",
    }[kind],
    st.sampled_from(("body", "body", "body", "head", "quoted", "verse", "item", "table", "styled")),
    st.lists(st.sampled_from(WORDS), min_size=2, max_size=40),
)

MANNERS = st.builds(
    Manner,
    justified=st.sampled_from((None, True, False)),
    hanging=st.booleans(),
    drop_capital=st.sampled_from((0, 2)),
    new_pages=st.booleans(),
)

EDITS = st.lists(st.tuples(st.sampled_from(("put", "take", "change", "move")), st.integers(0, 99), BLOCKS), max_size=4)


def edited(blocks: list[str], edit: tuple[str, int, str]) -> list[str]:
    """The blocks of a text after an edit."""
    what, place, block = edit
    at = place % len(blocks)
    match what:
        case "put":
            return [*blocks[:at], block, *blocks[at:]]
        case "take" if len(blocks) > 1:
            return [*blocks[:at], *blocks[at + 1 :]]
        case "move":
            return [*blocks[at:], *blocks[:at]]
        case _:
            return [*blocks[:at], block, *blocks[at + 1 :]]


def composed(folder: Path, blocks: list[str], manner: Manner, size: float) -> tuple[Proof, tuple[Problem, ...], float]:
    """A text made up, what there is to say of it on 8 pages, and the size at which it fits into these."""
    (folder / "log.md").write_text("\n\n".join(blocks), encoding="utf-8")
    loaded = TextInside(file="log.md", size=size).load(folder)
    copy = Copy(loaded.source.manuscript, loaded.source.fount, 1.25, PageFrame(15, 21, 8), manner)
    told = loaded.compose(copy.frame).problems
    return copy.proof(copy.setting(size), 1000), told, copy.size_for(8, 1.5, 0.3)


@given(
    blocks=st.lists(BLOCKS, min_size=1, max_size=12), edits=EDITS, manner=MANNERS, size=st.sampled_from((0.5, 0.8, 1.4))
)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_what_is_kept_through_edits_is_what_is_set_afresh(
    tmp_path: Path, blocks: list[str], edits: list[tuple[str, int, str]], manner: Manner, size: float
) -> None:
    kept = StandingType()
    for edit in [None, *edits]:
        blocks = edited(blocks, edit) if edit else blocks
        with kept.used():
            standing = composed(tmp_path, blocks, manner, size)
        with StandingType().used():
            fresh = composed(tmp_path, blocks, manner, size)
        assert standing == fresh


def test_only_the_paragraph_that_changed_is_set_again(tmp_path: Path) -> None:
    chance, kept = random.Random(3), StandingType()
    blocks = [" ".join(chance.choices(WORDS, k=30)) for _ in range(50)]
    with kept.used():
        composed(tmp_path, blocks, Manner(), 0.8)
        before = len(kept.paragraphs)
        changed = [*blocks[:20], blocks[20] + " Rain.", *blocks[21:]]
        (tmp_path / "log.md").write_text("\n\n".join(changed), encoding="utf-8")
        TextInside(file="log.md", size=0.8).load(tmp_path).compose(PageFrame(15, 21, 400))
    assert len(kept.paragraphs) == before + 1


def test_another_measure_or_manner_is_set_for_itself(tmp_path: Path) -> None:
    """The same words in other circumstances: nothing is found, and both are right."""
    text, kept = " ".join(WORDS * 6), StandingType()
    with kept.used():
        for frame in (PageFrame(15, 21, 8), PageFrame(16, 21, 8)):
            for manner in (Manner(justified=True), Manner(justified=False), Manner(justified=True, hanging=False)):
                before = len(kept.paragraphs)
                (tmp_path / "log.txt").write_text(text)
                source = TextInside(file="log.txt").load(tmp_path).source
                copy = Copy(source.manuscript, source.fount, 1.25, frame, manner)
                copy.proof(copy.setting(0.8), 99)
                assert len(kept.paragraphs) == before + 1


def test_it_is_used_within_its_block_only() -> None:
    usual, own = standing_type(), StandingType()
    with pytest.raises(ValueError, match="fog"), own.used():
        assert standing_type() is own
        raise ValueError("fog")
    assert standing_type() is usual
