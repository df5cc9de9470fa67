"""The manners of a set page: notes, tables, what is set apart, drop capitals, headings, and pages without numbers."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.prose.copyfit import Copy, Proof
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.galleys.setting import Manner
from bookmaker.typesetting.page import PageFrame
from tests.kit.recording import Written, record
from tests.kit.text_pages import FACE, FRAME, PROSE, SIZE, STEP, inside, lines, row, said

PAGE = PageFrame(15, 21, 40)
ITALIC = bundled("text italic")


def proof(folder: Path, frame: PageFrame, drop_capital: int = 0) -> Proof:
    """What is in log.md, made up on the pages of a frame."""
    source = TextInside(file="log.md").load(folder).source
    copy = Copy(source.manuscript, source.fount, 1.25, frame, Manner(drop_capital=drop_capital))
    return copy.proof(copy.setting(SIZE), frame.pages)


def places(found: list[Written]) -> list[tuple[str, float]]:
    return [(line.text, round(row(line) * 2) / 2) for line in found]


# ---- what is set apart


def test_a_quotation_has_half_a_row_over_and_under_it_and_the_text_is_back_on_the_grid(tmp_path: Path) -> None:
    found = inside(tmp_path, "One.\n\n> Two.\n>\n> Three.\n\nFour.").pages[0]
    assert places(lines(found)) == [("One.", 0), ("Two.", 1.5), ("Three.", 2.5), ("Four.", 4)]


def test_a_list_at_the_head_of_a_chapter_has_no_white_over_it(tmp_path: Path) -> None:
    found = lines(inside(tmp_path, "# Fog\n\n- oil\n- wick\n\nFour.").pages[0])
    head, _, oil, _, wick, four = found
    assert row(oil) - row(head) == pytest.approx(3)
    assert row(wick) - row(oil) == pytest.approx(1)
    assert row(four) - row(wick) == pytest.approx(2)


def test_a_list_right_after_a_quotation_is_set_apart_from_it(tmp_path: Path) -> None:
    found = [line for line in lines(inside(tmp_path, "0\n\n> One.\n\n- two\n\nFour.").pages[0]) if line.text != "•"]
    assert places(found) == [("0", 0), ("One.", 1.5), ("two", 3), ("Four.", 5)]


def test_small_pages_have_no_room_for_white(tmp_path: Path) -> None:
    """The type area of a page of 10 mm is 6.7 mm high: six lines of this type."""
    found = lines(inside(tmp_path, "One.\n\n> Two.\n\nThree.", PageFrame(24, 10, 4)).pages[0])
    assert found[0].at.y - found[2].at.y == pytest.approx(2 * STEP)


# ---- notes


def test_notes_follow_their_chapter_in_smaller_type_on_the_grid(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, f"Fog[^1], and rain.\n\n[^1]: {PROSE}").pages[0])
    first, mark, *note = page
    assert (first.text, mark.text) == ("Fog1, and rain.", "1.")
    assert {line.line.size / SIZE for line in (mark, *note)} == {0.85}
    assert [row(line) for line in note] == pytest.approx([2 + number for number in range(len(note))])
    assert mark.end.x < min(line.at.x for line in note)
    area = FRAME.type_area(1)
    assert [line.end.x for line in note[:-1]] == pytest.approx([area.right] * (len(note) - 1))


def test_the_figure_of_a_note_is_superior(tmp_path: Path) -> None:
    """The glyph of the typeface's own superior one, by its OpenType feature."""
    found = lines(inside(tmp_path, "Fog[^1] here.\n\n[^1]: wet").pages[0])[0]
    [figure] = [run for _, run in found.line.runs if run.text == "1"]
    assert [glyph.gid for glyph in figure.glyphs] == [glyph.gid for glyph in FACE.shape("1", features=("sups",)).glyphs]
    assert figure.bottom > FACE.x_height / 2
    plain = lines(inside(tmp_path, "Fog[^1] here.\n\n[^1]: wet", face="blackletter").pages[0])[0]
    assert plain.text == "Fog[1] here."


def test_a_heading_is_listed_without_the_figure_of_its_note(tmp_path: Path) -> None:
    found = inside(tmp_path, "# Fog[^1]\n\nThick.\n\n[^1]: wet")
    assert [heading.text for heading in found.headings] == ["Fog"]
    assert lines(found.pages[0])[0].text == "Fog1"


# ---- tables

