"""What authors indent: verses, paragraphs, lines in the middle and at the right; and verse that is too wide."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.problems import Severity
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.galleys.galley import Galley
from bookmaker.typesetting.galleys.setting import Manner, Setting
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.manuscripts.manuscript import read_manuscript
from bookmaker.typesetting.manuscripts.markdown import passages_of
from bookmaker.typesetting.manuscripts.passage import Passage, Role
from bookmaker.typesetting.page import PageFrame
from tests.kit.text_pages import FACE, FRAME, SIZE, inside, lines

LONG = "The keeper trims the lamp at dusk and writes down the wind, the sea and the sky, night after night."


def roles(text: str) -> list[tuple[Role, str, str]]:
    return [(passage.role, passage.mark, passage.text) for passage in passages_of(text, "log.md")[0]]


def plain(folder: Path, text: str) -> list[tuple[Role, str, str]]:
    (folder / "log.txt").write_text(text, encoding="utf-8")
    found = read_manuscript(folder / "log.txt").passages
    return [(passage.role, passage.mark, passage.text) for passage in found]


# ---- verse


def test_blanks_before_a_verse_set_it_in_by_half_an_em_each(tmp_path: Path) -> None:
    text = "Nothing north,\\\n  nothing west,\\\n    nothing\\\nand fog.\n\n> one\\\n>   two"
    page = lines(inside(tmp_path, text).pages[0])
    left, first = FRAME.type_area(1).x, page[0].at.x
    assert [round((line.at.x - first) / SIZE, 6) for line in page[:4]] == [0, 1, 2, 0]
    assert [round((line.at.x - left) / SIZE, 6) for line in page[4:]] == [1, 2]


def test_a_poem_stands_in_the_middle_as_its_longest_line_does(tmp_path: Path) -> None:
    """Its stanzas share one left edge, and the longest of all their lines has as much room left and right."""
    first = "Nothing north,\\\nnothing west,\\\nand fog."
    text = f"Before it.\n\n{first}\n\nA long line of rain in the east,\\\nand fog.\n\nAfter."
    before, *poem, after = lines(inside(tmp_path, text).pages[0])
    area = FRAME.type_area(1)
    assert {round(line.at.x, 6) for line in poem} == {round(poem[0].at.x, 6)}
    longest = max(poem, key=lambda line: line.line.width)
    assert longest.text == "A long line of rain in the east,"
    assert longest.at.x - area.x == pytest.approx(area.right - longest.at.x - longest.line.width, abs=0.02)
    assert [before.at.x, after.at.x] == pytest.approx([area.x] * 2)


def test_a_poem_with_a_line_that_is_turned_over_begins_at_the_left(tmp_path: Path) -> None:
    text = "One stove, one clock, one shelf of books, one chair, one lamp,\\\nnothing more."
    assert lines(inside(tmp_path, text).pages[0])[0].at.x == pytest.approx(FRAME.type_area(1).x)


@pytest.mark.parametrize("before", ["&emsp;", "\u2003", "&ensp;&ensp;"])
def test_wide_spaces_before_a_verse_set_it_in(tmp_path: Path, before: str) -> None:
    first, second = lines(inside(tmp_path, f"fog\\\n{before}rain").pages[0])
    assert second.at.x - first.at.x == pytest.approx(SIZE)
    assert second.text == "rain"


def test_a_stanza_whose_first_line_is_indented_is_verse(tmp_path: Path) -> None:
    first, second = lines(inside(tmp_path, "    Fog in the north,\\\n  rain in the west").pages[0])
    left = second.at.x - SIZE
    assert [(line.text, round((line.at.x - left) / SIZE, 6)) for line in (first, second)] == [
        *[("Fog in the north,", 2), ("rain in the west", 1)]
    ]


def test_words_too_wide_for_a_verse_are_hyphenated(tmp_path: Path) -> None:
    frame = PageFrame(9, 14, 12)
    found = inside(tmp_path, "The harbourmaster’s grandmother’s umbrella went\\\nhome.", frame, size="2.6 pt")
    shown = [line.text for page in found.pages for line in lines(page)]
    assert shown[:2] == ["The harbour-", "master’s"]
    assert not any("between letters" in problem.message for problem in found.problems)


def test_verses_turned_over_are_counted_with_the_size_that_would_hold_them(tmp_path: Path) -> None:
    text = "One stove, one clock, one shelf of books, one chair, one lamp,\\\nnothing more."
    found = inside(tmp_path, text)
    [note] = [problem for problem in found.problems if "verse" in problem.message]
    assert note.message == "1 of 2 lines of verse are too wide for the page in log.md, and broken into two"
    assert note.severity is Severity.NOTE
    size = note.remedy.split(" ")[2]
    held = inside(tmp_path, text, size=f"{size} pt")
    assert [line.text for line in lines(held.pages[0])] == text.split("\\\n")
    assert not [problem for problem in held.problems if "verse" in problem.message]
    larger = inside(tmp_path, text, size=f"{float(size) + 0.06} pt")
    assert len(lines(larger.pages[0])) == 3


# ---- paragraphs


def test_paragraphs_that_begin_with_four_blanks_are_prose() -> None:
    assert roles(f"    {LONG}\n\n    “Fog,” he said again.\n\n\t{LONG}") == [
        *[(Role.BODY, "", LONG), (Role.BODY, "", "“Fog,” he said again."), (Role.BODY, "", LONG)]
    ]
    assert roles("    The first line\nand the next, not indented") == [
        *[(Role.BODY, "", "The first line and the next, not indented")]
    ]


def test_they_are_noted_once_with_the_line() -> None:
    [note] = passages_of(f"Fog.\n\n    {LONG}\n\n    {LONG}", "log.md")[1]
    assert note.severity is Severity.NOTE
    assert "the first in line 3" in note.message


def test_what_may_be_prose_and_is_kept_as_it_is_is_noted() -> None:
    [note] = passages_of("Fog.\n\n    It rained that night.\n    The lamp was out.\n\nx", "log.md")[1]
    assert str(note) == (
        "log.md has lines that begin with four blanks or more, the first in line 3; "
        "they are kept as they are, in typewriter; write prose without these blanks"
    )


@pytest.mark.parametrize("text", ["ARRIVED SAFELY STOP", "oil  12\n    wick 3", "x = 3;", "lamp = [1]", "two words"])
def test_what_does_not_read_like_prose_stays_in_typewriter(text: str) -> None:
    [(role, _, set_text)] = roles(f"Fog.\n\n    {text}")[1:]
    assert role is Role.VERSE
    assert set_text.startswith(Style.TYPEWRITER)


def test_what_would_begin_to_mean_something_else_does_not() -> None:
    assert roles(f"    - {LONG}")[0][::2] == (Role.BODY, f"- {LONG}")
    assert roles(f"    1. {LONG}")[0][::2] == (Role.BODY, f"1. {LONG}")


# ---- lines in the middle and at the right

LETTER = "Come soon.\n\n                *H.* Pym\n\n        THE END\n          of it\n\n\t\tFIN\n\n\t\t\t\tR.\n"
PLACED = [(Role.PLACED, "c", "THE END\nof it"), (Role.PLACED, "c", "FIN"), (Role.PLACED, "r", "R.")]


def test_lines_far_from_the_left_belong_to_the_middle_or_the_right(tmp_path: Path) -> None:
    assert roles(LETTER)[2:] == PLACED
    assert roles(LETTER)[1] == (Role.PLACED, "r", f"{Style.ITALIC}H. Pym")
    assert plain(tmp_path, LETTER)[2:] == PLACED


def test_they_are_set_there(tmp_path: Path) -> None:
    _, signed, end, of_it, *_ = lines(inside(tmp_path, LETTER).pages[0])
    area = FRAME.type_area(1)
    assert signed.end.x == pytest.approx(area.right)
    assert [(line.at.x + line.end.x) / 2 for line in (end, of_it)] == pytest.approx([area.centre.x] * 2)


def test_long_paragraphs_with_such_an_indent_make_it_that_of_all(tmp_path: Path) -> None:
    text = f"        {LONG}\n\n        “Fog,” he said again.\n\n                H. Pym"
    wanted = [(Role.BODY, "", LONG), (Role.BODY, "", "“Fog,” he said again."), (Role.PLACED, "r", "H. Pym")]
    assert roles(text) == wanted
    assert plain(tmp_path, text) == wanted


def test_every_line_must_be_indented_so(tmp_path: Path) -> None:
    text = "        First\nsecond."
    assert roles(text) == [(Role.BODY, "", "First second.")]
    assert plain(tmp_path, text) == [(Role.BODY, "", "First second.")]


def test_all_words_of_placed_lines_are_set(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text("Fog.\n\n        a far too long line for the middle of it\n", encoding="utf-8")
    entry = TextInside.model_validate({"file": "log.txt", "size": SIZE, "numbers": "no"})
    frame = PageFrame(12, 18, 2)
    page = entry.load(tmp_path).compose(frame).pages[0]
    assert " ".join(line.text for line in lines(page)) == "Fog. a far too long line for the middle of it"


# ---- lists


def test_all_paragraphs_of_an_item_are_set_alike(tmp_path: Path) -> None:
    found = lines(inside(tmp_path, f"- {LONG}\n\n  {LONG}", justified="yes").pages[0])
    left = FRAME.type_area(1).x
    texts = [line for line in found if line.text != "•"]
    assert {round(line.at.x - left, 6) for line in texts} == {SIZE}
    half = len(texts) // 2
    assert [line.text for line in texts[:half]] == [line.text for line in texts[half:]]
    assert [line.end.x for line in texts[:half]] == pytest.approx([line.end.x for line in texts[half:]])


def test_a_quotation_in_an_item_stays_one() -> None:
    assert passages_of("- oil\n\n  > said he\n\n- wick", "log.md")[0][1][:4] == Passage("said he", inset=2)[:4]


# ---- signs that mean nothing here


@pytest.mark.parametrize("signs", ["~~struck~~", "m^2^", "==marked==", "H~2~O"])
def test_signs_of_other_dialects_are_noted_once(signs: str) -> None:
    passages, problems = passages_of(f"Fog.\n\nRain {signs} and {signs}.", "log.md")
    [note] = [problem for problem in problems if "mean nothing" in problem.message]
    assert "in line 3" in note.message
    assert signs in passages[1].text


@pytest.mark.parametrize("text", ["about ~3 or ~4", "a^b", "`~~x~~`", "x == y"])
def test_signs_that_may_be_meant_are_not(text: str) -> None:
    assert passages_of(text, "log.md")[1] == []


SIGNED = f"{' ' * 16}Ever your\n{' ' * 16}A. P. Wexcombe-Harrowgate, sometime Surveyor of the Upper and Nether Drains"


@pytest.mark.parametrize("before", ["Fog.", LONG])
def test_a_signature_too_wide_for_the_measure_moves_no_other_line(tmp_path: Path, before: str) -> None:
    text = f"{before}\n\n                Augustin\n\n        POSTSCRIPT\n\nFog again.\n\n{SIGNED}"
    signed = "\n".join(map(str.strip, SIGNED.split("\n")))
    wanted = [
        *[(Role.BODY, "", before), (Role.PLACED, "r", "Augustin"), (Role.PLACED, "c", "POSTSCRIPT")],
        *[(Role.BODY, "", "Fog again."), (Role.PLACED, "r", signed)],
    ]
    assert roles(text) == wanted
    assert plain(tmp_path, text) == wanted


def test_a_single_line_of_twice_the_length_may_stand_at_the_right(tmp_path: Path) -> None:
    name = "A. P. Wexcombe-Harrowgate, sometime Surveyor of the Upper and Nether Drains"
    text = f"{' ' * 16}{name}\n\n        THE END"
    assert plain(tmp_path, text) == [(Role.PLACED, "r", name), (Role.PLACED, "c", "THE END")]
    assert plain(tmp_path, f"{' ' * 16}{name} {name}") == [(Role.BODY, "", f"{name} {name}")]


def test_what_is_turned_over_at_the_right_ends_there_and_is_noted(tmp_path: Path) -> None:
    found = inside(tmp_path, f"{SIGNED}\n")
    shown = lines(found.pages[0])
    assert len(shown) > 2
    assert [line.end.x for line in shown] == pytest.approx([FRAME.type_area(1).right] * len(shown))
    [note] = [problem for problem in found.problems if "broken into two" in problem.message]
    assert note.severity is Severity.NOTE
    assert note.message == (
        "1 line for the middle or the right of log.md is too wide for the page, and broken into two, "
        "the first 'A. P. Wexcombe-Harrowgate, sometime Surv…'"
    )


# ---- what is kept as it is

TARIFF = "```\nqty    thing     price\n  2    eels      4d.\n\n 12    combs    11d.\n```\n"


def test_lines_between_backticks_keep_their_blanks_each_as_wide_as_a_letter(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, TARIFF).pages[0])
    assert [line.text.replace("\u00a0", " ") for line in page] == [
        *["qty    thing     price", "  2    eels      4d.", " 12    combs    11d."]
    ]
    left = FRAME.type_area(1).x
    assert [line.at.x for line in page] == pytest.approx([left] * 3)
    letter = (page[0].end.x - left) / 22
    assert letter == pytest.approx(0.6 * SIZE, rel=1e-3)  # a tenth of an inch at 12 pt, as typewriters have it
    assert [line.end.x - left for line in page] == pytest.approx([letter * count for count in (22, 20, 20)])
    first, second, third = (line.at.y for line in page)
    assert second - third == pytest.approx(2 * (first - second))


def test_kept_lines_are_parted_at_blanks_only(tmp_path: Path) -> None:
    found = inside(tmp_path, "```\n" + "grandmother's  umbrella " * 4 + "\n```\n")
    for line in (line for page in found.pages for line in lines(page)):
        assert set(line.text.replace("\u00a0", " ").split()) <= {"grandmother's", "umbrella"}
    assert not [problem for problem in found.problems if "between letters" in problem.message]


def test_a_signature_ends_a_letter_and_a_date_or_a_title_begins_one(tmp_path: Path) -> None:
    dated, signed, titled = f"{' ' * 16}3rd May", f"{' ' * 16}Augustin", f"{' ' * 8}POSTSCRIPT"
    one, other = [dated, "My dear,", "Fog.", signed, titled], ["Rain.", "* * *", dated, "My dear,", f"{' ' * 8}FIN"]
    text = "\n\n".join([*one, *other])
    (tmp_path / "log.txt").write_text(text, encoding="utf-8")
    fount = Fount({Style.ROMAN: FACE}, None)
    setting = Setting.of(FACE, SIZE, 1.25, FRAME)
    found = list(Galley(fount, setting, Manner()).matter(read_manuscript(tmp_path / "log.txt").passages))
    ties = [(matter.stays, matter.signs) for matter in found if matter.role is Role.PLACED]
    assert ties == [(True, False), (False, True), (True, False), (True, False), (False, True)]


def test_a_heading_without_a_blank_is_noted_with_its_line() -> None:
    [note] = passages_of("Fog.\n\n#Chapter one\n\n##Two\n\n# Three", "log.md")[1]
    assert note.message == "log.md has a line that is not a heading, #Chapter one in line 3"
    assert note.severity is Severity.NOTE
    assert passages_of("#1 of three\n\n\\#Fog\n\n# Fog", "log.md")[1] == []


def test_entries_over_a_text_are_noted() -> None:
    [note] = passages_of("---\ntitle: Hello\nauthor: Pym\n---\n\n# One\n\nFog.", "log.md")[1]
    assert note.message == "log.md begins with entries between lines of ---, which are printed: title: Hello in line 2"
    assert passages_of("---\n\nSaid he: fog.\n\n---\n", "log.md")[1] == []
    assert passages_of("Fog.\n\n---\ntitle: Hello\n---\n", "log.md")[1] == []
