"""Quotations under the head of a text, a part or a chapter: blocks of ragged italic, as an epigraph is set."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from bookmaker.typesetting.galleys.mottoes import with_mottoes
from bookmaker.typesetting.lines.fount import as_read
from bookmaker.typesetting.manuscripts.markdown import passages_of
from bookmaker.typesetting.manuscripts.passage import Passage, Role
from bookmaker.typesetting.manuscripts.ranks import ranked
from tests.kit.text_pages import FRAME, PROSE, SIZE, inside, lines

QUOTED = "> Weather is only gossip\n> between hills, and *hills* are deaf.\n>\n> -- Old Pym"
BOOK = f"# Salt Verses\n\n{QUOTED}\n\n## Fog\n\n{PROSE}\n\n## Rain\n\n{PROSE}"


def mottoes(text: str) -> list[tuple[Role, str]]:
    passages, _ = ranked(passages_of(text, "log.md")[0], "log.md")
    return [(passage.role, as_read(passage.text)) for passage in with_mottoes(passages)]


def test_all_of_a_quotation_under_a_head_is_one_motto() -> None:
    assert mottoes(f"# Fog\n\n{QUOTED}\n\nIt rained.") == [
        (Role.HEADING, "Fog"),
        (Role.MOTTO, "Weather is only gossip between hills, and hills are deaf.\n-- Old Pym"),
        (Role.BODY, "It rained."),
    ]


def test_quotations_elsewhere_and_long_ones_in_a_chapter_are_none() -> None:
    long = "> " + "fog " * 61
    for text in ("> Fog.\n\n# Fog", "# Fog\n\nRain.\n\n> Fog.", f"# Fog\n\n{long}\n\nRain.", "# Fog\n\n- > Fog."):
        assert Role.MOTTO not in dict(mottoes(text)), text
    assert (Role.MOTTO, ("fog " * 61).strip()) in mottoes(f"# Salt\n\n{long}\n\n## Fog\n\nRain.")


def test_no_word_is_lost() -> None:
    passages = [Passage("Fog", Role.HEADING, 3), Passage("one two", inset=1), Passage("three", Role.VERSE, inset=1)]
    assert sum(passage.words for passage in with_mottoes(passages)) == 4


def test_under_a_title_it_is_a_block_in_the_middle_of_its_page_without_a_number(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, BOOK, numbers="yes", justified="yes").pages[0])
    title, *quoted, source = page
    area = FRAME.type_area(1)
    assert title.text == "Salt Verses"
    assert source.text.endswith(" Old Pym")
    left, right = min(line.at.x for line in quoted), max(line.end.x for line in quoted)
    assert len({round(line.at.x, 6) for line in quoted}) == 1
    assert (left + right) / 2 == pytest.approx(area.centre.x)
    assert source.end.x == pytest.approx(right)
    assert len({round(line.end.x, 3) for line in quoted}) == len(quoted)  # ragged


def test_it_is_italic_and_what_is_emphasized_in_it_roman(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, f"# Fog\n\n{QUOTED}\n\n{PROSE}").pages[0])
    faces = {run.text: run.typeface.name for line in page for _, run in line.line.runs}
    assert (faces["Weather"], faces["hills"]) == ("Noto Serif Italic", "Noto Serif")


def test_without_its_title_it_stands_under_the_first_chapter_and_takes_no_page(tmp_path: Path) -> None:
    titled = inside(tmp_path, BOOK, replace(FRAME, titled=True))
    first = [line.text for line in lines(titled.pages[0])]
    assert first[0] == "Fog"
    assert first[1].startswith("Weather")
    assert [(heading.text, heading.page) for heading in titled.headings] == [("Fog", 1), ("Rain", 2)]


def test_a_chapter_begins_after_its_motto_with_its_drop_capital(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, f"# Fog\n\n{QUOTED}\n\n{PROSE}", drop_capital="2").pages[0])
    place = next(place for place, line in enumerate(page) if line.text.endswith("Old Pym"))
    source, capital, beside = page[place : place + 3]
    assert capital.text == "T"
    assert source.at.y - beside.at.y == pytest.approx(2 * 1.25 * SIZE)
