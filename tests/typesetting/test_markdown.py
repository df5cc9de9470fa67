"""Markdown as passages, and what is left out of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.lines.fount import Style, as_read
from bookmaker.typesetting.manuscripts.manuscript import read_manuscript
from bookmaker.typesetting.manuscripts.markdown import passages_of
from bookmaker.typesetting.manuscripts.passage import Passage, Role


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
        (Role.ITEM, ""),
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
    kept = passages("```\nlit  05.10\n  at dusk\n\nout 19.00\n```")
    assert [(passage.role, as_read(passage.text)) for passage in kept] == [
        (Role.VERSE, "lit\u00a0\u00a005.10\n\u00a0\u00a0at\u00a0dusk"),
        (Role.VERSE, "out\u00a019.00"),
    ]


def test_pictures_are_plates_with_their_titles() -> None:
    assert passages('Look: ![a wreck](wreck.png "The *Annie*, lost") there') == [
        Passage("Look: there"),
        Passage("The *Annie*, lost", Role.PLATE, mark="wreck.png", line=1),
    ]


def test_a_picture_without_a_title_is_called_what_its_description_says() -> None:
    assert passages("![The old   *quay*](quay.png)\n\n![](wreck.png)\n\n![a](b.png 'Two  words')") == [
        Passage(f"The old {Style.ITALIC}quay", Role.PLATE, mark="quay.png", line=1),
        Passage("", Role.PLATE, mark="wreck.png", line=3),
        Passage("Two words", Role.PLATE, mark="b.png", line=5),
    ]


# ---- tables and notes


def test_tables_keep_rows_cells_and_sides() -> None:
    text = "Fog.\n\n| Moth | *Grains* | |\n|:--|--:|:-:|\n| pale brown | 0.08 | a\\|b |\n| grey |\n\nRain."
    assert passages(text) == [
        Passage("Fog."),
        Passage(f"Moth\t{Style.ITALIC}Grains\t\npale brown\t0.08\ta|b\ngrey\t\t", Role.TABLE, mark="lrc", line=3),
        Passage("Rain."),
    ]
    assert passages(text)[1].words == 10  # an empty cell counts as one


def test_tables_in_quotations_stand_in() -> None:
    [table] = passages("> | a | b |\n> |---|---|\n> | 1 | 2 |")
    assert (table.role, table.inset, table.text, table.mark) == (Role.TABLE, 1, "a\tb\n1\t2", "ll")


def test_a_bar_in_a_line_is_no_table() -> None:
    assert passages("this | that") == [Passage("this | that")]


SUPERIOR, ROMAN = Style.SUPERIOR, Style.ROMAN


def test_notes_stand_at_the_end_of_their_chapter_and_are_counted_there() -> None:
    text = (
        "# Fog\n\nThick[^b], *grey*[^a] and thick[^b] again [^a].\n\n[^a]: As *a rule*.\n[^b]: Or thicker,\nat sea.\n\n"
        "## By night\n\nBlack.[^c]\n\n# Rain\n\nWet.[^c]\n\n[^c]: One.\n\n    Two.\n\nEnd."
    )
    found = [(p.role, p.mark, p.text) for p in passages(text)]
    assert found == [
        (Role.HEADING, "", "Fog"),
        (
            Role.BODY,
            "",
            f"Thick{SUPERIOR}1{ROMAN}, {Style.ITALIC}grey{SUPERIOR}2 and thick{SUPERIOR}1 again{SUPERIOR}2{ROMAN}.",
        ),
        (Role.HEADING, "", "By night"),
        (Role.BODY, "", f"Black.{SUPERIOR}3"),
        (Role.NOTE, "1.", "Or thicker, at sea."),
        (Role.NOTE, "2.", f"As {Style.ITALIC}a {Style.ITALIC}rule{ROMAN}."),
        (Role.NOTE, "3.", "One."),
        (Role.NOTE, "", "Two."),
        (Role.HEADING, "", "Rain"),
        (Role.BODY, "", f"Wet.{SUPERIOR}1"),
        (Role.BODY, "", "End."),
        (Role.NOTE, "1.", "One."),
        (Role.NOTE, "", "Two."),
    ]


def test_a_note_that_refers_to_another_brings_it_along() -> None:
    found = passages("Fog.[^a]\n\n[^a]: See [^b] and [^a].\n[^b]: Or [^a].")
    assert [(p.mark, as_read(p.text)) for p in found[1:]] == [("1.", "See2 and1."), ("2.", "Or1.")]


def test_notes_do_not_end_a_chapter_within_themselves() -> None:
    found = passages("# Fog\n\nx[^a]\n\n[^a]: one\n\n    # two\n\n    three")
    assert [as_read(p.text) for p in found] == ["Fog", "x1", "one", "two", "three"]


def test_notes_that_are_not_there_or_not_referred_to_are_said_with_their_lines() -> None:
    found, problems = passages_of("Fog[^1]\n\nRain[^2]\n\n[^2]: wet\n\n[^3]: dry", "log.md")
    assert [as_read(p.text) for p in found] == ["Fog", "Rain1", "wet"]
    assert [(str(p), p.severity) for p in problems] == [
        (
            "log.md refers to a note that is not there, and no figure is set: [^1] in line 1; "
            "write [^1]: and what it says in a paragraph of its own, or \\[^1] for the signs themselves",
            Severity.WARNING,
        ),
        (
            "log.md has a note that nothing refers to, left out: [^3] in line 7; write [^3] where it belongs",
            Severity.WARNING,
        ),
    ]
    _, problems = passages_of("Fog[^1]\nRain[^2]\n\n[^3]: wet\n\n[^4]: dry", "log.md")
    assert [p.message for p in problems] == [
        "log.md refers to 2 notes that are not there, and no figure is set: the first is [^1] in line 1",
        "log.md has 2 notes that nothing refers to, left out: the first is [^3] in line 4",
    ]
    assert passages("\\[^1] and `[^1]`")[0].text == f"[^1] and {Style.TYPEWRITER}[^1]"


def test_what_is_left_out_of_a_note_is_told_with_its_line() -> None:
    _, [problem] = passages_of("Fog[^1]\n\n[^1]: wet\n    <b>and</b> cold", "log.md")
    assert str(problem) == "log.md has raw HTML in line 4, left out"


def test_a_list_after_a_quotation_is_a_thing_of_its_own() -> None:
    assert [p.apart for p in passages("> one\n\n- two\n- three\n\nfour\n\n> five")] == [
        False, True, False, False, False,
    ]  # fmt: skip


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


def test_a_running_title_belongs_to_the_heading_of_the_chapter_over_it() -> None:
    first, *_, last = passages("# What the Ferryman Saw\n[running title]: The  Ferryman\n\nIce.\n\n# Fog\n\nFog.")
    assert (first.text, first.short) == ("What the Ferryman Saw", "The Ferryman")
    assert last == Passage("Fog.")
    first, *_ = passages("# What the Ferryman Saw\n\n[Running Title]: Ice\n\nIce.")
    assert first.short == "Ice"


@pytest.mark.parametrize(
    "text", ["Ice.\n\n[running title]: Ice", "# Ice\n\nIce.\n\n## Fog\n[running title]: Fog\n\nFog.\n\n# Rain\n\nRain."]
)
def test_a_running_title_under_no_chapter_is_left_out_and_told_with_its_line(text: str) -> None:
    found, [told] = passages_of(text, "log.md")
    assert not any(passage.short or "running" in passage.text for passage in found)
    line = text.partition("[")[0].count("\n") + 1
    assert str(told) == (
        f"log.md has a running title under no heading of a chapter in line {line}, left out; "
        "write it on a line of its own right under the heading that it shortens"
    )
    assert told.severity is Severity.WARNING


def spoken(text: str) -> list[tuple[Role, str, str]]:
    found = passages_of(text, "log.md", spoken=True)[0]
    return [(passage.role, passage.mark, passage.text) for passage in found]


def test_items_that_read_like_sentences_are_speech_where_a_language_has_it_so() -> None:
    body, item = Role.BODY, Role.ITEM
    said = "- ¿Hay alguien?\n- Nadie - dijo ella.\n"
    assert spoken(f"Llovía.\n\n{said}\nY calló.") == [
        (body, "", "Llovía."), (body, "", "- ¿Hay alguien?"), (body, "", "- Nadie - dijo ella."), (body, "", "Y calló.")
    ]  # fmt: skip
    assert [passage.inset for passage in passages_of(said, "log.md", spoken=True)[0]] == [0, 0]
    assert spoken("- Aceite\n- Nadie.") == [(item, "•", "Aceite"), (item, "•", "Nadie.")]
    assert spoken("- aceite.") == [(item, "•", "aceite.")]
    assert spoken("* Nadie.") == [(item, "•", "Nadie.")]
    assert spoken("- *Nadie,* dijo.\n\n  Calló.") == [
        (item, "•", f"{Style.ITALIC}Nadie, dijo."), (item, "", "Calló.")
    ]  # fmt: skip
    assert [passage.role for passage in passages(said)] == [item, item]
