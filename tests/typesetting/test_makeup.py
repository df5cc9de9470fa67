"""Make-up: every line once and in order, on the grid, without widows; headings stay with their text."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.typesetting.galleys.made_pages import MadePage
from bookmaker.typesetting.galleys.makeup import make_up
from bookmaker.typesetting.galleys.matter import Matter, SetLine
from bookmaker.typesetting.manuscripts.passage import Role


def body(lines: int, name: str = "p", **keys: int) -> Matter:
    return Matter(Role.BODY, tuple(SetLine(f"{name}{n}", 0, 0, n) for n in range(lines)), lines, 1.0, 1.25, **keys)


def heading(name: str, *, opens: bool = False, rows: int = 1, after: int = 1) -> Matter:
    return Matter(
        Role.HEADING, (SetLine(name, 0, 0, 0),), rows, 1.3, 1.6, before=1, after=after, together=1, stays=True,
        opens=opens, sink=2 if opens else 0, heading=name,
    )  # fmt: skip


def apart(rows: int, run: int | None = None, before: float = 0.5) -> Matter:
    """Lines set apart from the text, `run` rows from their beginning to the end of all that is set apart with them."""
    return body(rows, "q")._replace(before=before, run=rows if run is None else run)


MATTER = st.one_of(
    st.integers(1, 9).map(apart),
    st.integers(1, 9).map(lambda rows: body(rows)._replace(before=0.5)),
    st.integers(1, 30).map(body),
    st.booleans().map(lambda opens: heading("h", opens=opens)),
    st.just(Matter(Role.BREAK, (), 1, 1.0, 1.25, together=1)),
    st.just(Matter(Role.PLATE, (), 12, 1.0, 1.25, picture="wreck.png")),
)


def rows_of(page: MadePage) -> list[tuple[int, int]]:
    return [(slot.row, slot.end - slot.start or slot.matter.rows) for slot in page.slots]


@given(galley=st.lists(MATTER, max_size=25), rows=st.integers(1, 20))
@settings(deadline=None)
def test_all_matter_is_placed_once_in_order_and_inside_the_page(galley: list[Matter], rows: int) -> None:
    pages = list(make_up(galley, rows))
    shown = [slot for page in pages for slot in page.slots if slot.matter.role is not Role.PLATE]
    wanted = [matter for matter in galley if matter.role is not Role.PLATE]
    assert [slot.matter for slot in shown if slot.start == 0] == wanted
    assert sum(slot.end - slot.start for slot in shown) == sum(len(matter.lines) for matter in wanted)
    plates = [page for page in pages if page.slots[0].matter.role is Role.PLATE]
    assert len(plates) == len(galley) - len(wanted)
    for page in pages:
        if page in plates:
            continue
        reached = 0
        for row, count in rows_of(page):
            assert row >= reached
            reached = row + count
        assert reached <= max(rows, 1)


@given(counts=st.lists(st.integers(1, 40), min_size=1, max_size=20), rows=st.integers(5, 20))
@settings(deadline=None)
def test_single_lines_never_stand_apart_from_their_paragraph(counts: list[int], rows: int) -> None:
    pages = list(make_up([body(count) for count in counts], rows))
    for page in pages:
        for slot in page.slots:
            assert slot.end - slot.start > 1 or len(slot.matter.lines) == 1
    # a page gives up no more lines than that takes
    for page in pages[:-1]:
        row, count = rows_of(page)[-1]
        assert row + count >= rows - 3


@given(before=st.integers(0, 30), lines=st.integers(1, 6), rows=st.integers(5, 14))
@settings(deadline=None)
def test_a_heading_stays_with_two_lines_of_its_text(before: int, lines: int, rows: int) -> None:
    galley = [body(before)] * bool(before) + [heading("h"), body(lines)]
    page = next(page for page in make_up(galley, rows) if any(slot.matter.heading for slot in page.slots))
    place = next(number for number, slot in enumerate(page.slots) if slot.matter.heading)
    following = page.slots[place + 1]
    assert following.end - following.start >= min(2, lines)


def verse(lines: int, rows: int) -> Matter:
    """A stanza after a blank row, kept together if it is no longer than half a page."""
    return body(lines, "v", before=1, together=lines if lines <= rows // 2 else 2)


@st.composite
def galleys(draw: st.DrawFn) -> tuple[list[Matter], int]:
    """Paragraphs, stanzas, pauses and headings of all kinds, several on end too, and a number of rows."""
    rows = draw(st.integers(8, 24))
    kinds = st.one_of(
        st.integers(1, 12).map(body),
        st.integers(1, 12).map(lambda lines: verse(lines, rows)),
        st.booleans().map(lambda opens: heading("h", opens=opens)),
        st.just(heading("g", rows=2, after=2)),
        st.just(Matter(Role.PLATE, (), rows, 1.0, 1.25, picture="wreck.png")),
    )
    return draw(st.lists(kinds, max_size=40)), rows


@given(made=galleys(), first=st.integers(1, 2))
@settings(max_examples=300, deadline=None)
def test_no_page_begins_or_ends_with_a_single_line_and_no_heading_is_last(
    made: tuple[list[Matter], int], first: int
) -> None:
    """Only headings that nothing follows but a new chapter may end a page, and those that fill one by themselves."""
    galley, rows = made
    text = [matter for matter in galley if matter.role is not Role.PLATE]
    pages = [page for page in make_up(galley, rows, first) if page.slots[0].matter.role is not Role.PLATE]
    before = 0
    for page in pages:
        for slot in page.slots:
            assert slot.end - slot.start > 1 or len(slot.matter.lines) == 1
        before += sum(slot.end == len(slot.matter.lines) for slot in page.slots)
        roles = [slot.matter.role for slot in page.slots]
        if roles[-1] is Role.HEADING and set(roles) != {Role.HEADING}:
            assert before == len(text) or text[before].opens


def legal_ends(counts: list[int]) -> set[int]:
    """After which lines of a row of paragraphs a page may end: with no single line before or after."""
    ends, start = {0}, 0
    for count in counts:
        ends |= {start + line for line in range(2, count - 1)} | {start + count}
        start += count
    return ends


@given(counts=st.lists(st.integers(1, 9), min_size=1, max_size=80), rows=st.integers(8, 24), first=st.integers(1, 4))
@settings(max_examples=300, deadline=None)
def test_facing_pages_are_equally_deep_if_they_can_be(counts: list[int], rows: int, first: int) -> None:
    """Common practice. A page with an even number faces the next one; a first page with an odd one faces none."""
    pages = list(make_up([body(count) for count in counts], rows, first))
    depths = [sum(slot.end - slot.start for slot in page.slots) for page in pages]
    assert sum(depths) == sum(counts)
    ends, start = legal_ends(counts), 0
    for number, (depth, facing) in enumerate(zip(depths, [*depths[1:], 0], strict=True), start=first):
        if number % 2 == 0 and number - first + 2 < len(pages) and depth != facing:
            equal = range(max(min(depth, facing), rows - 3), rows + 1)
            assert not [k for k in equal if start + k in ends and start + 2 * k in ends]
        start += depth


def test_facing_pages_give_up_a_line_together() -> None:
    """Of 10 rows, the second page would end with the first line of a paragraph: it gives up one, and so the third."""
    galley = [body(10), body(9), body(30)]

    def depths(first: int) -> list[int]:
        return [sum(count for _, count in rows_of(page)) for page in make_up(galley, 10, first)]

    # and the fifth page would leave one line to the sixth: it gives up one, and so the fourth
    assert depths(1) == [10, 9, 9, 9, 9, 3]
    # the first two facing one another: with 9 rows, the first would have 8, for it may not leave one line
    assert depths(2) == [10, 9, 10, 10, 10]


def test_a_page_that_faces_a_plate_or_the_end_of_a_chapter_is_filled_as_ever() -> None:
    plate = Matter(Role.PLATE, (), 10, 1.0, 1.25, picture="wreck.png")
    shown = [rows_of(page) for page in make_up([body(10), body(9), plate, body(20)], 10)]
    assert shown == [[(0, 10)], [(0, 9)], [(0, 10)], [(0, 10)], [(0, 10)]]
    shown = [rows_of(page) for page in make_up([body(10), body(12), heading("Two", opens=True), body(30)], 10)]
    assert shown[1:4] == [[(0, 10)], [(0, 2)], [(2, 1), (4, 6)]]


def test_chapters_open_pages_and_name_those_that_follow() -> None:
    pages = list(make_up([body(3), heading("One", opens=True), body(20), heading("Two", opens=True), body(2)], 10))
    assert [(page.chapter, page.opens) for page in pages] == [
        ("", False), ("One", True), ("One", False), ("One", False), ("Two", True),
    ]  # fmt: skip
    assert [page.slots[0].row for page in pages] == [0, 2, 0, 0, 2]


def test_plates_follow_the_page_that_is_being_filled() -> None:
    plate = Matter(Role.PLATE, (), 10, 1.0, 1.25, picture="wreck.png")
    pages = list(make_up([body(4), plate, body(12)], 10))
    assert [page.slots[0].matter.role for page in pages] == [Role.BODY, Role.PLATE, Role.BODY]
    assert rows_of(pages[0]) == [(0, 4), (4, 6)]


def test_blank_rows_vanish_at_the_head_of_a_page() -> None:
    pages = list(make_up([body(10), body(3, before=1)], 10))
    assert rows_of(pages[1]) == [(0, 3)]


def test_a_line_that_is_turned_over_is_not_parted_from_its_verse() -> None:
    verse = body(14)._replace(bound=frozenset({3, 8, 9, 13}))
    pages = list(make_up([body(2), verse], 10))
    assert [slot.end - slot.start for page in pages for slot in page.slots if slot.matter is verse] == [7, 7]
    whole = body(14)._replace(bound=frozenset(range(1, 14)))
    assert [len(page.slots) for page in make_up([whole], 10)] == [1, 1]


def places(pages: list[MadePage]) -> list[list[tuple[float, int]]]:
    return [[(slot.row, slot.end - slot.start) for slot in page.slots] for page in pages]


def after(rows: int) -> Matter:
    """The text that follows what is set apart."""
    return body(rows)._replace(before=0.5)


def test_what_is_set_apart_has_half_a_row_over_and_under_it() -> None:
    assert places(list(make_up([body(3), apart(2), after(4)], 12))) == [[(0, 3), (3.5, 2), (6, 4)]]


def test_all_that_is_set_apart_together_stands_half_a_row_off() -> None:
    """A list of three items: only the first has white over it."""
    items = [apart(1, 3), apart(1, 2, before=0), apart(1, before=0)]
    assert places(list(make_up([body(3), *items, after(2)], 12))) == [[(0, 3), (3.5, 1), (4.5, 1), (5.5, 1), (7, 2)]]


def test_what_is_set_apart_and_ends_a_page_or_goes_on_over_it_keeps_to_the_grid() -> None:
    """Of 12 rows 3 are taken: 8 fit under a whole blank one, 7 with half a row over and under them and a row more."""
    for rows, shown in ((8, [(0, 3), (4, 8)]), (7, [(0, 3), (3.5, 7), (11, 1)]), (11, [(0, 3), (4, 8)])):
        first = places(list(make_up([body(3), apart(rows), after(1)], 12)))[0]
        assert first == shown


def test_no_white_stands_at_the_head_of_a_page_and_a_whole_row_under_what_begins_there() -> None:
    assert places(list(make_up([body(12), apart(3), after(4)], 12)))[1] == [(0, 3), (4, 4)]
    assert places(list(make_up([body(3), apart(11), after(4)], 12)))[1] == [(0, 3), (4, 4)]


@given(galley=st.lists(MATTER, max_size=25), rows=st.integers(1, 20))
@settings(deadline=None)
def test_only_what_is_set_apart_stands_off_the_grid_and_never_at_the_foot(galley: list[Matter], rows: int) -> None:
    for page in make_up(galley, rows):
        for slot in page.slots:
            assert slot.row % 1 == 0 or (slot.matter.run and slot.row % 1 == 0.5)
            if slot.row % 1:
                assert slot.row + slot.matter.rows <= rows - 1
                assert (slot.start, slot.end) == (0, len(slot.matter.lines))


def test_a_heading_deeper_than_a_page_goes_on_over_it() -> None:
    head = heading("h")._replace(lines=body(7).lines, rows=7)
    assert [rows for page in places(list(make_up([head, body(2)], 4))) for _, rows in page] == [4, 3, 2]


def signed(lines: int) -> Matter:
    return body(lines, "s")._replace(role=Role.PLACED, signs=True, together=lines)


@given(before=st.integers(0, 12), letter=st.integers(1, 30), count=st.integers(1, 4), rows=st.integers(8, 14))
@settings(max_examples=300, deadline=None)
def test_two_lines_of_a_letter_stand_over_its_signature(before: int, letter: int, count: int, rows: int) -> None:
    galley = [body(before)] * bool(before) + [body(letter, "l"), signed(count)]
    *_, last = make_up(galley, rows)
    assert last.slots[-1].matter.role is Role.PLACED
    assert sum(slot.end - slot.start for slot in last.slots[:-1]) >= min(2, letter)


def test_a_letter_gives_up_no_more_lines_than_that() -> None:
    first, second = make_up([body(12, "l"), signed(2)], 12)
    assert [[line.words for line in slot.matter.lines[slot.start : slot.end]] for slot in second.slots] == [
        *[["l10", "l11"], ["s0", "s1"]]
    ]
    assert first.slots[0].end == 10
    [only] = make_up([body(10, "l"), signed(2)], 12)
    assert len(only.slots) == 2


# ---- paragraphs set in another way


def in_other_ways(matter: Matter, foot: int) -> list[Matter]:
    """A paragraph a line shorter and a line longer, or with the word at the foot of the page whole."""
    if matter.role is not Role.BODY or matter.run:
        return []
    if foot:
        whole = tuple(line._replace(words=line.words.rstrip("-")) for line in matter.lines)
        return [matter._replace(lines=whole)]
    return [body(len(matter.lines) + by) for by in (-1, 1)]


def test_a_page_short_by_a_line_is_filled_by_a_longer_paragraph() -> None:
    """Ten rows: of four and seven lines, the last would stand alone; of four and eight, two go over."""
    galley = [body(4), body(7), body(30)]
    assert sum(count for _, count in rows_of(next(make_up(galley, 10)))) == 9
    assert sum(count for _, count in rows_of(next(make_up(galley, 10, 1, in_other_ways)))) == 10


def test_no_word_is_parted_over_the_turn_of_a_leaf_if_another_set_of_lines_avoids_it() -> None:
    parted = body(20)
    lines = tuple(line._replace(words=line.words + "-") for line in parted.lines)
    parted = parted._replace(lines=lines)

    def feet(first: int, others: Callable[[Matter, int], list[Matter]]) -> list[bool]:
        pages = list(make_up([parted], 10, first, others))
        return [page.slots[-1].matter.lines[page.slots[-1].end - 1].words.endswith("-") for page in pages]

    assert feet(1, lambda _matter, _foot: []) == [True, True]
    assert feet(1, in_other_ways) == [False, False]
    assert feet(2, in_other_ways) == [True, True]  # a left page is seen with the one that faces it


def test_what_makes_a_page_full_parts_no_word_over_its_turn() -> None:
    """Two lines of the last paragraph stand on 11 rows, for one of its four may not stand alone: the one before it may
    be a line longer, and it may do without its hyphen, and both is best."""
    parted = body(4, "q")
    lines = tuple(line._replace(words=line.words + "-" * (n == 1)) for n, line in enumerate(parted.lines))

    def others(matter: Matter, foot: int) -> list[Matter]:
        if foot:
            return [matter._replace(lines=tuple(line._replace(words=line.words.rstrip("-")) for line in matter.lines))]
        return [body(7, "l")] if matter.lines[0].words == "l0" else []

    pages = list(make_up([body(2, "b"), body(6, "l"), parted._replace(lines=lines), body(20)], 11, 1, others))
    assert [slot.matter.lines[slot.end - 1].words for slot in pages[0].slots] == ["b1", "l6", "q1"]


@given(galley=st.lists(MATTER, max_size=25), rows=st.integers(1, 20), first=st.integers(1, 2))
@settings(deadline=None)
def test_other_ways_to_set_paragraphs_leave_no_more_lacking(galley: list[Matter], rows: int, first: int) -> None:
    pages = list(make_up(galley, rows, first, in_other_ways))
    shown = [slot for page in pages for slot in page.slots if slot.matter.role is not Role.PLATE]
    wanted = [matter for matter in galley if matter.role is not Role.PLATE]
    begun = [slot.matter for slot in shown if slot.start == 0]
    assert [(matter.role, matter.heading) for matter in begun] == [(matter.role, matter.heading) for matter in wanted]
    assert all(abs(len(one.lines) - len(other.lines)) <= 1 for one, other in zip(begun, wanted, strict=True))
    assert sum(slot.end - slot.start for slot in shown) == sum(len(matter.lines) for matter in begun)


# ---- pages that open, and turns of leaves


def opening(rows: int) -> list[Matter]:
    """The head of a chapter, sunk by two rows, and a paragraph whose last line would stand alone over so many rows."""
    return [heading("h", opens=True), body(rows)]


def test_a_head_is_sunk_further_rather_than_that_the_page_that_faces_it_is_cut_short() -> None:
    """Of 14 rows the head takes four: of a paragraph of three lines after one of eight none may stand there."""
    galley = [*opening(8), body(3), body(40), heading("Two", opens=True), body(1)]
    left, right, *_ = places(list(make_up(galley, 14, first=2)))
    assert left == [(4, 1), (6, 8)]
    assert sum(count for _, count in right) == 14


def test_a_head_is_sunk_by_two_rows_at_most_and_never_where_its_page_may_be_short() -> None:
    assert places(list(make_up([*opening(9), body(3), body(40)], 14, first=2)))[0][0] == (3, 1)
    assert places(list(make_up([*opening(4), heading("sub", rows=2, after=2), body(40)], 14, first=2)))[0][0] == (2, 1)
    assert places(list(make_up([*opening(8), heading("Two", opens=True), body(4)], 14, first=2)))[0][0] == (2, 1)


def test_a_spread_is_a_line_shorter_rather_than_that_a_word_is_parted_over_its_turn() -> None:
    def lines(parted: int) -> Matter:
        plain = body(60)
        return plain._replace(
            lines=tuple(line._replace(words=line.words + "-" * (n == parted)) for n, line in enumerate(plain.lines))
        )

    def depths(parted: int, first: int) -> list[int]:
        return [sum(count for _, count in rows_of(page)) for page in make_up([lines(parted)], 10, first)][:3]

    assert depths(19, first=2) == [9, 9, 10]
    assert depths(9, first=2) == [10, 10, 10]
    assert depths(9, first=1) == [9, 10, 10]