TABLE = "| Moth | Grains | Found |\n|:--|--:|:-:|\n| Brown | 0.08 | stair |\n| Unknown | 1.5 | lamp |"


def test_a_table_stands_in_columns_in_the_middle_of_the_measure(tmp_path: Path) -> None:
    page = inside(tmp_path, f"One.\n\n{TABLE}\n\nTwo.").pages[0]
    cells = {line.text: line for line in lines(page)}
    area = FRAME.type_area(1)
    assert cells["Moth"].at.x == cells["Brown"].at.x == cells["Unknown"].at.x
    assert cells["Grains"].end.x == pytest.approx(cells["0.08"].end.x)
    assert cells["1.5"].end.x == pytest.approx(cells["0.08"].end.x)
    assert cells["stair"].at.x + cells["stair"].end.x == pytest.approx(cells["lamp"].at.x + cells["lamp"].end.x)
    right = max(line.end.x for line in cells.values() if line.text not in {"One.", "Two."})
    assert cells["Moth"].at.x - area.x == pytest.approx(area.right - right, abs=1e-6)
    rows = [row(cells[text]) for text in ("One.", "Moth", "0.08", "lamp", "Two.")]
    assert rows == pytest.approx([0, 1.5, 2.5, 3.5, 5])
    assert {run.typeface for _, run in cells["Found"].line.runs} == {ITALIC}


def test_the_rule_of_a_table_lies_between_its_heads_and_its_rows(tmp_path: Path) -> None:
    page = record(inside(tmp_path, TABLE).pages[0])
    [rule] = page.strokes
    start, end = rule.path.points()
    cells = {line.text: line for line in page.texts}
    assert start.y == end.y
    assert cells["0.08"].at.y + FACE.shape("df").top * SIZE < start.y
    assert start.y < cells["Moth"].at.y + FACE.shape("gp").bottom * SIZE
    assert (start.x, end.x) == pytest.approx((cells["Moth"].at.x, max(line.end.x for line in page.texts)), abs=0.01)


def test_wide_cells_are_broken_and_their_rows_stay_together(tmp_path: Path) -> None:
    text = f"| Day | Weather |\n|:--|:--|\n| one | {PROSE} |\n| two | fog |"
    found = inside(tmp_path, text)
    assert said(found) == []
    page = lines(found.pages[0])
    area = FRAME.type_area(1)
    assert all(area.x - 1e-6 <= line.at.x and line.end.x <= area.right + 1e-6 for line in page)
    one, two = (next(line for line in page if line.text == text) for text in ("one", "two"))
    broken = [line for line in page if two.at.y < line.at.y <= one.at.y and line is not one]
    assert len({line.at.x for line in broken}) == 1
    assert " ".join(line.text for line in broken) == PROSE.strip()
    assert row(two) - row(one) == pytest.approx(len(broken))
    table = proof(tmp_path, FRAME).pages[0].slots[0].matter
    # the first row with its heads, its lines with one another, and the last row, a single line, with them
    assert table.bound == set(range(1, 2 + len(broken)))


def test_a_table_without_room_is_set_row_by_row_and_said_with_its_line(tmp_path: Path) -> None:
    text = "Fog.\n\n| Extraordinary | Considerations | Straightforwardness |\n|---|---|---|\n| | one | two |"
    found = inside(tmp_path, text, PAGE)
    assert " ".join(line.text for line in lines(found.pages[0])) == (
        "Fog. Extraordinary; Considerations; Straightforwardness one; two"
    )
    [problem] = [problem for problem in found.problems if problem.severity is Severity.WARNING]
    assert str(problem) == (
        "the table in line 3 of log.md has no room for its columns, so each row is set on lines of its own; "
        "write a smaller size, fewer columns, or shorter words in them"
    )


def test_empty_cells_stay_empty(tmp_path: Path) -> None:
    page = lines(inside(tmp_path, "| a | b | c |\n|---|---|---|\n| | 2 | |\n| 3 | | 4 |").pages[0])
    assert [line.text for line in page] == ["a", "b", "c", "2", "3", "4"]
    columns = {line.text: line.at.x for line in page}
    assert (columns["2"], columns["3"], columns["4"]) == (columns["b"], columns["a"], columns["c"])


def test_several_tables_without_room_are_told_at_once(tmp_path: Path) -> None:
    table = "| Extraordinary | Considerations | Straightforwardness |\n|---|---|---|\n| 1 | 2 | 3 |\n\nFog.\n\n"
    [problem] = said(inside(tmp_path, 2 * table, PAGE))
    assert problem.startswith("2 tables of log.md have no room for their columns, the first in line 1: each row is set")


