"""The chapter of the manual that lists every message is what the source says."""

from __future__ import annotations

from tests.kit.message_texts import CHAPTER, chapter_text


def test_every_message_is_in_the_manual() -> None:
    """Made anew with `python -m tests.kit.message_texts`."""
    assert CHAPTER.read_text(encoding="utf-8") == chapter_text(), "run python -m tests.kit.message_texts"
