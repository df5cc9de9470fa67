"""Front and back matter of whole books: it follows the text in face and language, and new kinds of pages."""

from __future__ import annotations

from pathlib import Path

import pytest
from pydantic import ValidationError

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Art
from bookmaker.ground.geometry import Size
from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.shelf_file.spec_errors import explain
from bookmaker.things.book.pages.front_matter import contents
from bookmaker.things.book.pages.front_matter.dedication import Dedication
from bookmaker.things.book.pages.front_matter.few_lines import few_lines
from bookmaker.things.book.pages.front_matter.phrases import PHRASES, language_of_letters
from bookmaker.things.book.pages.front_matter.title_page import TitlePage
from bookmaker.things.book.pages.patterns import dummy_text
from bookmaker.things.book.pages.patterns.ledger_paper import LedgerPaper, LedgerPaperPage
from bookmaker.things.book.pages.patterns.ruled import Ruled, RuledPage
from bookmaker.typesetting.book_type import BookType
from bookmaker.typesetting.display import bound as bound_words
from bookmaker.typesetting.display import broken, titled
from bookmaker.typesetting.lines.fount import Style
from bookmaker.typesetting.page import BookWords, Heading, Inside, PageFrame
from tests.kit.fonts import LETTERS, font_of_boxes
from tests.kit.front_matter import BOOK, SMALL, errors, inside, said, texts
from tests.kit.recording import record

OF_OWN_FACES = {"ar", "fa", "hi", "ja", "ko", "zh", "zh-hant"}
"""Languages in whose scripts no bundled typeface is."""


def faces(page: Art) -> set[str]:
    return {run.typeface.name for text in texts(page) for _, run in text.line.runs if run.text.strip()}


# ---- face and language of the text


@pytest.mark.parametrize(("face", "name"), [("old style", "EB Garamond"), ("sans", "Open Sans")])
def test_front_and_back_matter_follow_the_face_of_the_text(tmp_path: Path, face: str, name: str) -> None:
    (tmp_path / "a.txt").write_text("The quay was long.", encoding="utf-8")
    parts = [
        {"kind": "half title"},
        {"kind": "title page"},
        {"kind": "dedication", "text": "For the others"},
        {"kind": "epigraph", "text": "Nobody waits."},
        {"kind": "contents"},
        {"kind": "text", "file": "a.txt", "face": face, "listed_as": "The Quay"},
        {"kind": "ruled", "pages": "1", "numbers": "yes"},
        {"kind": "colophon"},
    ]
    found = inside(parts, 9, tmp_path)
    assert errors(found) == []
    printed = [page for page in found.pages if page is not NOTHING]
    assert [{part.split(" Regular")[0] for part in faces(page)} for page in printed] == [{name}] * 8
    assert f"and set in {bundled(face).name}" in " ".join(said(found.pages[8]))
    parts[1]["face"] = parts[7]["face"] = "text"
    other = inside(parts, 9, tmp_path)
    assert faces(other.pages[2]) == faces(other.pages[8]) == {bundled("text").name}
    # what it names is the face of the text, whatever it wears itself
    assert f"and set in {bundled(face).name}" in " ".join(said(other.pages[8]))