@pytest.mark.parametrize("width", [15, 40])
def test_the_words_after_a_table_are_counted_as_those_of_any_text(tmp_path: Path, width: float) -> None:
    table = "| Extraordinary | Considerations | Straightforwardness |\n|---|---|---|\n| | one two | |\n| | | |"
    (tmp_path / "log.md").write_text(f"Fog[^1].\n\n{table}\n\nEnd of it.\n\n[^1]: wet", encoding="utf-8")
    words = TextInside(file="log.md", size=SIZE).load(tmp_path).source.manuscript.words
    done = proof(tmp_path, PageFrame(width, 30, 10)).pages[-1].done
    assert done == words == 1 + 3 + 4 + 3 + 3 + 1  # an empty cell counts as one


def test_a_table_that_goes_on_has_its_heads_again_and_no_row_alone(tmp_path: Path) -> None:
    for before in range(15):
        for count in (3, 8, 30):
            rows = "".join(f"| m{number} | g{number} |\n" for number in range(count))
            text = "fog\n\n" * before + f"| Moth | Grains |\n|:--|--:|\n{rows}\nEnd.\n"
            for page in inside(tmp_path, text, PageFrame(24, 21, 12)).pages:
                shown = [line.text for line in lines(page)]
                on_page = [words for words in shown if words[0] == "m" and words[1:].isdigit()]
                assert len(on_page) != 1, (before, count)
                assert shown.count("Moth") == shown.count("Grains") == (1 if on_page else 0)
                assert len(record(page).strokes) == (1 if on_page else 0)
                if on_page:
                    assert shown.index("Moth") < shown.index(on_page[0])


CELLS = st.lists(
    st.lists(st.text("aeinorst .5", max_size=20).map(str.strip), min_size=3, max_size=3), min_size=2, max_size=9
)


@given(cells=CELLS, width=st.floats(8, 40), before=st.integers(0, 12), sides=st.text("lcr", min_size=3, max_size=3))
@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_tables_stay_in_the_type_area_and_lose_nothing(
    tmp_path: Path, cells: list[list[str]], width: float, before: int, sides: str
) -> None:
    rows = ["| " + " | ".join(cell or "x" for cell in cells_of_row) + " |" for cells_of_row in cells]
    rule = "|" + "|".join({"l": ":--", "c": ":-:", "r": "--:"}[side] for side in sides) + "|"
    text = "\n\n".join([*["fog"] * before, "\n".join([rows[0], rule, *rows[1:]]), "End."])
    frame = PageFrame(width, 21, 40)
    pages = inside(tmp_path, text, frame, punctuation="as written", language="none").pages
    shown = [line for page in pages for line in lines(page)]
    wanted = " ".join([*["fog"] * before, *(cell or "x" for cells_of_row in cells for cell in cells_of_row), "End."])
    letters = Counter("".join(line.text for line in shown).translate({ord(" "): None, ord(";"): None}))
    heads = Counter("".join(cell or "x" for cell in cells[0]).replace(" ", ""))
    # the heads come again on each page on which the table goes on, and nothing else does
    again = [Counter({sign: count * times for sign, count in heads.items()}) for times in range(len(pages))]
    assert letters in [Counter(wanted.replace(" ", "")) + repeated for repeated in again]
    for number, page in enumerate(pages, start=1):
        area = frame.type_area(number)
        for line in lines(page):
            assert area.x - 1e-6 <= line.at.x
            assert line.end.x <= area.right + 1e-6 or " " not in line.text
            assert line.at.y >= area.y - 1e-6


# ---- drop capitals


def test_quotation_marks_before_a_drop_capital_keep_the_size_of_the_text(tmp_path: Path) -> None:
    text = f'# Fog\n\n"Nothing," he said. {PROSE}'
    quote, initial, beside, *_ = lines(inside(tmp_path, text, drop_capital="2", hanging="yes").pages[0])[1:]
    area = FRAME.type_area(1)
    assert (quote.text, initial.text, beside.text.split(" ")[0]) == ("“", "N", "othing,”")
    assert quote.line.size == SIZE
    assert quote.at.y == beside.at.y
    ink = FACE.shape("N").left * initial.line.size
    assert (quote.end.x, initial.at.x + ink) == pytest.approx((area.x, area.x))
    quote, initial, *_ = lines(inside(tmp_path, text, drop_capital="2", hanging="no").pages[0])[1:]
    assert (quote.at.x, initial.at.x + ink) == pytest.approx((area.x, quote.end.x))


