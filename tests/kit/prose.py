"""Paragraphs of any number of words, for benchmarks."""

from __future__ import annotations

import random
import re
from pathlib import Path

__all__ = ["SYLLABLES", "paragraphs"]

TEXTS = Path(__file__).parents[2] / "demo" / "texts"
VOCABULARY = 6000
SYLLABLES = ("ba", "den", "for", "gal", "hin", "kel", "lum", "mar", "nos", "per", "quin", "tion", "ment", "ing", "er")


def paragraphs(count: int) -> list[str]:
    """Paragraphs of so many words: the demo's sentences in random order, every 12th word made up."""
    chance = random.Random(7)
    prose = " ".join(file.read_text(encoding="utf-8") for file in sorted(TEXTS.glob("*.txt")) if file.stem != "kettle")
    sentences = re.findall(r"[A-Z“][^.!?]*[a-z][.!?]”?", " ".join(prose.split()))
    sentences = [sentence for sentence in sentences if sentence.translate({0x201C: None}).isascii() or "’" in sentence]
    invented = ["".join(chance.choices(SYLLABLES, k=chance.randint(1, 4))) for _ in range(VOCABULARY)]
    found: list[str] = []
    total = 0
    while total < count:
        words = " ".join(chance.choices(sentences, k=chance.randint(1, 7))).split()
        words = [chance.choice(invented) if number % 12 == 11 else word for number, word in enumerate(words)]
        found.append(" ".join(words))
        total += len(words)
    return found
