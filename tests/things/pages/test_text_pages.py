"""Pages that look like those of a book: heads, indents, verses, drop capitals, running heads, margins, plates."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.drawing import Art
from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.prose.loaded_text import LoadedText, TextSource
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.manuscripts.manuscript import Manuscript
from bookmaker.typesetting.page import BookWords, PageFrame
from tests.kit.recording import Written, record
from tests.kit.text_pages import FACE, FRAME, PROSE, SIZE, STEP, inside, lines, row, said

ITALIC_TOO = {Style.ROMAN: FACE, Style.ITALIC: bundled("text italic")}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path


# ---- heads and indents


def test_the_first_paragraph_after_a_heading_is_not_indented_the_next_one_is(folder: Path) -> None:
    page = inside(folder, f"# Fog\n\n{PROSE}\n\n{PROSE}").pages[0]
    left = FRAME.type_area(1).x
    first, *rest = [line.at.x - left for line in lines(page)[1:]]
    assert first == pytest.approx(0)
    assert [x for x in rest if x > 0.01] == pytest.approx([SIZE])


def test_chapters_begin_on_pages_of_their_own_or_run_on(folder: Path) -> None:
    text = f"# Fog\n\n{PROSE}\n\n# Rain\n\n{PROSE}"
    apart, together = inside(folder, text), inside(folder, text, chapters="run on")
    assert lines(apart.pages[1])[0].text == "Rain"
    assert "Rain" in [line.text for line in lines(together.pages[0])]
    assert [(heading.text, heading.page) for heading in apart.headings] == [("Fog", 1), ("Rain", 2)]


def test_a_chapter_sinks_and_its_text_is_back_on_the_grid(folder: Path) -> None:
    head, *text = lines(inside(folder, f"# Fog\n\n{PROSE}").pages[0])
    area = FRAME.type_area(1)
    assert head.line.size == pytest.approx(1.3 * SIZE)
    assert (head.at.x + head.end.x) / 2 == pytest.approx(area.centre.x)
    assert row(head) > 2
    assert row(head) == pytest.approx(round(row(head)), abs=1e-6)
    assert all(row(line) == pytest.approx(round(row(line)), abs=1e-6) for line in text)
    assert row(text[0]) > row(head) + 1


def test_a_heading_of_several_lines_ends_on_the_grid(folder: Path) -> None:
    text = f"# A Chapter about Fogs and What Comes out of Them\n\n{PROSE}"
    *heads, first = lines(inside(folder, text).pages[0])[:3]
    assert [line.line.size / SIZE for line in (*heads, first)] == pytest.approx([1.3, 1.3, 1])
    assert row(heads[-1]) == pytest.approx(round(row(heads[-1])), abs=1e-6)
    assert row(first) - row(heads[-1]) == pytest.approx(3)
    assert heads[0].at.y - heads[1].at.y == pytest.approx(1.2 * 1.3 * SIZE)


def test_verses_in_lists_keep_their_marks(folder: Path) -> None:
    mark, first, second = lines(inside(folder, "- one\\\n  two").pages[0])
    assert (mark.text, first.text, second.text) == ("•", "one", "two")
    assert mark.at.y == first.at.y
    assert mark.end.x < first.at.x


def test_facing_pages_share_their_lines(folder: Path) -> None:
    pages = inside(folder, (PROSE + "\n\n") * 30).pages
    heights = [{round(line.at.y, 6) for line in lines(page)} for page in pages[:4]]
    assert heights[0] >= heights[1] or heights[1] >= heights[0]
    assert heights[2] >= heights[3] or heights[3] >= heights[2]


def test_a_single_heading_at_the_top_is_the_title_of_the_book(folder: Path) -> None:
    pages = inside(folder, f"# Salt\n\nby the sea\n\n## Fog\n\n{PROSE}\n\n## Rain\n\n{PROSE}").pages
    firsts = [lines(page)[0] for page in pages[:3]]
    assert [line.text for line in firsts] == ["Salt", "Fog", "Rain"]
    assert [line.line.size / SIZE for line in firsts] == pytest.approx([1.6, 1.3, 1.3])


def test_small_headings_are_bold_and_stay_in_the_text(folder: Path) -> None:
    found = lines(inside(folder, f"# Fog\n\n{PROSE}\n\n## By night\n\n{PROSE}\n\n# Rain\n\n## By day\n\nx").pages[0])
    head = next(line for line in found if line.text == "By night")
    assert {run.typeface.name for _, run in head.line.runs if run.text != " "} == {"Noto Serif Bold"}
    assert head.line.size == SIZE


# ---- verse, lists, quotations


def test_verses_keep_their_lines_and_turn_over_further_in(folder: Path) -> None:
    verse = "One stove, one clock, one shelf of books, one chair, one lamp, one table,\\\nnothing more."
    found = lines(inside(folder, verse).pages[0])
    left = FRAME.type_area(1).x
    assert " ".join(line.text for line in found).startswith("One stove, one clock")
    assert found[0].at.x == pytest.approx(left)
    assert found[1].at.x == pytest.approx(left + SIZE)
    assert found[-1].at.x == pytest.approx(left)
    assert found[-1].text == "nothing more."


def test_words_of_verses_are_not_hyphenated(folder: Path) -> None:
    verse = "magnificently extraordinarily acknowledgement conscientiously\\\ninfinitesimally unfortunately"
    found = lines(inside(folder, verse, PageFrame(15, 30, 4)).pages[0])
    assert not any(line.text.endswith("-") for line in found)


def test_stanzas_are_parted_by_a_blank_line(folder: Path) -> None:
    found = lines(inside(folder, "one\\\ntwo\n\nthree\\\nfour").pages[0])
    assert [round(row(line)) for line in found] == [0, 1, 3, 4]


def test_marks_of_lists_hang_before_their_text(folder: Path) -> None:
    found = lines(inside(folder, f"- {PROSE}\n- wick").pages[0])
    left = FRAME.type_area(1).x
    marks = [line for line in found if line.text == "•"]
    texts = [line for line in found if line.text != "•"]
    assert [mark.at.x for mark in marks] == pytest.approx([left, left])
    assert {round(line.at.x - left, 6) for line in texts} == {SIZE}
    assert marks[1].at.y == texts[-1].at.y


def test_quotations_stand_in_on_both_sides(folder: Path) -> None:
    found = lines(inside(folder, f"> {PROSE}").pages[0])
    area = FRAME.type_area(1)
    assert {round(line.at.x - area.x, 6) for line in found} == {SIZE}
    assert [line.end.x for line in found[:-1]] == pytest.approx([area.right - SIZE] * (len(found) - 1))


def pauses(page: Art) -> list[tuple[float, float]]:
    """The middles of the lozenges of a page."""
    boxes = [Rect.around(fill.path.points()) for fill in record(page).fills]
    return [(box.centre.x, box.centre.y) for box in boxes]


def test_a_pause_is_three_lozenges_on_a_line_of_their_own(folder: Path) -> None:
    page = inside(folder, "One.\n\n---\n\nTwo.").pages[0]
    middle = FRAME.type_area(1).centre.x
    assert [x - middle for x, _ in pauses(page)] == pytest.approx([-1.1 * SIZE, 0, 1.1 * SIZE])
    first, second = lines(page)
    assert {round(y, 9) for _, y in pauses(page)} == {round(first.at.y - STEP + FACE.x_height * SIZE / 2, 9)}
    assert row(second) == pytest.approx(2)
    assert second.at.x == first.at.x


def test_a_pause_is_seen_at_the_head_and_at_the_foot_of_a_page(folder: Path) -> None:
    """A page of 24 × 30 mm has 20 lines of this type; the pause is the 20th, then the 21st."""
    for count, pages in ((19, (3, 0)), (20, (0, 3))):
        text = "\\\n".join(["fog"] * count) + "\n\n---\n\nTwo."
        found = inside(folder, text).pages
        assert tuple(len(pauses(page)) for page in found[:2]) == pages


@pytest.mark.parametrize(
    "text", ["---\n\nOne.", "One.\n\n---", "One.\n\n---\n\n---\n\nTwo.", "One.\n\n---\n\n# Fog\n\nTwo."]
)
def test_a_pause_that_parts_nothing_is_left_out(folder: Path, text: str) -> None:
    drawn = [len(pauses(page)) for page in inside(folder, text).pages]
    assert sum(drawn) == (3 if text.count("---") == 2 else 0)


def test_plain_text_has_pauses_too(tmp_path: Path) -> None:
    for sign in ("* * *", "***", "---", "#  # #"):
        (tmp_path / "log.txt").write_text(f"One.\n\n{sign}\n\nTwo.", encoding="utf-8")
        entry = TextInside(file="log.txt", size=SIZE)
        page = entry.load(tmp_path).compose(FRAME).pages[0]
        assert len(pauses(page)) == 3


# ---- ornaments of a book


def test_a_drop_capital_stands_on_a_line_and_reaches_the_top_of_the_first(folder: Path) -> None:
    initial, *rest = lines(inside(folder, f"# Fog\n\n{PROSE}", drop_capital="3").pages[0])[1:]
    assert (initial.text, rest[0].text.split(" ")[0]) == ("T", "he")
    assert initial.at.y == pytest.approx(rest[2].at.y)
    top = initial.at.y + FACE.cap_height * initial.line.size
    assert top == pytest.approx(rest[0].at.y + FACE.cap_height * SIZE)
    area = FRAME.type_area(1)
    assert all(line.at.x > initial.end.x for line in rest[:3])
    assert rest[3].at.x == pytest.approx(area.x)
    assert [line.end.x for line in rest[:-1]] == pytest.approx([area.right] * (len(rest) - 1))


def test_a_paragraph_too_short_for_a_drop_capital_has_none(folder: Path) -> None:
    assert lines(inside(folder, "# Fog\n\nThick.", drop_capital="3").pages[0])[1].text == "Thick."


def test_running_heads_name_book_and_chapter(folder: Path) -> None:
    pages = inside(folder, "# Fog\n\n" + (PROSE + "\n\n") * 30, running_heads="yes").pages
    heads = [[line for line in lines(page) if row(line, n) < 0] for n, page in enumerate(pages[:3], 1)]
    assert [[line.text for line in head] for head in heads] == [[], ["Salt Verses"], ["Fog"]]
    [head] = heads[2]
    assert head.line.size == pytest.approx(0.85 * SIZE)
    assert head.at.y + FACE.cap_height * head.line.size < FRAME.height
    small = {glyph.gid for _, run in head.line.runs for glyph in run.glyphs}
    assert small != {glyph.gid for glyph in FACE.shape("Fog").glyphs}


def test_a_long_running_head_is_shortened(folder: Path) -> None:
    frame = PageFrame(15, 21, 6, book=BookWords("A Very Long Title of the Considerable Book about Fog"))
    found = inside(folder, (PROSE + "\n\n") * 9, frame, running_heads="yes", size=0.77)
    head = lines(found.pages[1])[0]
    assert head.text == "A Very Long Title…"  # not "Title of the…": that promises another word
    assert head.end.x <= frame.type_area(2).right
    [note] = [problem for problem in found.problems if "running head" in problem.message]
    assert (str(note), note.severity, note.field) == (
        "the running head 'A Very Long Title of the Considerable Book about Fog' is wider than the text and "
        "shortened to 'A Very Long Title…', first on page 2; write running_title: with a shorter one",
        Severity.NOTE,
        ("running_heads",),
    )
    short = inside(folder, (PROSE + "\n\n") * 9, frame, running_heads="yes", size=0.77, running_title="On Fog")
    assert [lines(page)[0].text for page in short.pages[1:3]] == ["On Fog", "On Fog"]
    assert lines(short.pages[0])[0].text.startswith("The keeper")
    assert not [problem for problem in short.problems if "running head" in problem.message]


@pytest.mark.parametrize("small", ["about", "Between", "seiner", "which"])
def test_a_shortened_head_ends_with_no_small_word(folder: Path, small: str) -> None:
    frame = PageFrame(15, 21, 6, book=BookWords(f"A Very Long Tale {small} Incomprehensibilities"))
    found = inside(folder, (PROSE + "\n\n") * 9, frame, running_heads="yes", size=0.77)
    assert lines(found.pages[1])[0].text == "A Very Long Tale…"


def test_a_long_chapter_head_is_told_with_its_page(folder: Path) -> None:
    text = "# A Chapter about Fogs and What Comes out of Them at Last\n\n" + (PROSE + "\n\n") * 12
    found = inside(folder, text, PageFrame(15, 21, 6, book=BookWords("Fog")), running_heads="yes", size=0.77)
    [note] = [str(problem) for problem in found.problems if "running head" in problem.message]
    assert note == (
        "the running head 'A Chapter about Fogs and What Comes out of Them at Last' is wider than the text and "
        "shortened to 'A Chapter about Fogs…', first on page 3; "
        "write [running title]: under the heading, with a shorter one"
    )


def test_a_running_title_in_the_text_stands_over_its_pages_and_the_heading_on_the_first_and_in_the_contents(
    folder: Path,
) -> None:
    head = "A Chapter about Fogs and What Comes out of Them at Last"
    text = f'# {head}\n[running title]: Of "Fogs"\n\n' + (PROSE + "\n\n") * 12
    found = inside(folder, text, PageFrame(15, 21, 6, book=BookWords("Fog")), running_heads="yes", size=0.77)
    assert lines(found.pages[2])[0].text == "Of \u201cFogs\u201d"
    assert [heading.text for heading in found.headings] == [head]
    assert "".join(line.text for line in lines(found.pages[0])).startswith("A Chapter")
    assert not [problem for problem in found.problems if "running" in problem.message]


def test_a_running_head_of_one_word_too_long_is_left_out_rather_than_cut_within_it(folder: Path) -> None:
    frame = PageFrame(15, 30, 4, book=BookWords("Lighthousekeepersdaughterscompanion"))
    found = inside(folder, PROSE * 12, frame, running_heads="yes")
    assert not any("LIGHT" in line.text.upper() for line in lines(found.pages[1]))
    [note] = [str(problem) for problem in found.problems if "running head" in problem.message]
    assert note == (
        "the running head 'Lighthousekeepersdaughterscompanion' is wider than the text and left out, first on page 2; "
        "write running_title: with a shorter one"
    )


def test_heads_a_little_too_long_make_all_heads_smaller_down_to_four_fifths(folder: Path) -> None:
    def sizes(title: str) -> list[float]:
        frame = PageFrame(15, 21, 6, book=BookWords(title))
        text = "# Fog\n\n" + (PROSE + "\n\n") * 12
        pages = inside(folder, text, frame, running_heads="yes", size=SIZE).pages[1:4]
        return [lines(page)[0].line.size / SIZE for page in pages]

    assert sizes("Salt") == pytest.approx([0.85] * 3)
    smaller = sizes("The Salts of the Old Sea Wall")
    assert len(set(smaller)) == 1
    assert 0.8 * 0.85 < smaller[0] < 0.85
    assert sizes("The Salts of the Old Sea Wall and Everything behind It") == pytest.approx([0.85] * 3)


def test_heads_keep_clear_of_the_trim_or_are_left_out_and_it_is_said(folder: Path) -> None:
    text = "# Fog\n\n" + (PROSE + "\n\n") * 30

    def heads(top: float) -> tuple[list[Written], list[str]]:
        margins = {"inner": "3 mm", "top": f"{top} mm", "outer": "3 mm", "bottom": "4 mm"}
        found = inside(folder, text, running_heads="yes", margins=margins)
        first = 30 - top - FACE.shape("dfl").top * SIZE
        over = [line for line in lines(found.pages[1]) if line.at.y > first + 0.01]
        return over, said(found)

    for top in (1.91, 2.0, 2.5, 4.0):
        [head], problems = heads(top)
        assert problems == []
        assert head.at.y + FACE.shape("dfl").top * head.line.size <= 30 - 0.8 + 1e-9
        assert head.at.y - (30 - top - FACE.shape("dfl").top * SIZE) >= 1.2 * STEP - 1e-9
    over, problems = heads(1.6)
    assert over == []
    assert problems == [
        "the margin of 1.6 mm at the head has no room for running heads 0.8 mm clear of the edge: they are left out; "
        "write margins: with top: 1.91 mm or more, a smaller size, or running_heads: no"
    ]


def test_margins_given_are_mirrored(folder: Path) -> None:
    margins = {"inner": "2 mm", "top": "3 mm", "outer": "5 mm", "bottom": "4 mm"}
    pages = inside(folder, (PROSE + "\n\n") * 30, margins=margins).pages
    for number, left in ((1, 2), (2, 5), (3, 2)):
        found = lines(pages[number - 1])
        assert min(line.at.x for line in found) == pytest.approx(left)
        assert max(line.end.x for line in found) == pytest.approx(left + 17)
        assert found[0].at.y == pytest.approx(30 - 3 - FACE.shape("dfl").top * SIZE)
        assert found[-1].at.y >= 4


def test_margins_that_leave_no_room_are_an_error(folder: Path) -> None:
    margins = {"inner": "12 mm", "top": "3 mm", "outer": "12 mm", "bottom": "4 mm"}
    assert said(inside(folder, "Fog and rain", margins=margins)) == [
        "inner 12 mm and outer 12 mm take 24 mm of a page 24 mm wide: no room is left for the 3 words of log.md; "
        "write smaller margins, or leave them out"
    ]
    margins |= {"top": "26 mm", "bottom": "4.5 mm"}
    [both] = said(inside(folder, "Fog and rain", margins=margins))
    assert "a page 24 mm wide and top 26 mm and bottom 4.5 mm take 30.5 mm of a page 30 mm high: no room" in both


def test_margins_that_leave_too_little_for_the_type_are_told(folder: Path) -> None:
    margins = {"inner": "11.7 mm", "top": "3 mm", "outer": "12 mm", "bottom": "4 mm"}
    assert said(inside(folder, "Fog and rain", margins=margins)) == [
        "log.md does not fit in 2.27 pt type on the 0.3 mm × 23 mm that the margins leave of a page of 24 mm × 30 mm: "
        "all of its 3 words are lost; write smaller margins"
    ]


def test_pictures_stand_on_pages_of_their_own_over_their_titles(folder: Path) -> None:
    Image.new("RGB", (400, 300), (40, 90, 120)).save(folder / "wreck.png")
    pages = inside(folder, f'{PROSE}\n\n![](wreck.png "The wreck")\n\n{PROSE}').pages
    assert "The wreck" not in " ".join(line.text for line in lines(pages[0]))
    plate = record(pages[1])
    [picture], [caption] = plate.pictures, plate.texts
    area = FRAME.type_area(2)
    assert Rect(*area).contains(picture.bounds)
    assert picture.bounds.width / picture.bounds.height == pytest.approx(4 / 3)
    assert caption.text == "The wreck"
    assert area.y - 1e-6 <= caption.at.y < picture.bounds.y


def test_a_picture_that_is_missing_is_an_error_of_the_text(folder: Path) -> None:
    with pytest.raises(ShelfFileError) as caught:
        inside(folder, "![](gone.png)")
    [problem] = caught.value.problems
    assert "gone.png" in problem.message
    assert problem.field == ("file",)


# ---- what is said


def test_the_loosest_line_is_told_if_it_is_bad(folder: Path) -> None:
    found = inside(folder, "so much for some l straightforwardness by far", PageFrame(15, 21, 4), language="none")
    # five words of 7.97 ems on a line of 12.5: 4.53 ems for four spaces, less 17 · 0.045 that the letters are tracked;
    # each is 0.94 ems wide, where 0.26 is usual
    assert [str(problem) for problem in found.problems if "loosest" in problem.message] == [
        "the loosest line of log.md, on page 1, has spaces 3.6 times as wide as usual: "
        "'so much for some l'; write a smaller size, another wording, or justified: no"
    ]
    assert found.widest_space == pytest.approx(0.942 / 0.26, abs=0.01)
    even = inside(folder, PROSE, PageFrame(40, 30, 2))
    assert not [problem for problem in even.problems if "loosest" in problem.message]
    assert even.widest_space is not None
    assert 1.0 < even.widest_space < 3.0
    assert inside(folder, PROSE, justified="no").widest_space == 1.0


@given(
    words=st.lists(st.text("aeinorstWfijl", min_size=1, max_size=11), min_size=5, max_size=60),
    width=st.floats(10, 40),
    emphasis=st.booleans(),
)
@settings(max_examples=60, deadline=None)
def test_letters_and_spaces_gain_and_lose_alike(words: list[str], width: float, emphasis: bool) -> None:
    """Letters of 2.27 pt up to 4.5 % of an em apart and 1 % closer, spaces up to 1/3 and 3/10 of their own width.

    From 6 pt up letters go 3 % apart, at 1 pt 5 %, and between them in proportion (common practice, no source).

    Each gains the same share of what it may; only when letters have given all of theirs, spaces go on alone.
    """
    text = " ".join(f"{Style.ITALIC}{word}" if emphasis and number % 3 else word for number, word in enumerate(words))
    source = TextSource(Manuscript.plain("log.txt", text), Fount(ITALIC_TOO, None))
    entry = TextInside(file="log.txt", size=SIZE, numbers="no", hanging="no", justified="yes")
    frame = PageFrame(width, 200, 2)
    loosest = 0.03 + 0.02 * (6 - SIZE / 25.4 * 72) / 5
    area, space = frame.type_area(1), FACE.shape(" ").width * SIZE
    *found, last = lines(LoadedText(entry, source).compose(frame).pages[0])
    assert last.line.tracking <= 0
    for line in (*found, last):
        tracking, runs = line.line.tracking / SIZE, line.line.runs
        assert -0.01 - 1e-9 <= tracking <= loosest + 1e-9
        gaps = [
            next_x - x - run.width * SIZE - line.line.tracking * len(run.glyphs)
            for (x, run), (next_x, _) in pairwise(runs)
            if " " in run.text
        ]
        for gap in gaps:
            share = gap / space / (1 / 3 if gap > 0 else 0.3)
            if tracking and -0.01 + 1e-9 < tracking < loosest - 1e-9:
                assert share == pytest.approx(tracking / (loosest if tracking > 0 else 0.01), abs=1e-6)
            elif tracking:
                assert share * tracking > 0
                assert abs(share) >= 1 - 1e-6
            if gap > space / 2 + 1e-6 and line.end.x > area.right - 1e-6:
                assert tracking == pytest.approx(loosest)


def test_letters_read_from_the_right_and_marks_are_never_tracked() -> None:
    fount = Fount({Style.ROMAN: FACE}, None)
    assert fount.letters("lamp oil") == 8
    assert fount.letters("la\u0301mp q\u0301") == 0
    assert Fount({Style.ROMAN: FACE}, None, right_to_left=True).letters("lamp oil") == 0


def test_lines_that_cannot_be_filled_are_left_short_and_said(folder: Path) -> None:
    frame = PageFrame(15, 21, 4, resolution_dpi=1200)
    found = inside(folder, "so much straightforwardness indeed", frame, language="none")
    assert [str(problem) for problem in found.problems] == [
        "1 line of log.md cannot be filled and ends short of the margin, the first one 'so much'; "
        "write a smaller size, another wording, or justified: no",
        "log.md fills 1 of 4 pages; the others stay empty; write pages: 2 for a thinner book, or a larger size, "
        "or add a part that takes what is left, such as dummy text, for a book as thick",
    ]
    assert lines(found.pages[0])[0].end.x < 12


def test_lines_too_short_to_be_filled_well_are_ragged_unless_told_otherwise(folder: Path) -> None:
    """Of 24 letters, about 11 ems, there is a choice; common practice."""

    def ends(width: float, **keys: str) -> int:
        frame = PageFrame(width, 30, 4)
        return len({round(line.end.x, 4) for line in lines(inside(folder, PROSE, frame, **keys).pages[0])[:-1]})

    assert ends(11.1 * SIZE * 1.5) == 1
    assert ends(10.9 * SIZE * 1.5) > 1
    assert ends(10.9 * SIZE * 1.5, justified="yes") <= 2
    assert ends(11.1 * SIZE * 1.5, justified="no") > 1
    assert ends(30, face="typewriter") > 1


def test_emphasis_without_an_italic_is_noted(folder: Path) -> None:
    [note] = inside(folder, "the *fog*", PageFrame(24, 30, 2), face="typewriter").problems
    assert str(note) == (
        "Courier Prime has no italic here, so log.md is set without; "
        "write italic_face: with a typeface, or leave the emphasis out"
    )
    assert inside(folder, "the *fog*", PageFrame(24, 30, 2), face="typewriter", italic_face="script").problems == ()


@pytest.mark.parametrize(("written", "depth"), [("no", 0), ("2", 2), (3, 3)])
def test_the_depth_of_a_drop_capital(written: object, depth: int) -> None:
    assert TextInside.model_validate({"file": "x", "drop_capital": written}).drop_capital == depth


@pytest.mark.parametrize("written", ["1", "9", "deep"])
def test_a_depth_that_cannot_be_meant_is_refused(written: str) -> None:
    with pytest.raises(ValueError, match="cannot be the depth of a drop capital"):
        TextInside.model_validate({"file": "x", "drop_capital": written})


def test_the_text_tells_how_many_pages_it_needs(folder: Path) -> None:
    (folder / "log.md").write_text(f"# Fog\n\n{PROSE}\n\n# Rain\n\n{PROSE}\n\n# Hail\n\n{PROSE}", encoding="utf-8")
    entry = TextInside(file="log.md", size=SIZE)
    source = entry.load(folder).source
    assert LoadedText(entry, source).extent(PageFrame(24, 30, 0)) == 3
    assert load_inside(entry, folder).extent(PageFrame(24, 30, 0)) == 4
    assert LoadedText(TextInside(file="log.md", size=20.0), source).extent(PageFrame(24, 30, 0)) is None


def test_typefaces_of_other_styles_are_checked_for_letters_too(folder: Path) -> None:
    found = inside(folder, "*Μαύρο* и *слово*", face="text", italic_face="script")
    assert said(found) == [
        "log.md: the typeface Dancing Script has no glyph for Μ U+039C, line 1; α U+03B1, line 1; ύ U+03CD, line 1; "
        "ρ U+03C1, line 1; ο U+03BF, line 1; с U+0441, line 1; л U+043B, line 1; о U+043E, line 1; в U+0432, line 1; "
        "write italic_face: text italic, which has them all, or write the text without them"
    ]
    assert said(inside(folder, "Μαύρο *fog*", face="text", italic_face="script")) == []


def test_running_heads_without_small_capitals_are_small_and_it_is_said(folder: Path) -> None:
    found = inside(folder, "# Fog\n\n" + (PROSE + "\n\n") * 30, running_heads="yes", face="sans")
    head = lines(found.pages[1])[0]
    assert head.text == "SALT VERSES"
    assert head.line.size == pytest.approx(0.65 * SIZE)
    assert str(found.problems[0]) == "Open Sans has no small capitals; running heads are set in its capitals, smaller"


def test_a_title_the_typeface_cannot_print_is_told(folder: Path) -> None:
    frame = PageFrame(24, 30, 12, book=BookWords("⚓ Harbour"))
    found = inside(folder, "# Fog\n\n" + (PROSE + "\n\n") * 30, frame, running_heads="yes")
    assert said(found)[0] == (
        "Noto Serif has no glyph for ⚓ U+2693 of the title, so even pages have no running head; "
        "write face: with a typeface that has them, or running_heads: no"
    )
    assert "⚓" not in " ".join(line.text for line in lines(found.pages[1]))


def test_pictures_of_few_pixels_are_told(folder: Path) -> None:
    Image.new("RGB", (60, 60), (40, 90, 120)).save(folder / "buoy.png")
    # the type area is 16 mm wide: 60 pixels are 95 to the inch, 300 would be 3.1 times as many
    assert said(inside(folder, "![](buoy.png)")) == [
        "buoy.png prints at only 95 dots per inch; use a picture with 3.1 times as many pixels each way"
    ]


def test_items_have_a_dash_where_the_typeface_has_no_bullet(folder: Path) -> None:
    face = bundled("blackletter")
    mark = "-" if face.missing("•") else "•"
    assert lines(inside(folder, "- oil", face="blackletter").pages[0])[0].text == mark
