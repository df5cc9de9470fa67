"""The inside of a book put together from parts: order, lengths, rectos, running numbers, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from bookmaker.ground.art import NOTHING, Group
from bookmaker.ground.drawing import Art
from bookmaker.ground.problems import Severity
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.kinds import AnyInside
from bookmaker.things.book.pages.patterns.dummy_text import DummyPage
from bookmaker.things.book.pages.patterns.ledger_paper import LedgerPaperPage
from bookmaker.things.book.pages.patterns.music import MusicPage
from bookmaker.things.book.pages.patterns.ruled import RuledPage
from bookmaker.things.book.pages.patterns.squared import SquaredPage
from bookmaker.typesetting.page import BookWords, Heading, Inside, PageFrame
from tests.kit.recording import record
from tests.kit.shelves import ONE_BOOK, merged, told

BOOK = BookWords("The Long Quay", "P. Stannard", "The Net Loft")
SHOWS = {
    "ruled": RuledPage,
    "squared": SquaredPage,
    "ledger paper": LedgerPaperPage,
    "music": MusicPage,
    "dummy text": DummyPage,
}

Written = dict[str, object]


def read(parts: Sequence[Written] | Written) -> Any:
    return TypeAdapter(AnyInside).validate_python(parts)


def bound(
    parts: Sequence[Written] | Written, pages: int, folder: Path = Path(), *, right_to_left: bool = False
) -> Inside:
    entry = read(parts)
    return load_inside(entry, folder).compose(PageFrame(15, 21, pages, right_to_left, book=BOOK))


def layers(page: Art) -> tuple[Art, ...]:
    return page.layers if isinstance(page, Group) else (page,)


def shown(inside: Inside, kinds: Sequence[str]) -> list[str]:
    """What kind each page shows, ``""`` for a blank."""
    names = {SHOWS[kind]: kind for kind in kinds}
    return [next((names[type(art)] for art in layers(page) if type(art) in names), "") for page in inside.pages]


# ---- one after the other

PARTS = st.lists(
    st.tuples(st.sampled_from(sorted(SHOWS)), st.integers(1, 5), st.sampled_from(["new page", "recto"])),
    min_size=1,
    max_size=6,
)


@given(parts=PARTS, spare=st.integers(0, 6), right_to_left=st.booleans())
def test_parts_follow_one_another_on_the_pages_they_ask_for(
    parts: list[tuple[str, int, str]], spare: int, right_to_left: bool
) -> None:
    written = [
        {"kind": kind, "pages": str(pages), "begins": begins, "numbers": "yes", "listed_as": f"part {number}"}
        | ({"chapter": "0"} if kind == "dummy text" else {})
        for number, (kind, pages, begins) in enumerate(parts)
    ]
    expected: list[str] = []
    starts: list[int] = []
    for kind, pages, begins in parts:
        if begins == "recto" and len(expected) % 2:
            expected.append("")
        starts.append(len(expected) + 1)
        expected += [kind] * pages
    inside = bound(written, len(expected) + spare, right_to_left=right_to_left)
    assert shown(inside, sorted(SHOWS)) == expected + [""] * spare
    assert inside.headings == tuple(Heading(f"part {number}", start) for number, start in enumerate(starts))
    for number, (page, kind) in enumerate(zip(inside.pages, [*expected, *[""] * spare], strict=True), start=1):
        said = [text.text for text in record(page).texts if kind != "dummy text" or text.text.isdigit()]
        assert said == ([str(number)] if kind else [])


@given(parts=PARTS, open_ended=st.integers(0, 5), extra=st.integers(0, 9))
def test_a_part_without_a_length_takes_what_is_left_wherever_it_stands(
    parts: list[tuple[str, int, str]], open_ended: int, extra: int
) -> None:
    open_ended %= len(parts)
    written: list[Written] = [
        {"kind": kind, "pages": str(pages), "begins": begins, "numbers": "no"} for kind, pages, begins in parts
    ]
    written[open_ended].update(kind="ledger paper")
    del written[open_ended]["pages"]
    needed = sum(pages for _, pages, _ in parts) - parts[open_ended][1] + len(parts) + 1
    inside = bound(written, needed + extra)
    assert inside.problems == ()
    assert len(inside.pages) == needed + extra
    # where a recto follows, one page may be left over
    left = 1 if "recto" in [begins for _, _, begins in parts[open_ended + 1 :]] else 0
    assert inside.pages[-1] is not NOTHING or left
    assert inside.pages[-2] is not NOTHING or inside.pages[-1] is not NOTHING


def test_of_two_parts_without_a_length_the_last_takes_what_is_left_and_the_other_is_told() -> None:
    inside = bound([{"kind": "ruled"}, {"kind": "squared"}, {"kind": "blank", "pages": "1"}], 8)
    assert shown(inside, ["ruled", "squared"]) == ["ruled", *["squared"] * 6, ""]
    assert [(str(problem), problem.severity.value, problem.field) for problem in inside.problems] == [
        (
            "two parts of the inside would take what is left: this one gets 1 page; "
            "write pages: with how many it shall have",
            "warning",
            (0,),
        )
    ]


def test_one_part_alone_fills_the_book_or_as_many_pages_as_it_asks_for() -> None:
    assert shown(bound({"kind": "ruled"}, 6), ["ruled"]) == ["ruled"] * 6
    assert shown(bound([{"kind": "ruled"}], 6), ["ruled"]) == ["ruled"] * 6
    inside = bound({"kind": "ruled", "pages": "3"}, 6)
    assert shown(inside, ["ruled"]) == ["ruled"] * 3 + [""] * 3
    assert [(str(problem), problem.severity.value) for problem in inside.problems] == [
        (
            "the parts of the inside fill 3 of 6 pages; the others stay empty; "
            "write pages: 4 in the block, or leave pages out in one part, for what is left",
            "note",
        )
    ]


def test_parts_that_need_more_pages_than_there_are_lose_the_last_and_say_so() -> None:
    inside = bound([{"kind": "ruled", "pages": "5"}, {"kind": "squared"}, {"kind": "ledger paper", "pages": "4"}], 8)
    assert shown(inside, ["ruled", "squared", "ledger paper"]) == ["ruled"] * 5 + ["squared"] + ["ledger paper"] * 2
    assert [(str(problem), problem.severity.value, problem.field) for problem in inside.problems] == [
        (
            "the parts of the inside need 10 pages, the block has 8: 2 pages are lost; "
            "write pages: 10 in the block, or fewer in a part",
            "error",
            (),
        )
    ]


def test_a_text_has_the_pages_it_needs_and_its_numbers_go_on(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("The quay was long, and longer in the rain.\n\n" * 60, encoding="utf-8")
    parts: list[Written] = [{"kind": "blank", "pages": "1"}, {"kind": "text", "file": "a.txt"}, {"kind": "ruled"}]
    entry = read(parts)
    frame = PageFrame(15, 21, 24, book=BOOK)
    inside = load_inside(entry, tmp_path).compose(frame)
    assert [problem for problem in inside.problems if problem.severity is not Severity.NOTE] == []
    kinds = shown(inside, ["ruled"])
    text = kinds.index("ruled")
    assert 3 < text < 20
    assert kinds == [""] * text + ["ruled"] * (24 - text)
    written = [[mark.text for mark in record(page).texts] for page in inside.pages]
    assert written[0] == []
    assert [words[-1] for words in written[1:text]] == [str(number) for number in range(2, text + 1)]
    assert sum(" ".join(words).count("rain.") for words in written) == 60
    # mirrored: the type area of a verso stands further to the left than that of a recto
    assert record(inside.pages[1]).texts[0].at.x > record(inside.pages[2]).texts[0].at.x


def test_the_last_part_takes_what_is_left_and_tells_if_that_is_not_enough(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("word " * 3000, encoding="utf-8")
    inside = bound([{"kind": "blank", "pages": "2"}, {"kind": "text", "file": "a.txt"}], 4, tmp_path)
    [problem] = [problem for problem in inside.problems if problem.severity is Severity.ERROR]
    assert problem.field == (1, "file")
    assert "of the 3000 of a.txt do not fit in 2 pages" in str(problem)


# ---- how long a book is by itself


@pytest.mark.parametrize(
    ("parts", "pages"),
    [
        ({"kind": "title page"}, 2),
        ([{"kind": "blank", "pages": "1"}, {"kind": "title page", "begins": "recto"}, {"kind": "colophon"}], 4),
        ({"kind": "blank"}, None),
        ([{"kind": "ruled", "pages": "7"}, {"kind": "blank", "begins": "recto", "pages": "2"}], 10),
        ([{"kind": "title page"}, {"kind": "ruled"}], None),
        ({"kind": "dummy text"}, None),
        ({"kind": "dummy text", "pages": "31"}, 32),
    ],
)
def test_an_inside_knows_its_natural_length(parts: list[Written] | Written, pages: int | None) -> None:
    entry = read(parts)
    assert load_inside(entry, Path()).extent(PageFrame(15, 21, 0, book=BOOK)) == pages


def test_a_book_of_its_natural_length_has_no_page_too_few_or_too_many() -> None:
    listed = [{"kind": "ruled", "pages": "2", "begins": "recto", "listed_as": f"Chapter {n}"} for n in range(40)]
    entry = read([{"kind": "title page"}, {"kind": "contents"}, *listed])
    source, frame = load_inside(entry, Path()), PageFrame(15, 21, 0, book=BOOK)
    pages = source.extent(frame)
    assert pages is not None
    inside = source.compose(PageFrame(15, 21, pages, book=BOOK))
    assert inside.problems == ()
    assert inside.pages[-1] is not NOTHING or inside.pages[-2] is not NOTHING


# ---- in the shelf file


def said(inside: str, folder: Path, defaults: str = "") -> list[str]:
    """What a shelf with this inside is told: refusals, or what is wrong with its pages."""
    text = ONE_BOOK.replace("books:", f"{defaults}books:") + f"    inside: {inside}\n"
    return told(text, folder, "salt.yaml")


@pytest.mark.parametrize(
    ("inside", "message"),
    [
        ("[]", "13:13: Tide Tables: inside lists no parts; write from 1 to 200 parts, each after a -"),
        (
            "[{kind: blank}, {kind: rulde}]",
            "13:36: Tide Tables: inside[2].kind: 'rulde' is not known; did you mean ruled?",
        ),
        ("[{kind: blank}, {pages: 2}]", "13:29: Tide Tables: inside[2] has no kind; add kind: with one of "),
        ("[{kind: blank, paegs: 2}]", "13:28: Tide Tables: inside[1] has an unknown key 'paegs'; did you mean pages?"),
        (
            "[{kind: blank, pages: 0}]",
            "13:35: Tide Tables: inside[1].pages: 0 is out of range; write a whole number from 1 to 2000",
        ),
        (
            "[{kind: blank}, word]",
            "13:29: Tide Tables: inside[2] is not a group of keys; write keys and values under it, or between { and }",
        ),
        (
            "{kind: blank, begins: verso}",
            "13:35: Tide Tables: inside.begins: 'verso' is not known; write one of new page, recto",
        ),
        (
            "[{kind: blank}, {kind: pdf, file: no.pdf}, {kind: text, file: no.txt}]",
            "13:47: there is no PDF no.pdf; write its path as seen from the folder of the shelf file",
        ),
        (
            "[{kind: ruled, pages: 60}, {kind: squared, pages: 4}]",
            "13:13: the parts of the inside need 64 pages, the block has 48: 16 pages are lost; "
            "write pages: 64 in the block, or fewer in a part",
        ),
        (
            "[{kind: ruled}, {kind: squared}]",
            "13:14: two parts of the inside would take what is left: this one gets 1 page; "
            "write pages: with how many it shall have",
        ),
        (
            "word",
            "13:13: Tide Tables: inside is not a group of keys; write keys and values under it, or between { and }",
        ),
    ],
)
def test_slips_in_a_list_of_parts_are_shown_where_they_stand(tmp_path: Path, inside: str, message: str) -> None:
    first, *others = said(inside, tmp_path)
    assert first.startswith(f"salt.yaml:{message}")
    assert others == (
        ["salt.yaml:13:75: there is no text no.txt; write its path as seen from the folder of the shelf file"]
        if "no.txt" in inside
        else []
    )


def test_each_part_of_a_book_takes_the_defaults_of_its_kind() -> None:
    defaults = "{inside: [{kind: blank, numbers: yes}, {kind: ruled, spacing: 2 mm, ink: x}]}"
    assert merged(defaults, "{inside: [{kind: ruled, ink: y}, {kind: squared}, {pages: 3}]}") == {
        "inside": [
            {"kind": "ruled", "spacing": "2 mm", "ink": "y"},
            {"kind": "squared"},
            {"kind": "blank", "numbers": "yes", "pages": "3"},
        ]
    }
    assert merged("{inside: {kind: ruled, ink: x}}", "{inside: [{kind: ruled}, {kind: blank}]}") == {
        "inside": [{"kind": "ruled", "ink": "x"}, {"kind": "blank"}]
    }
    assert merged(defaults, "{title: T}") == {"title": "T", "inside": {"kind": "blank", "numbers": "yes"}}


def test_a_slip_in_a_default_that_parts_take_is_told_of_the_defaults_once(tmp_path: Path) -> None:
    defaults = "defaults:\n  inside:\n    - {kind: blank}\n    - {kind: ruled, spacing: 9}\n"
    assert said("[{kind: blank}, {kind: ruled, pages: 2}, {kind: ruled}]", tmp_path, defaults) == [
        "salt.yaml:10:30: defaults.inside.spacing: 9 has no unit; write 9 mm"
    ]