def test_the_letters_after_a_drop_capital_are_small_capitals(tmp_path: Path) -> None:
    text = f'# Fog\n\n"Nothing\'s," he said. {PROSE}'
    beside = lines(inside(tmp_path, text, drop_capital="2").pages[0])[3]
    small, rest = [run for _, run in beside.line.runs][:2]
    assert (small.text, rest.text) == ("othing’s", ",”")
    assert small.glyphs == FACE.shape("othing’s", features=("smcp",)).glyphs


@pytest.mark.parametrize(
    ("first", "small"),
    [("Will-o'-the-wisp", "ill-o’-the-wisp"), ("L'année", "’année"), ("*O*nce", "nce"), ("Salt-works", "alt-works")],
)
def test_all_of_the_first_word_is_in_small_capitals(tmp_path: Path, first: str, small: str) -> None:
    beside = lines(inside(tmp_path, f"# Fog\n\n{first} upon a time. {PROSE}", drop_capital="2").pages[0])[2]
    run = beside.line.runs[0][1]
    assert run.text == small
    assert run.glyphs == FACE.shape(small, features=("smcp",)).glyphs


@pytest.mark.parametrize("text", [f"I was here. {PROSE}", "Thick fog.", f"Fog. {PROSE}"])
def test_words_are_counted_with_a_drop_capital_or_without(tmp_path: Path, text: str) -> None:
    (tmp_path / "log.md").write_text(f"# Fog\n\n{text}", encoding="utf-8")
    assert proof(tmp_path, FRAME, drop_capital=3).pages[-1].done == 1 + len(text.split())


def test_a_chapter_may_begin_with_an_italic_word_or_after_a_quotation(tmp_path: Path) -> None:
    italic = lines(inside(tmp_path, f"# Fog\n\n*Nothing* here. {PROSE}", drop_capital="2").pages[0])[1]
    assert (italic.text, [run.typeface for _, run in italic.line.runs]) == ("N", [ITALIC])
    after = lines(inside(tmp_path, f"# Fog\n\n> Old words.\n\n{PROSE}", drop_capital="2").pages[0])
    assert [line.text for line in after[1:3]] == ["Old words.", "T"]
    title = lines(inside(tmp_path, f"# Salt\n\n{PROSE}\n\n## Fog\n\n{PROSE}", drop_capital="2").pages[0])
    assert title[1].text.startswith("The keeper")


# ---- headings


def test_lines_of_a_heading_are_about_equally_long(tmp_path: Path) -> None:
    heads = lines(inside(tmp_path, f"# The House Standing Over Quiet Lanes\n\n{PROSE}").pages[0])[:2]
    assert [head.line.size / SIZE for head in heads] == pytest.approx([1.3, 1.3])
    first, second = (head.end.x - head.at.x for head in heads)
    assert 0.6 < first / second < 1.7


def test_a_heading_with_a_word_wider_than_the_measure_is_set_smaller(tmp_path: Path) -> None:
    page = inside(tmp_path, f"# Straightforwardness\n\n{PROSE}", PAGE).pages[0]
    head = lines(page)[0]
    assert head.text == "Straightforwardness"
    assert head.end.x - head.at.x == pytest.approx(PAGE.type_area(1).width)


def test_headings_of_lower_levels_are_italic(tmp_path: Path) -> None:
    text = f"# Fog\n\nx\n\n## By night\n\nx\n\n### Later\n\n{PROSE}\n\n# Rain\n\nx"
    found = {line.text: line for line in lines(inside(tmp_path, text).pages[0])}
    assert {run.typeface.name for _, run in found["By night"].line.runs if run.text != " "} == {"Noto Serif Bold"}
    assert {run.typeface.name for _, run in found["Later"].line.runs} == {"Noto Serif Italic"}


# ---- pages without numbers


def numbers(text: str, folder: Path, **keys: object) -> list[str]:
    """The number each page bears, as far as there is text or a picture on it."""
    (folder / "log.md").write_text(text, encoding="utf-8")
    entry = TextInside.model_validate({"file": "log.md", "size": SIZE, **keys})
    found = []
    for page in entry.load(folder).compose(FRAME).pages:
        texts = record(page).texts
        found.append(texts[-1].text if texts and texts[-1].text.isdecimal() else "")
    return found


