"""The chapter of the manual that lists every message is what the source says, and has a cause for each."""

from __future__ import annotations

import re

from bookmaker.writers.manual.chapters import bare
from tests.kit.message_texts import CHAPTER, chapter_text, families, messages_of, modules_that_speak

CAUSES = "tests/kit/message_causes.md"


def test_every_message_is_in_the_manual() -> None:
    """Made anew with `python -m tests.kit.message_texts`."""
    assert CHAPTER.read_text(encoding="utf-8") == chapter_text(), "run python -m tests.kit.message_texts"


def test_every_module_that_speaks_is_in_one_family() -> None:
    listed = [module for family in families() for module in family.modules]
    assert sorted(listed) == sorted(modules_that_speak()), f"mend {CAUSES}"


def test_every_message_has_a_cause() -> None:
    """Told in message_causes.md, in the words of a maker; where the message proposes nothing, with what to do."""
    rows = re.findall(r"^\| (.+?) \| (.+?) \| (.+?) \|$", chapter_text(), re.MULTILINE)
    told = [row for row in rows if row[0] != "the message says" and not row[0].startswith("---")]
    assert len(told) > 400
    assert [bare(message) for message, cause, _ in told if cause == "–"] == [], f"write its cause into {CAUSES}"


def test_no_cause_is_told_of_what_nobody_says() -> None:
    stale = [
        message
        for family in families()
        for message in family.causes
        if message not in {one.says for module in family.modules for one in messages_of(module)}
    ]
    assert stale == [], f"mend {CAUSES}"
