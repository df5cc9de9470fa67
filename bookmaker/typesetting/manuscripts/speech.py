"""Speech that begins with a dash, as many languages write it, typed as "- " in Markdown, where lists begin so too."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from ..lines.fount import as_read
from .passage import Passage, Role

__all__ = ["BULLET", "DASHED", "with_speech"]

BULLET, DASHED = "\u2022", "-"
"""The mark of an item, and that of one whose author typed a hyphen."""

OPENERS = "\u00bf\u00a1\u00ab\u201e\u201c\u2018\"'([\u2026. "
"""What may stand before the first letter of a sentence."""

CLOSERS = "\u00bb\u201d\u2019\u201c\"')]"
SENTENCE_ENDS = tuple(".!?\u2026:,")
"""What a sentence ends with, or what somebody says before the sentence goes on."""


def with_speech(passages: Sequence[Passage], *, spoken: bool) -> Iterator[Passage]:
    """Passages, with items after typed hyphens as paragraphs of speech, if the language has it and they read so.

    A list is speech if each of its items is one paragraph that begins with a capital and ends as a sentence does. In
    all others the items have bullets.
    """
    for listed, found in groupby(passages, key=lambda passage: passage.role is Role.ITEM or passage.mark == DASHED):
        run = list(found)
        if not (listed and any(passage.mark == DASHED for passage in run)):
            yield from run
        elif spoken and all(map(_is_said, run)):
            yield from (
                item._replace(text=f"- {item.text}", role=Role.BODY, mark="", inset=item.inset - 1) for item in run
            )
        else:
            yield from (item._replace(mark=BULLET) if item.mark == DASHED else item for item in run)


def _is_said(item: Passage) -> bool:
    text = as_read(item.text)
    first = text.lstrip(OPENERS)[:1]
    listed = item.role is Role.ITEM and item.mark == DASHED and item.inset == 1
    return listed and first.isupper() and text.rstrip(CLOSERS).endswith(SENTENCE_ENDS)
