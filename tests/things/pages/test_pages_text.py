"""Pages of text: every word once and in order, inside the type area, and an account of what is lost."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Art
from bookmaker.ground.problems import Problem, Severity, ShelfFileError
from bookmaker.ground.typefaces import Run, bundled
from bookmaker.ground.units import from_pt
from bookmaker.things.book.pages.prose.loaded_text import LoadedText, TextSource
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.lines.boxes import LONGEST_WORD, Boxes
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.manuscripts.manuscript import Manuscript
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.recording import Written, record

FACE = bundled("text")
FOUNT = Fount({Style.ROMAN: FACE}, None)
WORDS = st.text(st.sampled_from("aeinorstlbdgpy.,-AÉWgfijl"), min_size=1, max_size=24)
LONG_WORDS = st.text(st.sampled_from("mwie\u0301"), min_size=30, max_size=90).map(lambda word: "a" + word)
PARAGRAPHS = st.lists(st.lists(WORDS | LONG_WORDS, min_size=1, max_size=40), min_size=1, max_size=6)
FRAMES = st.builds(
    PageFrame,
    width=st.floats(8, 60),
    height=st.floats(8, 80),
    pages=st.integers(1, 3).map(lambda half: 2 * half),
    right_to_left=st.booleans(),
)
SENTENCE = "The keeper trims the lamp at dusk and writes down the wind."


def source_of(*paragraphs: Iterable[str]) -> TextSource:
    return TextSource(Manuscript.plain("log.txt", "\n".join(" ".join(words) for words in paragraphs)), FOUNT)


def set_text(text: str, frame: PageFrame, size: float, **keys: str) -> Inside:
    entry = TextInside(file="log.txt", size=size, **keys)
    return LoadedText(entry, source_of(*[part.split() for part in text.split("\n")])).compose(frame)


def lines_on(page: Art) -> list[Written]:
    """The lines of text of a page, without its number."""
    return [written for written in record(page).texts if not (written.text.isdecimal() and len(written.text) < 3)]


def errors(problems: Iterable[Problem]) -> list[Problem]:
    return [problem for problem in problems if problem.severity is Severity.ERROR]


# ---- laws


@given(paragraphs=PARAGRAPHS, frame=FRAMES, size=st.floats(0.5, 2))
@settings(max_examples=150, deadline=None)
def test_every_word_is_set_once_and_in_order_or_counted_as_lost(
    paragraphs: list[list[str]], frame: PageFrame, size: float
) -> None:
    entry = TextInside(file="log.txt", size=size, numbers="no")
    inside = LoadedText(entry, source_of(*paragraphs)).compose(frame)
    words = [word for paragraph in paragraphs for word in paragraph]
    assert len(inside.pages) == frame.pages
    shown = [written.text for page in inside.pages for written in record(page).texts]
    # words may be broken between letters, so the letters are what must be there
    letters = "".join(shown).replace(" ", "")
    assert "".join(words).startswith(letters)
    lost = next((int(m[1]) for p in errors(inside.problems) if (m := re.match(r"(\d+) words?\b", p.message))), 0)
    whole = len(words) - lost
    assert len("".join(words[:whole])) <= len(letters)
    assert lost == 0 or len(letters) < len("".join(words[: whole + 1]))
    assert (lost == 0) == (errors(inside.problems) == [])


@given(paragraphs=PARAGRAPHS, frame=FRAMES, size=st.floats(0.5, 2), justified=st.booleans())
@settings(max_examples=100, deadline=None)
def test_lines_stay_inside_the_type_area_and_on_one_grid(
    paragraphs: list[list[str]], frame: PageFrame, size: float, justified: bool
) -> None:
    entry = TextInside(file="log.txt", size=size, numbers="no", hanging="no", justified="yes" if justified else "no")
    inside = LoadedText(entry, source_of(*paragraphs)).compose(frame)
    descent = FACE.shape("gp").bottom * size
    for number, page in enumerate(inside.pages, start=1):
        area = frame.type_area(number)
        for line in record(page).texts:
            assert line.at.x >= area.x - 1e-6
            assert line.end.x <= area.right + 1e-6 or " " not in line.text
            assert line.at.y + FACE.cap_height * size <= area.top + 1e-6
            assert line.at.y + descent >= area.y - 1e-6
            row = (area.top - FACE.shape("dfl").top * size - line.at.y) / (1.25 * size)
            assert row == pytest.approx(round(row), abs=1e-6)


@given(
    paragraphs=st.lists(
        st.lists(st.text("aeinorstWfijl.,", min_size=1, max_size=8), min_size=1, max_size=60), min_size=1, max_size=4
    ),
    width=st.floats(30, 60),
    size=st.floats(0.5, 1.5),
)
@settings(max_examples=60, deadline=None)
def test_all_lines_of_a_paragraph_but_the_last_end_at_the_margin(
    paragraphs: list[list[str]], width: float, size: float
) -> None:
    frame = PageFrame(width, 300, 2)
    entry = TextInside(file="log.txt", size=size, numbers="no", hanging="no")
    [written, _] = (record(page).texts for page in LoadedText(entry, source_of(*paragraphs)).compose(frame).pages)
    area, ends = frame.type_area(1), {" ".join(words)[-5:] for words in paragraphs}
    for line in written:
        gaps, lacking = line.text.count(" "), area.right - line.end.x
        if gaps and line.text[-5:] not in ends:
            # or it is left short, where its spaces would become five times as wide as usual
            assert lacking == pytest.approx(0, abs=1e-5) or lacking / gaps > 4 * FACE.shape(" ").width * size * 0.99


@given(paragraphs=st.lists(st.integers(1, 9).map(lambda lines: ["mm nn oo pp"] * lines), min_size=4, max_size=30))
@settings(deadline=None)
def test_no_page_ends_with_a_first_line_or_begins_with_a_last_one(paragraphs: list[list[str]]) -> None:
    """Each chunk of this text fills a line and no line holds two, so the lines of paragraphs are known."""
    frame, size = PageFrame(9, 21, 60), 1.0
    paragraphs = [[word for chunk in chunks for word in chunk.split()] for chunks in paragraphs]
    entry = TextInside(file="log.txt", size=size, numbers="no", hanging="no")
    source = source_of(*paragraphs)
    pages = [page for page in LoadedText(entry, source).compose(frame).pages if page is not NOTHING]
    shown = [[line.at.x > frame.type_area(n).x + 0.5 for line in record(page).texts] for n, page in enumerate(pages, 1)]
    most = max(map(len, shown))
    flat = [(page, row, first) for page, lines in enumerate(shown) for row, first in enumerate(lines)]
    flat[0] = (0, 0, True)
    starts = [at for at, (_, _, first) in enumerate(flat) if first] + [len(flat)]
    for start, end in pairwise(starts):
        parts = [sum(1 for p, _, _ in flat[start:end] if p == page) for page in {p for p, _, _ in flat[start:end]}]
        if end - start > 1:
            assert min(parts) > 1
    assert all(len(lines) >= most - 3 for lines in shown[:-1])


@given(words=st.lists(WORDS, min_size=200, max_size=900), size=st.floats(1.0, 1.6))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.large_base_example])
def test_the_page_count_and_the_size_proposed_hold_the_text_and_nothing_smaller_does(
    words: list[str], size: float
) -> None:
    frame, source = PageFrame(15, 21, 2), source_of(words)
    problems = errors(LoadedText(TextInside(file="log.txt", size=size), source).compose(frame).problems)
    if not problems:
        return
    remedy = problems[0].remedy
    found = re.search(r"pages: (\d+)", remedy)
    assert found
    pages = int(found[1])
    assert pages % 2 == 0

    def lost(pages: int, size: float) -> bool:
        entry = TextInside(file="log.txt", size=size)
        return bool(errors(LoadedText(entry, source).compose(PageFrame(15, 21, pages)).problems))

    assert not lost(pages, size)
    assert lost(pages - 2, size)
    points = re.search(r"size: ([\d.]+) pt", remedy)
    if points:
        assert not lost(2, TextInside(file="x", size=f"{points[1]} pt").size)
        assert float(points[1]) * 20 == pytest.approx(round(float(points[1]) * 20))


# ---- how it looks


def test_paragraphs_after_the_first_are_indented_by_one_em() -> None:
    inside = set_text(f"{SENTENCE}\n{SENTENCE}", PageFrame(60, 80, 2), 2.0)
    lines = lines_on(inside.pages[0])
    starts = [line.at.x - 60 / 9 for line in lines]
    first_of_second = next(i for i, line in enumerate(lines) if i and line.text.startswith("The keeper"))
    assert starts[first_of_second] == pytest.approx(2.0)
    assert [start for i, start in enumerate(starts) if i != first_of_second] == pytest.approx([0.0] * (len(starts) - 1))


def test_in_a_narrow_measure_the_indent_is_a_quarter_of_it() -> None:
    lines = lines_on(set_text("a b c\nd e f", PageFrame(4.5, 60, 2), 1.0).pages[0])
    second = next(line for line in lines if line.text.startswith("d"))
    assert second.at.x - 0.5 == pytest.approx(0.75)


def test_words_and_spaces_are_runs_of_their_own_shared_by_all_lines() -> None:
    [line] = lines_on(set_text("lamp oil lamp", PageFrame(60, 80, 2), 2.0).pages[0])
    runs = [run for _, run in line.line.runs]
    assert [run.text for run in runs] == ["lamp", " ", "oil", " ", "lamp"]
    assert runs[0] is runs[4]
    assert runs[1] is runs[3]
    ends = [x + run.width * 2.0 for x, run in line.line.runs]
    assert [x for x, _ in line.line.runs][1:] == pytest.approx(ends[:-1])


def test_leading_is_the_distance_of_baselines() -> None:
    lines = lines_on(set_text(SENTENCE * 3, PageFrame(15, 60, 2), 1.0, leading="1.5").pages[0])
    assert lines[0].at.y - lines[1].at.y == pytest.approx(1.5)


def test_pages_are_numbered_in_the_face_of_the_text_unless_told_not_to(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text("Fog")
    entry = TextInside(file="log.txt", face="old style")
    pages = entry.load(tmp_path).compose(PageFrame(15, 21, 2)).pages
    number = record(pages[0]).texts[-1]
    assert number.text == "1"
    assert number.line.runs[0][1].typeface is bundled("old style")
    assert pages[1] is NOTHING  # what the text leaves empty bears no number
    without = TextInside(file="log.txt", numbers="no")
    bare = without.load(tmp_path).compose(PageFrame(15, 21, 2)).pages[0]
    assert [text.text for text in record(bare).texts] == ["Fog"]


def test_a_paragraph_after_a_plate_is_indented_like_any_other(tmp_path: Path) -> None:
    """The plate waits for a page of its own; the text around it runs on."""
    Image.new("RGB", (60, 80), "#204060").save(tmp_path / "boat.png")
    (tmp_path / "log.md").write_text("One two three.\n\n![](boat.png)\n\nFour five six.\n", encoding="utf-8")
    entry = TextInside(file="log.md", size=0.8, numbers="no")
    frame = PageFrame(30, 40, 2)
    first, second = record(entry.load(tmp_path).compose(frame).pages[0]).texts
    assert (first.text, second.text) == ("One two three.", "Four five six.")
    assert first.at.x == pytest.approx(frame.type_area(1).x)
    assert second.at.x - first.at.x == pytest.approx(0.8)


def test_the_default_size_is_legible_through_a_lens() -> None:
    """Five minutes of arc: 0.436 mm is the limit at 300 mm. Ten printer dots at 600 to the inch are 0.42 mm."""
    x_height = FACE.x_height * TextInside(file="x").size
    assert 0.40 < x_height < 0.436


def test_a_word_too_long_for_the_line_keeps_letters_and_their_accents_together() -> None:
    [first, *rest] = lines_on(set_text("e\u0301" * 40, PageFrame(9, 60, 2), 1.0).pages[0])
    assert all(line.text.startswith("e") and line.text.endswith("\u0301") for line in (first, *rest))
    assert len(rest) == 4


def test_letters_bound_by_a_joiner_are_not_parted() -> None:
    pair = "m\u200dm"
    boxes = Boxes(FOUNT, 3.5 * FOUNT.width("m"), hanging=False)
    assert len(boxes[pair * 5].stops) == 5
    assert [cut.at for cut in boxes.cuts[pair * 5]] == [3, 6, 9, 12]


def test_letters_of_indic_scripts_are_not_parted_within_a_cluster() -> None:
    """A virama joins a letter to the next one (Unicode, UAX #29, rule GB9c): क्ष is one cluster."""
    cluster = "\u0915\u094d\u0937"
    boxes = Boxes(FOUNT, 1.5 * FOUNT.width(cluster), hanging=False)
    assert len(boxes[cluster * 4].stops) == 4
    assert [cut.at for cut in boxes.cuts[cluster * 4]] == [3, 6, 9]


def test_endless_words_are_never_shaped_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    longest = 0
    shape = FACE.shape

    def watched(text: str, **keys: bool) -> Run:
        nonlocal longest
        longest = max(longest, len(text))
        return shape(text, **keys)

    monkeypatch.setattr(FACE, "shape", watched)
    boxes = Boxes(Fount({Style.ROMAN: FACE}, "en_US"), 100.0, hanging=True)
    word = boxes["x" * 5000]
    assert word.width == pytest.approx(5000 * FACE.shape("x").width)
    assert longest <= LONGEST_WORD


def test_a_text_without_spaces_of_a_megabyte_is_broken_in_reasonable_time() -> None:
    inside = set_text("x" * 1_000_000, PageFrame(15, 21, 2), 1.0)
    [note, lost] = inside.problems
    assert note.severity is Severity.NOTE
    assert lost.message == "1 word of the 1 of log.txt does not fit in 2 pages"


# ---- what is said


def test_overflow_is_an_error_with_what_would_help() -> None:
    [problem] = set_text(" ".join([SENTENCE] * 60), PageFrame(15, 21, 4), 1.2).problems
    assert str(problem) == "611 words of the 720 of log.txt do not fit in 4 pages; write pages: 28 or size: 1.35 pt"
    assert (problem.severity, problem.field) == (Severity.ERROR, ("file",))


def test_overflow_that_no_size_and_no_page_count_cures() -> None:
    [*_, problem] = set_text(" ".join([SENTENCE] * 9000), PageFrame(4, 6, 2), 0.8).problems
    assert problem.remedy == "shorten it to 7 words, or split it into volumes: even 2000 pages do not hold it"
    frame = PageFrame(4, 6, 2000, resolution_dpi=150)
    [*_, problem] = set_text(" ".join([SENTENCE] * 900), frame, 0.8).problems
    assert problem.remedy.endswith(" words, or split it into 2 volumes: even 2000 pages do not hold it")


def test_type_ten_times_too_large_is_told_with_what_was_meant() -> None:
    warning = next(p for p in set_text(SENTENCE, PageFrame(15, 21, 12), from_pt(22)).problems if p.field == ("size",))
    assert str(warning) == (
        "lines in 22 pt type hold about 3 letters: most words of log.txt are broken; did you mean 2.2 pt?"
    )
    assert warning.severity is Severity.WARNING
    [warning, *_] = set_text(SENTENCE, PageFrame(15, 21, 90), from_pt(15)).problems
    assert (warning.message[:30], warning.remedy) == ("lines in 15 pt type hold about", "did you mean 1.5 pt?")
    found = set_text(SENTENCE, PageFrame(15, 21, 90), from_pt(8)).problems
    assert found[0].remedy == "write size: 2.5 pt or smaller"
    assert not any("broken between" in problem.message for problem in found)
    assert not any("hold about" in p.message for p in set_text(SENTENCE, PageFrame(15, 21, 90), from_pt(7)).problems)


def test_type_that_is_too_large_for_the_page_is_an_error() -> None:
    inside = set_text("Wide words", PageFrame(15, 21, 2), 20.0)
    assert [str(problem) for problem in inside.problems] == [
        "log.txt does not fit in 56.7 pt type on a page of 15 mm × 21 mm: all of its 2 words are lost; "
        "write size: 2.5 pt or smaller"
    ]
    assert inside.problems[0].field == ("size",)
    [problem, *_] = set_text("Wide words", PageFrame(90, 6, 2), 20.0).problems
    assert problem.remedy == "write size: 11.2 pt or smaller"
    assert lines_on(inside.pages[0]) == []
    assert errors(set_text("Wide words", PageFrame(15, 21, 90), from_pt(27)).problems) == []


def test_type_of_few_printer_dots_is_a_warning() -> None:
    frame = PageFrame(15, 21, 2, resolution_dpi=300)
    [warning, *_] = set_text(SENTENCE, frame, from_pt(1.0)).problems
    assert str(warning) == (
        "small letters in 1 pt type are only 2.2 printer dots high: they print as texture; "
        "write size: 1.8 pt or larger, to be read through a lens"
    )
    assert (warning.severity, warning.field) == (Severity.WARNING, ("size",))
    assert [problem.field for problem in set_text(SENTENCE, frame, from_pt(1.8)).problems] == [("face",)]  # hairlines


def test_words_broken_between_letters_are_noted() -> None:
    frame = PageFrame(15, 60, 2)
    [note] = set_text(f"a {'m' * 40} b", frame, 1.0).problems
    assert str(note) == (
        "1 word is wider than the lines of log.txt and broken between letters; "
        "the first begins 'mmmmmmmmmm'; write a smaller size, or part such words by hand with soft hyphens"
    )
    assert note.severity is Severity.NOTE
    [note] = set_text(f"{'n' * 40} {'m' * 40} b", frame, 1.0).problems
    assert "begins 'nnn" in note.message
    assert note.message.startswith("2 words are wider than the lines of log.txt")
    [note] = set_text(f"Llan{'m' * 40}", frame, 1.0).problems
    assert "the first begins 'Llanmmm" in note.message


def test_a_text_that_leaves_a_leaf_empty_is_noted() -> None:
    [note] = set_text(SENTENCE, PageFrame(15, 21, 8, resolution_dpi=1200), 0.9).problems
    assert str(note) == (
        "log.txt fills 1 of 8 pages; the others stay empty; write pages: 2 for a thinner book, or a larger size, "
        "or add a part that takes what is left, such as dummy text, for a book as thick"
    )
    assert note.severity is Severity.NOTE
    # lines of 10 mm have 24 letters in type of 10/11 mm: no larger one is offered
    [note] = set_text(SENTENCE, PageFrame(15, 21, 8), 1.2).problems
    assert note.remedy == (
        "write pages: 2 for a thinner book, "
        "or add a part that takes what is left, such as dummy text, for a book as thick"
    )
    assert set_text(SENTENCE, PageFrame(15, 21, 2), 1.2).problems == ()


def test_text_and_typeface_that_cannot_be_used_are_both_reported(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as caught:
        TextInside(file="gone.txt", face="fonts/gone.ttf").load(tmp_path)
    assert [(problem.field, problem.message) for problem in caught.value.problems] == [
        (("face",), "there is no font file fonts/gone.ttf"),
        (("file",), "there is no text gone.txt"),
    ]
    with pytest.raises(ShelfFileError) as caught:
        TextInside(file="gone.txt", face="sanns").load(tmp_path)
    assert caught.value.problems[0].field == ("face",)
    assert caught.value.problems[0].remedy == "did you mean 'sans'?"


def test_what_the_manuscript_says_comes_with_the_pages(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text("Fog\tand rain")
    entry = TextInside(file="log.txt")
    inside = entry.load(tmp_path).compose(PageFrame(15, 21, 2, resolution_dpi=1200))
    assert [problem.message for problem in inside.problems] == ["log.txt has tabs, set as spaces"]
