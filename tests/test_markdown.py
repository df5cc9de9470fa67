"""Markdown as passages, and what is left out of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.errors import Severity
from bookmaker.pages.fount import Style, as_read
from bookmaker.pages.manuscript import read_manuscript
from bookmaker.pages.markdown import passages_of
from bookmaker.pages.passage import Passage, Role
from bookmaker.typefaces import bundled


def passages(text: str) -> list[Passage]:
    found, problems = passages_of(text, "log.md")
    assert problems == []
    return found


def test_headings_and_paragraphs() -> None:
    assert passages("# The *Log*\n\nFog,\nagain.\n\nRain.\n\n## Noon") == [
        Passage(f"The {Style.ITALIC}Log", Role.HEADING, 1),
        Passage("Fog, again."),
        Passage("Rain."),
        Passage("Noon", Role.HEADING, 2),
    ]


def test_hard_line_breaks_make_verse() -> None:
    assert passages("Nothing to the north.\\\nNothing to the west.\n\nOne  \ntwo") == [
        Passage("Nothing to the north.\nNothing to the west.", Role.VERSE),
        Passage("One\ntwo", Role.VERSE),
    ]


def test_lists_quotations_and_breaks() -> None:
    text = "- oil\n- wick\n\n3. trim\n4. light\n   - slowly\n\n> Keep it burning.\n\n---\n\nEnd."
    assert [(p.role, p.mark, p.inset, p.text) for p in passages(text)] == [
        (Role.ITEM, "•", 1, "oil"),
        (Role.ITEM, "•", 1, "wick"),
        (Role.ITEM, "3.", 1, "trim"),
        (Role.ITEM, "4.", 1, "light"),
        (Role.ITEM, "•", 2, "slowly"),
        (Role.BODY, "", 1, "Keep it burning."),
        (Role.BREAK, "", 0, ""),
        (Role.BODY, "", 0, "End."),
    ]


def test_only_the_first_paragraph_of_an_item_bears_its_mark() -> None:
    assert [(p.role, p.mark) for p in passages("- one\n\n  more\n- two")] == [
        (Role.ITEM, "•"),
        (Role.BODY, ""),
        (Role.ITEM, "•"),
    ]


def test_verses_and_headings_in_lists_stay_what_they_are() -> None:
    assert [(p.role, p.mark) for p in passages("- one\\\n  two\n- # Fog")] == [(Role.VERSE, "•"), (Role.HEADING, "•")]


def test_emphasis_is_told_word_by_word() -> None:
    [passage] = passages("the *old lamp*, **not** the ***new** one* `x y`")
    words = passage.text.split(" ")
    assert words[1] == f"{Style.ITALIC}old"
    assert words[2] == f"{Style.ITALIC}lamp{Style.ROMAN},"
    assert words[3] == f"{Style.BOLD}not"
    assert words[5] == f"{Style.BOLD_ITALIC}new"
    assert words[6] == f"{Style.ITALIC}one"
    assert words[7:] == [f"{Style.TYPEWRITER}x", f"{Style.TYPEWRITER}y"]
    assert as_read(passage.text) == "the old lamp, not the new one x y"


def test_no_break_spaces_stay() -> None:
    assert passages("10\u00a0km *of\u202ffog*")[0].text == f"10\u00a0km {Style.ITALIC}of\u202ffog"


def test_code_keeps_its_lines() -> None:
    [passage] = passages("```\nlit  05.10\n\nout 19.00\n```")
    assert (passage.role, as_read(passage.text)) == (Role.VERSE, "lit 05.10\nout 19.00")


def test_pictures_are_plates_with_their_titles() -> None:
    assert passages('Look: ![a wreck](wreck.png "The *Annie*, lost") there') == [
        Passage("Look: there"),
        Passage("The *Annie*, lost", Role.PLATE, mark="wreck.png", line=1),
    ]


def test_pictures_are_found_whatever_letters_their_names_have() -> None:
    plates = passages("![](<the wreck.png>) ![](fähre.png) ![](a%20b.png)")
    assert [plate.mark for plate in plates] == ["the wreck.png", "fähre.png", "a b.png"]


def test_plates_know_the_line_that_names_them() -> None:
    plates = passages("![](a.png)\n\nmore\n![](b.png) and\\\n![](c.png)")
    assert [(plate.mark, plate.line) for plate in plates if plate.role is Role.PLATE] == [
        ("a.png", 1),
        ("b.png", 4),
        ("c.png", 5),
    ]


def test_a_picture_without_a_name_is_left_out_and_said() -> None:
    found, [problem] = passages_of("Look\n![here]() and ![]()", "log.md")
    assert [passage.text for passage in found] == ["Look and"]
    assert str(problem) == (
        "log.md names no file for the picture in line 2, left out; "
        "write ![](wreck.png), with the name of a file beside the text"
    )


@pytest.mark.parametrize("address", ["https://e.invalid/a.png", "//e.invalid/a.png", "FTP://e.invalid/a.png"])
def test_remote_pictures_are_left_out_and_said(address: str) -> None:
    found, [problem] = passages_of(f"Look ![]({address}) here", "log.md")
    assert [passage.text for passage in found] == ["Look here"]
    assert str(problem) == (
        f"log.md names the picture {address} in line 1, left out: nothing is fetched; "
        "save it beside the text and write its name"
    )
    assert (problem.severity, problem.field) == (Severity.WARNING, ("file",))


def test_many_of_a_kind_are_told_once_with_the_first_line() -> None:
    text = "\n\n".join(f"Line <b>{i}</b> and ![](https://e.invalid/{i}.png)" for i in range(30))
    _, problems = passages_of(f"Start\n\n{text}", "log.md")
    assert [str(problem) for problem in problems] == [
        "log.md has raw HTML in 30 lines, the first is line 3, left out",
        "log.md names 30 pictures that do not lie beside it, left out: nothing is fetched; "
        "the first is https://e.invalid/0.png in line 3; save them beside the text and write their names",
    ]


def test_html_is_left_out_and_said() -> None:
    found, [problem] = passages_of("One\n\n<div>\n<script>fetch()</script>\n</div>\n\nTwo <b>three</b>", "log.md")
    assert [passage.text for passage in found] == ["One", "Two three"]
    assert str(problem) == "log.md has raw HTML in 2 lines, the first is line 3, left out"
    assert problem.severity is Severity.WARNING


def test_links_lose_their_addresses_and_it_is_said() -> None:
    found, [note] = passages_of("See [the chart](chart.pdf).", "log.md")
    assert found == [Passage("See the chart.")]
    assert str(note) == "log.md has 1 link, set without addresses"
    assert note.severity is Severity.NOTE


def test_a_file_is_markdown_by_its_name(tmp_path: Path) -> None:
    for name in ("log.md", "log.txt"):
        (tmp_path / name).write_text("# Fog\n\n*thick*", encoding="utf-8")
    assert read_manuscript(tmp_path / "log.md", bundled("text")).text == "Fog\nthick"
    assert read_manuscript(tmp_path / "log.txt", bundled("text")).text == "# Fog\n*thick*"


def test_missing_glyphs_in_markdown_are_told_with_their_line(tmp_path: Path) -> None:
    (tmp_path / "log.md").write_text("# Fog\n\nand *⚓*", encoding="utf-8")
    [problem] = read_manuscript(tmp_path / "log.md", bundled("text")).problems
    assert problem.message == "log.md: the typeface Noto Serif has no glyph for ⚓ U+2693, line 3"