def test_a_colophon_names_the_faces_of_all_texts(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("The quay was long.", encoding="utf-8")
    text = {"kind": "text", "file": "a.txt"}
    found = inside([{**text, "face": "sans"}, {**text, "face": "typewriter"}, {"kind": "colophon"}], 4, tmp_path)
    assert "and set in Open Sans, Courier Prime" in " ".join(said(found.pages[2]))


@pytest.mark.parametrize(
    ("language", "text", "lines", "over"),
    [
        ("de", "Der Kai war lang.", ["von P. Stannard", "gemacht für The Net Loft"], "Inhalt"),
        ("ru", "Причал был длинным.", ["Автор: P. Stannard", "Сделано для: The Net Loft"], "Содержание"),
        ("el", "Η προβλήτα ήταν μεγάλη.", ["Συγγραφέας: P. Stannard"], "Περιεχόμενα"),
        ("cs", "Molo bylo dlouhé.", ["P. Stannard", "The Net Loft", "Noto Serif"], ""),
        ("none", "Molo bylo dlouhé.", ["P. Stannard", "The Net Loft"], ""),
        # a language left at its default cannot be that of another script
        ("en", "Причал был длинным.", ["P. Stannard", "The Net Loft"], ""),
    ],
)
def test_what_a_book_says_of_itself_is_said_in_its_language(
    tmp_path: Path, language: str, text: str, lines: list[str], over: str
) -> None:
    (tmp_path / "a.txt").write_text(text, encoding="utf-8")
    parts = [
        {"kind": "contents", "numbers": "no"},
        {"kind": "text", "file": "a.txt", "language": language, "listed_as": "A"},
        {"kind": "colophon"},
    ]
    found = inside(parts, 4, tmp_path, PageFrame(30, 42, 0))
    assert said(found.pages[0]) == ([over] if over else []) + ["A", "2"]
    assert [line for line in lines if line not in said(found.pages[2])] == []
    assert not any("made for" in line or line.startswith("by ") for line in said(found.pages[2]))


def test_bundled_typefaces_have_the_letters_of_all_phrases() -> None:
    for language, phrases in PHRASES.items():
        if language in OF_OWN_FACES:
            continue
        for face in ("sans",) if language == "he" else ("text", "sans", "old style"):
            assert bundled(face).missing("".join(phrases)) == []


@pytest.mark.parametrize(
    ("language", "text", "over", "by"),
    [
        ("ar", "منارة", "المحتويات", "تأليف H"),
        ("fa", "فانوس", "فهرست", "نوشتهٔ H"),
        ("hi", "दीप", "विषय-सूची", "लेखक: H"),
        ("ja", "島の灯台", "目次", "H著"),
        ("ko", "등대", "차례", "지은이 H"),
        ("zh", "灯塔", "目录", "H著"),
        ("zh-Hant", "燈塔", "目錄", "H著"),
        ("zh-TW", "燈塔", "目錄", "H著"),
    ],
)
def test_books_in_scripts_that_no_typeface_here_has_say_it_too(
    language: str, text: str, over: str, by: str, tmp_path: Path
) -> None:
    assert language_of_letters(text) == {"fa": "ar"}.get(language, language.partition("-")[0])
    (tmp_path / "a.txt").write_text(text, encoding="utf-8")
    parts = [
        {"kind": "contents", "numbers": "no"},
        {"kind": "text", "file": "a.txt", "face": "boxes.ttf", "language": language, "listed_as": text},
        {"kind": "colophon"},
    ]
    frame = PageFrame(30, 42, 0, book=BookWords(text, "H", "H"))
    for known, heading in ((text, []), (text + over, [over])):
        font_of_boxes(tmp_path / "boxes.ttf", "".join(dict.fromkeys(f"{LETTERS}{known}{by}")))
        found = inside(parts, 3, tmp_path, frame)
        # a heading that nobody wrote is left out where its letters are not there
        assert said(found.pages[0])[: len(heading) + 1] == [*heading, text]
        assert by in said(found.pages[2])
        assert errors(found) == []


def test_a_hebrew_book_needs_no_face_but_that_of_its_text(tmp_path: Path) -> None:
    font_of_boxes(tmp_path / "boxes.ttf")
    (tmp_path / "a.txt").write_text("שומר המגדלור מדליק את המנורה", encoding="utf-8")
    frame = PageFrame(15, 21, 0, right_to_left=True, book=BookWords("שומר", "אבג", "The Loft"))
    parts = [
        {"kind": "title page"},
        {"kind": "contents"},
        {"kind": "text", "file": "a.txt", "face": "boxes.ttf", "listed_as": "אבג"},
        {"kind": "colophon"},
    ]
    found = inside(parts, 4, tmp_path, frame)
    assert errors(found) == []
    assert faces(found.pages[0]) == faces(found.pages[3]) == {"Boxes"}
    # the made-up face has no capitals: the name of the shelf, which nobody wrote for this page, is left out
    assert said(found.pages[3]) == ["שומר", "אבג"]


def test_letters_the_text_face_lacks_are_stood_in_for_but_not_in_a_face_that_was_named(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("Lamp", encoding="utf-8")
    text = {"kind": "text", "file": "a.txt", "face": "typewriter"}
    frame = PageFrame(15, 21, 0, book=BookWords("Ὁ λύχνος", "", "Loft"))
    found = inside([{"kind": "title page"}, text], 2, tmp_path, frame)
    assert errors(found) == []
    assert faces(found.pages[0]) == {"Noto Serif"}
    named = inside([{"kind": "title page", "face": "typewriter"}, text], 2, tmp_path, frame)
    assert errors(named) != []


# ---- titles


def test_dashes_and_points_never_begin_a_line() -> None:
    assert bound_words(["Fog", "–", "Ice", "·", "Snow", "&", "Co"]) == ["Fog –", "Ice ·", "Snow &", "Co"]
    assert bound_words(["—", "Fog"]) == ["— Fog"]
    lines = broken(bundled("text"), "Ὁ λύχνος · Маяк", 1.0, 4.4, 5)
    assert [line.text for line in lines] == ["Ὁ", "λύχνος ·", "Маяк"]


def test_a_title_is_rather_set_smaller_than_badly_broken() -> None:
    face, name = bundled("text"), "Plain Suppers for Lighthouse Families"
    plain = [line.text for line in broken(face, name, 2.1, 13.0, 5)]
    assert plain == ["Plain", "Suppers for", "Lighthouse", "Families"]
    better = titled(face, name, 2.1, 13.0, 5)
    assert [line.text for line in better] == ["Plain Suppers", "for Lighthouse", "Families"]
    assert 0.66 * 2.1 < better[0].size < 2.1
    [alone] = titled(face, "Fog", 2.1, 13.0, 5)
    assert alone.size == 2.1


def test_a_long_title_gives_way_before_the_imprint_does() -> None:
    name = "A Complete and Faithful Account of the Building of the Long Quay"
    frame = PageFrame(15, 21, 0, book=BookWords(name, "P. Stannard"))
    whole = {"subtitle": "with nine charts and a song", "imprint": "Candle Press", "place": "Thaw", "year": "1889"}
    page = inside([{"kind": "title page", **whole}], 2, Path(), frame).pages[0]
    imprint, author, title = (
        next(text for text in texts(page) if text.text == said).line.size
        for said in ("Candle Press", "P. Stannard", "of the Long Quay")
    )
    assert imprint > 0.9 * 21 / 30
    assert 1.2 * author < title < 21 / 10 / 2


@pytest.mark.parametrize("kind", ["title page", "half title", "colophon", "contents", "dedication", "epigraph"])
def test_front_matter_that_prints_as_texture_is_noted(kind: str) -> None:
    frame = PageFrame(15, 21, 0, book=BOOK) if kind == "contents" else PageFrame(3, 4, 0, book=BOOK)
    keys = {"text": "To all who waited for the ferry"} if kind in ("dedication", "epigraph") else {}
    keys |= {"size": "0.6 pt"} if kind == "contents" else {}
    parts = [{"kind": kind, **keys}, {"kind": "ruled", "listed_as": "Fog"}]
    notes = [str(problem) for problem in inside(parts, 4, Path(), frame).problems if problem.severity is Severity.NOTE]
    assert [note for note in notes if "printer dots high" in note] != []
    parts[0].pop("size", "")
    large = inside(parts, 4, Path(), PageFrame(30, 42, 0, book=BOOK))
    assert [problem for problem in large.problems if "printer dots" in str(problem)] == []


def with_title(folder: Path, parts: list[dict[str, str]], title: str = "The Long Quay") -> Inside:
    (folder / "a.md").write_text(f"# {title}\n\n## One\n\nFog.\n\n## Two\n\nIce.\n", encoding="utf-8")
    return inside([*parts, {"kind": "text", "file": "a.md"}], 12, folder)


def test_a_title_that_has_a_page_is_not_said_again_and_never_numbered(tmp_path: Path) -> None:
    once = with_title(tmp_path, [{"kind": "title page"}])
    assert said(once.pages[1]) == ["One", "Fog.", "2"]
    assert [heading.text for heading in once.headings] == ["One", "Two"]
    by_text = with_title(tmp_path, [{"kind": "blank", "pages": "1"}])
    assert said(by_text.pages[1]) == ["The Long Quay"]
    assert said(by_text.pages[2])[-1] == "3"
    # a title that the title page does not say stays where it is
    other = with_title(tmp_path, [{"kind": "title page"}], "Part the First")
    assert " ".join(said(other.pages[1])) == "Part the First"


# ---- contents


@pytest.mark.parametrize("width", [8.0, 12.0, 15.0])
@pytest.mark.parametrize("right_to_left", [False, True])
def test_a_table_has_one_size_and_every_entry_a_leader_to_its_number(width: float, right_to_left: bool) -> None:
    names = ["Fog", "In which nothing happens for a long time, and then the lamp goes out", "Ice and Navigationally"]
    frame = PageFrame(width, 21, 0, right_to_left, book=BOOK)
    parts = [{"kind": "contents", "numbers": "no"}, *({"kind": "blank", "pages": "1", "listed_as": n} for n in names)]
    found = inside([*parts, {"kind": "ruled"}], 20, Path(), frame)
    pages = [record(page) for page in found.pages[:3] if page is not NOTHING]
    rows = [text for page in pages for text in page.texts if text.text != "Contents"]
    assert len({text.line.size for text in rows}) == 1
    numbers = [text for text in rows if text.text.isdigit()]
    leaders = [stroke for page in pages for stroke in page.strokes if stroke.pen.dash]
    assert len(numbers) == len(leaders) == len(names)
    for number, leader in zip(numbers, leaders, strict=True):
        assert leader.path.points()[0].y == pytest.approx(number.at.y + leader.pen.width / 2)
    last = [text for text in rows if "out" in text.text]
    assert last[0].at.y == numbers[1].at.y


def test_no_entry_is_parted_by_the_end_of_a_page() -> None:
    long = "On the serving of guests who come by the mail boat without a word of warning"
    names = ("Oats", "Fog", "Ice", "Oil", long, "Salt")
    listed = [{"kind": "blank", "pages": "1", "listed_as": name} for name in names]
    parts = [{"kind": "contents", "numbers": "no"}, *listed, {"kind": "ruled"}]
    found = inside(parts, 20, Path(), PageFrame(12, 17, 0))
    first, second = (said(page) for page in found.pages[:2])
    assert first == ["Contents", "Oats", "3", "Fog", "4", "Ice", "5", "Oil", "6"]
    assert " ".join(second) == f"{long} 7 Salt 8"


def test_the_table_does_not_change_its_length_with_the_figures_of_its_numbers() -> None:
    # page numbers of two figures at first; with the table's own pages before them of three, and the names turn over
    listed = [{"kind": "ruled", "pages": "1", "listed_as": "Lamp iiiii"}] * 10
    parts = [{"kind": "contents"}, {"kind": "blank", "pages": "88"}, *listed, {"kind": "ruled"}]
    assert errors(inside(parts, 300, Path(), PageFrame(9, 17, 0))) == []


# ---- dedication, epigraph, half title, colophon


def test_lines_stay_as_they_were_written_and_asterisks_are_emphasis() -> None:
    parts = [{"kind": "dedication", "text": "For *all\nwho* wait\n\n**2 * 3**"}]
    page = inside(parts, 2, Path(), PageFrame(30, 42, 0)).pages[0]
    assert said(page) == ["For all", "who wait", "2 * 3"]
    styled = [(run.text, run.typeface.name) for text in texts(page) for _, run in text.line.runs if run.text.strip()]
    assert styled[:4] == [
        ("For", "Noto Serif"),
        ("all", "Noto Serif Italic"),
        ("who", "Noto Serif Italic"),
        ("wait", "Noto Serif"),
    ]
    assert {name for text, name in styled[4:]} == {"Noto Serif Bold"}
    heights = [text.at.y for text in texts(page)]
    assert heights[1] - heights[2] == pytest.approx(2 * (heights[0] - heights[1]))
    assert heights[0] < 42 * 6 / 9 < heights[0] + texts(page)[0].line.size


def test_the_colophon_keeps_lines_and_emphasis() -> None:
    page = inside([{"kind": "colophon", "text": "Set by hand.\n*Finis.*"}], 2, Path(), PageFrame(30, 42, 0)).pages[0]
    assert said(page) == ["Set by hand.", "Finis."]
    assert texts(page)[1].line.runs[0][1].typeface is bundled("text italic")


@pytest.mark.parametrize("right_to_left", [False, True])
def test_an_epigraph_is_a_block_with_its_source_at_the_other_end(right_to_left: bool) -> None:
    part = {"kind": "epigraph", "text": "Nobody waits longer\nthan a lamp", "source": "Oil book"}
    frame = PageFrame(30, 42, 0, right_to_left)
    first, second, source = texts(inside([part], 2, Path(), frame).pages[0])
    begins = (first.end.x, second.end.x) if right_to_left else (first.at.x, second.at.x)
    assert begins[0] == pytest.approx(begins[1])
    assert (source.at.x, source.end.x)[not right_to_left] == pytest.approx(
        min(first.at.x, second.at.x) if right_to_left else max(first.end.x, second.end.x)
    )
    middle = frame.type_area(1).centre.x
    assert (first.at.x + first.end.x) / 2 == pytest.approx(middle)


def test_a_half_title_is_the_title_alone_and_smaller_than_on_the_title_page() -> None:
    found = inside([{"kind": "half title"}, {"kind": "title page"}], 3, Path())
    half, between, whole = (texts(page) for page in found.pages)
    assert between == []
    assert " ".join(text.text for text in half) == "The Long Quay"
    assert half[0].line.size < max(text.line.size for text in whole)


def test_a_few_lines_are_of_one_size_and_fit_their_room() -> None:
    family = {Style.ROMAN: bundled("text")}
    written = ["Short", "A line that is a good deal longer", "Navigation"]
    few = few_lines(written, family, 3.0, Size(9, 6), SMALL)
    assert few.height <= 6 + 1e-6
    assert all(line.width <= 9 + 1e-6 for line in few.lines)
    assert few.size < 3.0


@pytest.mark.parametrize(
    ("text", "message"),
    [("", "is empty"), ("a\n" * 40, "has 40 lines"), ("a" * 1001, "has 1001 characters"), ("a\x07b", "U+0007")],
)
def test_lines_that_cannot_be_set_are_refused(text: str, message: str) -> None:
    with pytest.raises(ValidationError) as caught:
        Dedication(text=text + ("b" if text.startswith("a\n") else ""))
    assert message.replace("40", "41") in str(caught.value) or message in str(caught.value)


def test_a_face_without_italic_is_told() -> None:
    found = inside([{"kind": "dedication", "text": "*All*", "face": "script"}], 2, Path())
    assert "Dancing Script has no italic here, so the dedication is set without" in str(found.problems[0])


# ---- books that are read from the right


def test_dummy_text_is_mirrored_in_books_read_from_the_right() -> None:
    left, right = (PageFrame(15, 21, 2, side, book=BOOK, margins=None) for side in (False, True))
    entry = dummy_text.DummyText(chapter=0, numbers=False)
    [here, _], [there, _] = (entry.compose(frame).pages for frame in (left, right))
    assert isinstance(here, dummy_text.DummyPage)
    assert isinstance(there, dummy_text.DummyPage)
    assert here.rows == there.rows
    for art, frame, mirrored in ((here, left, False), (there, right, True)):
        area = frame.type_area(1)
        for row, text in zip(art.rows, record(art).texts, strict=True):
            edges = [text.at.x - area.x, area.right - text.at.x - text.line.width]
            expected = [row.start * area.width, (1 - row.end) * area.width]
            near, far = edges[::-1] if mirrored else edges
            assert near == pytest.approx(expected[0], abs=1e-6)
            assert far >= expected[1] - 1e-6
            assert row.end < 1 or far == pytest.approx(0.0, abs=1e-6)


def test_a_ledger_read_from_the_right_has_its_dates_there() -> None:
    here, there = (LedgerPaperPage(LedgerPaper(), PageFrame(15, 21, 1, side)) for side in (False, True))
    assert there.dates() == pytest.approx([15 - x for x in here.dates()])
    assert there.sums() == pytest.approx([15 - x for x in here.sums()])
    assert max(here.dates()) < min(here.sums())


@pytest.mark.parametrize("right_to_left", [False, True])
@pytest.mark.parametrize("number", [1, 2])
def test_the_margin_line_lies_at_the_fore_edge(right_to_left: bool, number: int) -> None:
    frame = PageFrame(15, 21, 2, right_to_left)
    [upright] = [
        stroke
        for stroke in record(RuledPage(Ruled(margin_line=True), frame, number)).strokes
        if stroke.path.points()[0].x == stroke.path.points()[1].x
    ]
    spine_on_left = (number == 1) is not right_to_left
    # the outer margin by ninths is two ninths of the width
    assert upright.path.points()[0].x == pytest.approx(15 * 7 / 9 if spine_on_left else 15 * 2 / 9)


def test_contents_are_called_what_they_are_in_the_language_of_the_text() -> None:
    only = BookType({Style.ROMAN: bundled("sans")}, ("Open Sans",), "fr")
    frame = PageFrame(15, 21, 1, contents=(Heading("Brume", 3),), type=only)
    assert said(contents.Contents(numbers=False).compose(None, frame).pages[0]) == ["Table", "Brume", "3"]


def test_date_on_a_title_page_is_called_year() -> None:
    with pytest.raises(ValidationError) as caught:
        TitlePage.model_validate({"date": "1889", "publisher": "Candle"})
    remedies = {str(problem.field[-1]): problem.remedy for problem in explain(caught.value, TitlePage)}
    assert remedies == {"date": "did you mean year?", "publisher": "did you mean imprint?"}