def test_plates_half_titles_and_empty_pages_bear_no_number(tmp_path: Path) -> None:
    Image.new("RGB", (600, 800), (40, 90, 120)).save(tmp_path / "buoy.png")
    text = f"# Salt\n\n*by the sea*\n\n## Fog\n\n{PROSE}\n\n![A buoy](buoy.png)\n\n## Rain\n\nWet."
    assert numbers(text, tmp_path)[:6] == ["", "2", "", "4", "", ""]
    assert numbers(text, tmp_path, chapters="run on")[:3] == ["1", "", "3"]


def test_neither_the_first_page_of_a_chapter_nor_a_plate_bears_a_running_head(tmp_path: Path) -> None:
    Image.new("RGB", (600, 800), (40, 90, 120)).save(tmp_path / "buoy.png")
    chapter = "\n\n".join([PROSE] * 7)
    text = f"# Fog\n\n{chapter}\n\n# Rain\n\n![](buoy.png)\n\n{chapter}"
    pages = inside(tmp_path, text, running_heads="yes").pages
    first = FRAME.type_area(1).top - FACE.shape("dfl").top * SIZE
    heads = ["".join(line.text for line in lines(page) if line.at.y > first + 0.01) for page in pages]
    # a chapter fills three pages; the plate follows the page that names it
    assert heads[:7] == ["", "Salt Verses", "Fog", "", "", "Salt Verses", "Rain"]


def test_a_plate_has_its_description_under_it(tmp_path: Path) -> None:
    Image.new("RGB", (600, 800), (40, 90, 120)).save(tmp_path / "buoy.png")
    page = record(inside(tmp_path, "![The old buoy](buoy.png)").pages[0])
    [caption], [placed] = page.texts, page.pictures
    assert caption.text == "The old buoy"
    assert caption.at.y < placed.bounds.y
    area: Rect = FRAME.type_area(1)
    assert (caption.at.x + caption.end.x) / 2 == pytest.approx(area.centre.x)


# ---- hyphens

LONG_WORDS = (
    "Nothing happened to the harbourmaster yesterday, notwithstanding extraordinary circumstances, and everything in "
    "the administrative neighbourhood remained exactly as it was, although somebody somewhere was remembering. "
)


@pytest.mark.parametrize("width", range(19, 30))
def test_ragged_lines_are_hyphenated_only_where_they_would_be_very_short(tmp_path: Path, width: int) -> None:
    frame = PageFrame(width, 60, 4)
    found = inside(tmp_path, LONG_WORDS * 2, frame, justified="no", tracking="0 %")
    measure = frame.type_area(1).width
    for line, _ in pairwise(lines(found.pages[0])):
        if line.text.endswith("-"):
            without = line.line.runs[-1][0]  # where the parted word begins
            assert without < measure * 2 / 3, line.text


@pytest.mark.parametrize("justified", ["yes", "no"])
def test_no_last_line_is_the_rest_of_a_parted_word(tmp_path: Path, justified: str) -> None:
    for width in range(15, 34):
        text = "\n\n".join(LONG_WORDS[start:].strip() for start in range(0, 80, 7))
        page = inside(tmp_path, text, PageFrame(width, 200, 2), justified=justified).pages[0]
        for one, other in pairwise(lines(page)):
            assert not (one.text.endswith("-") and other.text == "bering."), width
            assert not (one.text.endswith("-") and other.text == "membering."), width


def test_quotations_too_narrow_to_be_filled_are_ragged_unless_told_otherwise(tmp_path: Path) -> None:
    """The text has 12.9 ems, what is quoted 10.9: under 11 (common practice)."""

    def short(**keys: str) -> list[int]:
        """How many lines of the text, and of what is quoted, end short of the margin."""
        text = f"{LONG_WORDS}\n\n> {LONG_WORDS}"
        own = lines(inside(tmp_path, text, PageFrame(15, 60, 4), size="2.2 pt", hanging="no", **keys).pages[0])
        left = min(line.at.x for line in own)
        parts = [[line.end.x for line in own if (line.at.x > left + 0.4) is quoted] for quoted in (False, True)]
        return [sum(end < max(ends) - 0.4 for end in ends) for ends in parts]

    ragged, filled = short(), short(justified="yes")
    assert ragged[0] <= 1 < ragged[1]
    assert max(filled) <= 1
