"""Title page, table of contents and colophon: what they say, where it stands, and page numbers that are right."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Art, Colour
from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.typefaces import bundled, load_typeface
from bookmaker.things.book.pages.front_matter.colophon import Colophon
from bookmaker.things.book.pages.front_matter.title_page import TitlePage
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.kinds import AnyInside
from bookmaker.things.book.pages.part import Part
from bookmaker.things.book.pages.patterns.dummy_text import DummyPage
from bookmaker.typesetting.display import broken
from bookmaker.typesetting.page import BookWords, Inside, PageFrame
from tests.kit.fonts import font_of_boxes
from tests.kit.recording import RecordingCanvas, Written, record

BOOK = BookWords("The Long Quay", "P. Stannard", "The Net Loft")
TITLES = st.text(st.sampled_from("abcdefgh iIlmW’-éß"), min_size=1, max_size=300).filter(str.strip)


def lines(page: Art) -> list[str]:
    return [text.text for text in record(page).texts]


def ink_of(text: Written) -> Rect:
    """The rectangle around a line: its width, and from its lowest to its highest ink."""
    runs = [run for _, run in text.line.runs]
    size = text.line.size
    bottom, top = min(run.bottom for run in runs) * size, max(run.top for run in runs) * size
    return Rect(text.at.x, text.at.y + bottom, text.end.x - text.at.x, top - bottom)


def set_page(entry: Part, frame: PageFrame) -> Inside:
    return entry.load(Path()).compose(frame)


# ---- display lines


@given(text=TITLES, size=st.floats(0.2, 5), measure=st.floats(1, 60), most=st.integers(1, 6))
def test_lines_are_no_wider_than_the_measure_and_lose_no_word(
    text: str, size: float, measure: float, most: int
) -> None:
    found = broken(bundled("text"), text, size, measure, most)
    assert len(found) <= most
    assert " ".join(line.text for line in found) == " ".join(text.split())
    assert all(line.width <= measure + 1e-6 for line in found)
    assert len({line.size for line in found}) == 1
    assert found[0].size <= size


def test_lines_are_about_equally_long_if_not_told_to_be_full() -> None:
    face, text = bundled("text"), "The History of the Long Quay and the Men Who Built It"
    even = broken(face, text, 1.0, 18.0, 4)
    full = broken(face, text, 1.0, 18.0, 4, even=False)
    assert len(even) == len(full) == 2
    assert full[0].width > even[0].width
    assert max(line.width for line in even) < max(line.width for line in full)


def test_marks_in_titles_are_those_of_print_if_the_typeface_has_them(tmp_path: Path) -> None:
    face, bare, frame = (
        bundled("text"),
        load_typeface(font_of_boxes(tmp_path / "boxes.ttf"), "boxes"),
        PageFrame(15, 21, 1),
    )
    for written, printed in (("The Keepers' Log's End", "The Keepers’ Log’s End"), ("Fog's 'Log'", "Fog’s ‘Log’")):
        assert frame.printed(written, face) == printed
        assert frame.printed(written, face, bare) == written


# ---- title page


def test_a_title_page_says_what_the_shelf_file_says_of_the_book() -> None:
    entry = TitlePage(subtitle="A survey", imprint="Candle Press", place="Thaw", year="1889")
    [page] = set_page(entry, PageFrame(15, 21, 1, book=BOOK)).pages
    assert lines(page) == ["P. Stannard", "The Long", "Quay", "A survey", "Thaw", "Candle Press", "1889"]
    by_itself = set_page(TitlePage(), PageFrame(15, 21, 1, book=BookWords("Fog")))
    assert lines(by_itself.pages[0]) == ["Fog"]
    assert by_itself.problems == ()


@given(
    title=TITLES,
    author=st.text("abW ", max_size=60),
    imprint=TITLES,
    size=st.tuples(st.floats(4, 60), st.floats(5, 80)),
    number=st.integers(1, 2),
)
def test_a_title_page_stays_in_its_type_area_whatever_it_says(
    title: str, author: str, imprint: str, size: tuple[float, float], number: int
) -> None:
    frame = PageFrame(*size, 1, first=number, book=BookWords(title, author.strip()))
    entry = TitlePage(subtitle=title, imprint=imprint, place="Thaw", year="1889")
    drawn = record(set_page(entry, frame).pages[0])
    area = frame.type_area(1)
    boxes = [ink_of(text) for text in drawn.texts]
    slack = 0.02 * size[1]
    for box, text in zip(boxes, drawn.texts, strict=True):
        assert area.x - 1e-6 <= box.x
        assert box.right <= area.right + 1e-6
        assert area.y - slack <= box.y
        assert box.top <= area.top + slack + 0.4 * text.line.size  # accents over capitals
        assert (box.x + box.right) / 2 == pytest.approx(area.centre.x)
    baselines = [text.at.y for text in drawn.texts]
    assert baselines == sorted(baselines, reverse=True)


def test_a_full_title_page_is_set_smaller_until_head_and_foot_keep_apart() -> None:
    book = BookWords("The Remarkable and Entirely True History of the Long Quay", "Philippa Stannard-Grell", "The Loft")
    entry = TitlePage(subtitle="with nine charts and a song", imprint="Candle Press", place="Thaw", year="1889")
    frame = PageFrame(15, 21, 1, book=book)
    drawn = record(set_page(entry, frame).pages[0])
    *head, place, _, year = drawn.texts
    assert place.text == "Thaw"
    [rule] = drawn.fills
    assert head[-1].at.y - 0.2 > rule.path.points()[0].y > place.at.y + place.line.size
    assert year.at.y > frame.type_area(1).y


def test_the_title_is_the_largest_and_has_its_colour_as_has_the_rule_under_it() -> None:
    entry = TitlePage(imprint="Candle Press", ink="#7a2f2a")
    drawn = record(set_page(entry, PageFrame(15, 21, 1, book=BOOK)).pages[0])
    sizes = {text.text: text.line.size for text in drawn.texts}
    assert max(sizes, key=lambda text: sizes[text]) in {"The Long", "Quay"}
    assert {text.text for text in drawn.texts if text.colour == Colour.from_hex("#7a2f2a")} == {"The Long", "Quay"}
    [rule] = drawn.fills
    assert rule.colour == Colour.from_hex("#7a2f2a")
    places = {text.text: text.at.y for text in drawn.texts}
    assert places["Quay"] > rule.path.points()[0].y > places["Candle Press"]


def test_more_pages_of_a_title_page_stay_blank() -> None:
    pages = set_page(TitlePage(), PageFrame(15, 21, 3, book=BOOK)).pages
    assert [page is NOTHING for page in pages] == [False, True, True]


# ---- colophon


def test_a_colophon_says_book_shelf_typeface_and_imprint_on_its_last_page() -> None:
    entry = Colophon(imprint="Candle Press", place="Thaw", year="1889")
    *before, last = set_page(entry, PageFrame(30, 42, 3, book=BOOK)).pages
    assert before == [NOTHING, NOTHING]
    assert lines(last) == [
        "The Long Quay",
        "by P. Stannard",
        "made for The Net Loft",
        "and set in Noto Serif",
        "Candle Press, Thaw, 1889",
    ]
    own = set_page(Colophon(text="Set by hand."), PageFrame(30, 42, 1, book=BOOK))
    assert lines(own.pages[0]) == ["Set by hand."]


@given(text=TITLES, size=st.tuples(st.floats(4, 60), st.floats(5, 80)))
def test_a_colophon_stays_in_its_type_area(text: str, size: tuple[float, float]) -> None:
    frame = PageFrame(*size, 1, book=BOOK)
    drawn = record(set_page(Colophon(text=text), frame).pages[0])
    area = frame.type_area(1)
    for written in drawn.texts:
        assert area.grown(1e-6, 0.02 * size[1], 1e-6, 1e-6).contains(ink_of(written))


# ---- table of contents


def bound(parts: Sequence[dict[str, str]], pages: int, *, right_to_left: bool = False) -> Inside:
    entry = TypeAdapter(AnyInside).validate_python(list(parts))
    frame = PageFrame(15, 21, pages, right_to_left, book=BOOK)
    return load_inside(entry, Path()).compose(frame)


def table(inside: Inside, first: int, last: int) -> dict[str, int]:
    """What the table of contents on these pages says: rows read as words and the number at their end."""
    found: dict[str, int] = {}
    words = ""
    for page in inside.pages[first - 1 : last]:
        for text in lines(page):
            if text.isdigit() and words:
                found[words] = int(text)
                words = ""
            elif text != "Contents":
                words = f"{words} {text}".strip()
    return found


def listed(folder: Path, text: str, **keys: str) -> list[list[str]]:
    """The rows of a table of contents over a text with these keys, each its words and its number if it has one."""
    (folder / "log.md").write_text(text, encoding="utf-8")
    entry = TypeAdapter(AnyInside).validate_python([{"kind": "contents"}, {"kind": "text", "file": "log.md", **keys}])
    page = load_inside(entry, folder).compose(PageFrame(30, 42, 12, book=BOOK)).pages[0]
    rows: dict[float, list[str]] = {}
    for written in record(page).texts[1:-1]:
        rows.setdefault(written.at.y, []).append(written.text)
    return list(rows.values())


def test_a_part_and_what_opens_it_are_listed_once(tmp_path: Path) -> None:
    one = "# Fog\n\nThick."
    assert listed(tmp_path, one) == [["Fog", "2"]]
    assert listed(tmp_path, one, listed_as="The Fogs") == [["The Fogs", "2"]]
    titled = "# Salt\n\nby the sea\n\n## Fog\n\nThick.\n\n## Rain\n\nWet."
    assert listed(tmp_path, titled) == [["Salt", "2"], ["Fog", "3"], ["Rain", "4"]]
    assert listed(tmp_path, titled, listed_as="The Salts") == [["The Salts", "2"], ["Fog", "3"], ["Rain", "4"]]


def test_a_part_whose_first_chapter_opens_it_leaves_the_page_to_that(tmp_path: Path) -> None:
    two = "# Fog\n\nThick.\n\n# Rain\n\nWet."
    assert listed(tmp_path, two, listed_as="Weather") == [["Weather"], ["Fog", "2"], ["Rain", "3"]]
    assert listed(tmp_path, two, listed_as="Fog") == [["Fog", "2"], ["Rain", "3"]]
    before = "Clear.\n\n" * 60 + two
    first, *chapters = listed(tmp_path, before, listed_as="Weather")
    assert (first, [words for words, _ in chapters]) == (["Weather", "2"], ["Fog", "Rain"])


def test_chapters_of_a_listed_part_stand_in_under_it(tmp_path: Path) -> None:
    (tmp_path / "log.md").write_text("# Fog\n\nThick.\n\n# Rain\n\nWet.", encoding="utf-8")
    parts = [{"kind": "contents"}, {"kind": "text", "file": "log.md", "listed_as": "Weather"}]
    entry = TypeAdapter(AnyInside).validate_python(parts)
    for right_to_left in (False, True):
        frame = PageFrame(15, 21, 12, right_to_left, book=BOOK)
        page = load_inside(entry, tmp_path).compose(frame).pages[0]
        found = {text.text: text for text in record(page).texts}
        if right_to_left:
            assert found["Fog"].end.x == found["Rain"].end.x < found["Weather"].end.x
        else:
            assert found["Fog"].at.x == found["Rain"].at.x > found["Weather"].at.x


@given(
    lengths=st.lists(st.integers(1, 4), min_size=1, max_size=60),
    before=st.integers(1, 4),
    begins=st.sampled_from(["new page", "recto"]),
    right_to_left=st.booleans(),
)
def test_the_table_of_contents_names_the_page_on_which_each_part_begins(
    lengths: list[int], before: int, begins: str, right_to_left: bool
) -> None:
    chapters = [
        {
            "kind": "dummy text",
            "listed_as": f"Part {chr(65 + number // 26)}{chr(65 + number % 26)}",
            "pages": str(pages),
            "begins": begins,
            "numbers": "no",
            "chapter": "0",
        }
        for number, pages in enumerate(lengths)
    ]
    front = [
        {"kind": "blank", "pages": str(before), "listed_as": "not what went before"},
        {"kind": "contents", "numbers": "no"},
    ]
    inside = bound([*front, *chapters, {"kind": "blank"}], 2 * sum(lengths) + before + 12, right_to_left=right_to_left)
    assert inside.problems == ()
    begin = [number for number, page in enumerate(inside.pages, start=1) if begins_part(inside, number)]
    listed = table(inside, before + 1, min(begin) - 1)
    assert listed == {chapter["listed_as"]: number for chapter, number in zip(chapters, begin, strict=True)}


def begins_part(inside: Inside, number: int) -> bool:
    """Whether a part of dummy text begins on a page: the page shows another part than the one before."""
    here, before = (inside.pages[place - 1] if place else None for place in (number, number - 1))
    own = here.frame.first if isinstance(here, DummyPage) else None
    return own is not None and own != (before.frame.first if isinstance(before, DummyPage) else None)


def test_a_table_at_the_end_lists_the_whole_book() -> None:
    inside = bound(
        [
            {"kind": "ruled", "pages": "3", "listed_as": "Lines"},
            {"kind": "squared", "pages": "2", "listed_as": "Squares"},
            {"kind": "contents", "numbers": "no"},
        ],
        6,
    )
    assert table(inside, 6, 6) == {"Lines": 1, "Squares": 4}


def test_long_headings_go_on_in_the_next_line_and_their_number_stands_at_the_end() -> None:
    name = "In which nothing happens for a long time and then the lamp goes out"
    inside = bound([{"kind": "contents", "numbers": "no"}, {"kind": "ruled", "listed_as": name}], 6)
    assert table(inside, 1, 1) == {name: 2}
    drawn = record(inside.pages[0])
    words = [text for text in drawn.texts if text.text in name]
    assert len(words) > 1
    assert {round(text.at.x - words[0].at.x, 6) for text in words[1:]} == {round(0.8 * 2.2 / 72 * 25.4, 6)}
    number = next(text for text in drawn.texts if text.text == "2")
    assert number.at.y == words[-1].at.y


@pytest.mark.parametrize("right_to_left", [False, True])
def test_numbers_stand_at_the_far_edge_and_dots_lead_there_without_touching(right_to_left: bool) -> None:
    names = ["Fog", "The Long Way Round"]
    parts = [{"kind": "ruled", "pages": "9", "listed_as": name} for name in names]
    inside = bound([{"kind": "contents", "numbers": "no"}, *parts], 20, right_to_left=right_to_left)
    drawn: RecordingCanvas = record(inside.pages[0])
    area = PageFrame(15, 21, 1, right_to_left).type_area(1)
    rows = {text.text: text for text in drawn.texts}
    for name, page, dots in zip(names, ("2", "11"), drawn.strokes, strict=True):
        words, number = rows[name], rows[page]
        near, far = (number, words) if right_to_left else (words, number)
        assert near.at.x == pytest.approx(area.x)
        assert far.end.x == pytest.approx(area.right)
        reach = sorted(point.x for point in dots.path.points())
        assert near.end.x < reach[0] < reach[1] < far.at.x
    # the dots of all rows stand one below the other
    starts = {round(stroke.path.points()[0].x % sum(stroke.pen.dash), 6) for stroke in drawn.strokes}
    assert len(starts) == 1


def test_a_table_with_nothing_to_list_is_a_warning() -> None:
    inside = bound([{"kind": "contents"}, {"kind": "ruled"}], 4)
    assert [(str(problem), problem.severity.value) for problem in inside.problems] == [
        (
            "the table of contents has nothing to list; add listed_as: with a name to the parts that it shall list",
            "warning",
        )
    ]


def test_a_table_longer_than_the_pages_it_was_given_is_an_error() -> None:
    chapters = [{"kind": "blank", "pages": "1", "listed_as": f"Part {number}"} for number in range(30)]
    inside = bound([{"kind": "contents", "pages": "1"}, *chapters, {"kind": "ruled"}], 40)
    [problem] = inside.problems
    # 14 mm hold 13 lines of 2.2 pt at 1.35, less 2 for the title
    assert str(problem) == (
        "19 lines of the table of contents have no room; "
        "leave its pages out, for as many as it needs, or write a smaller size"
    )
    assert (problem.severity.value, problem.field) == ("error", (0, "pages"))


def test_a_table_in_type_too_large_for_the_page_is_an_error() -> None:
    inside = bound([{"kind": "contents", "size": "14 pt"}, {"kind": "ruled", "listed_as": "Fog"}], 4)
    # title and one line take 3 lines at 1.35 em of the 14 mm of the type area: 3.457 mm, 9.79 pt
    assert [(str(problem), problem.field) for problem in inside.problems] == [
        (
            "the table of contents does not fit in 14 pt type on a page of 15 mm × 21 mm; "
            "write size: 9.7 pt or smaller",
            (0, "size"),
        )
    ]


# ---- typefaces


@pytest.mark.parametrize("kind", ["title page", "contents", "colophon"])
def test_letters_a_typeface_does_not_have_are_an_error(kind: str) -> None:
    entry = TypeAdapter(AnyInside).validate_python([{"kind": kind}, {"kind": "ruled", "listed_as": "雾 Fog"}])
    frame = PageFrame(15, 21, 4, book=BookWords("雾 Fog", "", "Shelf"))
    [problem] = load_inside(entry, Path()).compose(frame).problems
    what = "table of contents" if kind == "contents" else kind
    assert str(problem) == (
        f"{what}: the typeface Noto Serif has no glyph for 雾 U+96FE; "
        "write face: with the path of a typeface that has them"
    )
    assert problem.field == (0, "face")


@pytest.mark.parametrize("kind", ["title page", "contents", "colophon"])
@pytest.mark.parametrize(
    ("face", "message"),
    [
        ("txet", "'txet' is not a typeface of bookmaker; did you mean 'text'?"),
        ("no.ttf", "there is no font file no.ttf; write its path as seen from the folder of the shelf file"),
    ],
)
def test_a_typeface_that_is_none_is_refused(kind: str, face: str, message: str) -> None:
    entry = TypeAdapter(AnyInside).validate_python({"kind": kind, "face": face})
    with pytest.raises(ShelfFileError) as caught:
        load_inside(entry, Path())
    assert [(str(problem), problem.field) for problem in caught.value.problems] == [(message, ("face",))]
