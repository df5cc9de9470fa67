"""Contents with words that are wider than their lines: parted after dashes, hyphenated, and hardly ever smaller."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.units import from_pt
from bookmaker.typesetting.page import PageFrame
from tests.kit.front_matter import inside
from tests.kit.recording import record


def table(name: str, size: str = "3 pt") -> list[tuple[str, float]]:
    """The lines of a table of contents of one entry on a page 12 mm wide, each with its size."""
    parts = [{"kind": "contents", "size": size, "numbers": "no", "title": "C"},
             {"kind": "blank", "pages": "2", "listed_as": name}]  # fmt: skip
    page = inside(parts, 4, Path(), PageFrame(12, 21, 0)).pages[0]
    return [(text.text, text.line.size) for text in record(page).texts[1:]]


@pytest.mark.parametrize(
    ("name", "lines"),
    [
        ("Lighthouse–Breakwater", ["Lighthouse–", "Breakwater"]),
        ("Counterrevolutionaries", ["Counterrev-", "olutionaries"]),
        ("A Counterrevolutionary Lamp", ["A", "Counterrev-", "olutionary", "Lamp"]),
    ],
)
def test_a_word_too_wide_is_parted_at_the_size_that_was_asked_for(name: str, lines: list[str]) -> None:
    found = table(name, "2.4 pt")
    assert " ".join(text for text, _ in found[:-1]).split() == lines
    assert [size for _, size in found] == pytest.approx([from_pt(2.4)] * len(found))


@pytest.mark.parametrize("name", ["M" * 20, "Nord-Süd-Verbindungswege", "Xqz" * 30])
@pytest.mark.parametrize("size", [1.5, 2.0, 2.4, 3.0])
def test_no_word_makes_the_table_smaller_than_four_fifths(name: str, size: float) -> None:
    found = table(name, f"{size} pt")
    assert min(size for _, size in found) >= from_pt(size) * 0.8 - 1e-9
    assert "".join(text.removesuffix("-") for text, _ in found[:-1]) == name.replace("-", "") or "-" in name
