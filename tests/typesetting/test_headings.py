"""Headings: their ranks, their sizes, the lines they stand on."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import Severity
from bookmaker.typesetting.lines.balance import balanced
from bookmaker.typesetting.manuscripts.passage import Passage, Role
from bookmaker.typesetting.manuscripts.ranks import RUNNING_TEXT, Rank, ranked, ranks_of
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.recording import Written
from tests.kit.text_pages import FACE, FRAME, PROSE, SIZE, inside, lines

TEXT = RUNNING_TEXT
SMALL = PageFrame(12, 18, 12)


def ranks(*kinds: int) -> list[str]:
    found, _ = ranks_of(kinds)
    return [Rank(rank).name.lower() if rank < 5 else "less" for rank in found.values()]


def notes(found: Inside) -> list[str]:
    return [problem.message for problem in found.problems if problem.severity is Severity.NOTE]


# ---- ranks


def test_headings_of_one_level_begin_chapters() -> None:
    assert ranks(1, TEXT, 1, TEXT) == ["chapter", "chapter"]
    assert ranks(3, TEXT, 3, TEXT) == ["chapter", "chapter"]
    assert ranks(1, TEXT) == ["chapter"]
    assert ranks() == []


def test_a_single_heading_at_the_top_is_the_title() -> None:
    assert ranks(1, 2, TEXT, 2, TEXT, 3, TEXT) == ["title", "chapter", "chapter", "section"]
    assert ranks(1, TEXT, 2, TEXT, 2, TEXT) == ["title", "chapter", "chapter"]
    assert ranks(TEXT, 1, TEXT, 2, TEXT) == ["chapter", "section"]


def test_headings_followed_at_once_by_others_are_parts() -> None:
    assert ranks(1, 2, TEXT, 2, TEXT, 1, 2, TEXT) == ["part", "chapter", "chapter", "part", "chapter"]
    assert ranks(1, 1, 2, TEXT, 1, 2, TEXT, 3) == ["title", "part", "chapter", "part", "chapter", "section"]
    assert ranks(1, TEXT, 1, 2, TEXT, 1, 2, TEXT, 1, TEXT) == [
        *["chapter", "part", "chapter", "part", "chapter", "chapter"]
    ]


def test_headings_with_text_before_others_are_chapters_with_sections() -> None:
    assert ranks(1, TEXT, 2, TEXT, 1, 2, TEXT) == ["chapter", "section", "chapter", "section"]


def test_a_chapter_added_under_a_title_changes_nothing_above_it() -> None:
    assert ranks(1, 2, TEXT, 2, TEXT, 1, TEXT) == ["title", "chapter", "chapter", "chapter"]


def test_headings_in_quotations_and_lists_begin_no_chapters() -> None:
    quoted = Passage("Fog", Role.HEADING, 1, inset=1)
    found, _ = ranked([quoted, Passage("Rain", Role.HEADING, 2), Passage("x")], "log.md")
    assert [passage.level for passage in found] == [Rank.SECTION, Rank.CHAPTER, 0]


def test_parts_have_pages_of_their_own_and_chapters_under_them(tmp_path: Path) -> None:
    text = f"# Part One\n\n## Fog\n\n{PROSE}\n\n## Rain\n\nx\n\n# Part Two\n\n## Hail\n\nx"
    found = inside(tmp_path, text)
    assert [[line.text for line in lines(page)][:1] for page in found.pages[:5]] == [
        *[["Part One"], ["Fog"], ["Rain"], ["Part Two"], ["Hail"]]
    ]
    assert [len(lines(found.pages[page])) for page in (0, 3)] == [1, 1]
    assert [(heading.text, heading.page) for heading in found.headings] == [
        *[("Part One", 1), ("Fog", 2), ("Rain", 3), ("Part Two", 4), ("Hail", 5)]
    ]
    part, chapter = lines(found.pages[0])[0], lines(found.pages[1])[0]
    assert part.line.size > chapter.line.size
    assert part.at.y < chapter.at.y
    assert "the highest headings of log.md are parts, and those under them chapters" in notes(found)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("# Salt\n\n## 1\n\nx\n\n## 2\n\nx", False),
        ("# Salt\n\n## 1\n\nx\n\n## 2\n\nx\n\n# After\n\nx", True),
        ("# Salt\n\nby the sea\n\n## 1\n\nx\n\n## 2\n\nx\n\n# After\n\nx", True),
        ("# Fog\n\nx\n\n## 1\n\nx\n\n# Rain\n\nx\n\n## 2\n\nx", False),
        ("# Fog\n\nx\n\n# Rain\n\nx", False),
    ],
)
def test_another_reading_that_was_near_is_noted(tmp_path: Path, text: str, told: bool) -> None:
    assert any("highest headings" in note for note in notes(inside(tmp_path, text))) is told


# ---- sizes and lines


def heads(found: Inside, *numbers: int) -> list[list[Written]]:
    """The lines over the first text of some pages, from 1."""
    shown = [lines(found.pages[number - 1]) for number in numbers]
    return [[line for line in page if not line.text.startswith("The keeper")] for page in shown]


def test_all_headings_of_a_rank_are_as_small_as_the_widest_word_asks(tmp_path: Path) -> None:
    found = inside(tmp_path, "# Misunderstandings\n\nThe keeper.\n\n# Fog\n\nThe keeper.", SMALL)
    [long], [short] = heads(found, 1, 2)
    assert (long.text, short.text) == ("Misunderstandings", "Fog")
    assert long.line.size == short.line.size
    assert SIZE <= long.line.size < 1.3 * SIZE
    assert long.end.x - long.at.x == pytest.approx(SMALL.type_area(1).width)


def test_a_word_too_wide_for_the_smallest_heading_is_hyphenated_and_no_other(tmp_path: Path) -> None:
    found = inside(tmp_path, "# Counterrevolutionaries Understanding\n\nThe keeper.", SMALL)
    [head] = heads(found, 1)
    *parted, whole = [line.text for line in head]
    assert [text[-1] for text in parted] == ["-"] * (len(parted) - 1) + [parted[-1][-1]]
    assert "".join(text.rstrip("-") for text in parted).replace(" ", "") + whole in {
        "CounterrevolutionariesUnderstanding"
    }
    assert whole == "Understanding"
    assert not any("between letters" in note for note in notes(found))


@pytest.mark.parametrize(
    ("head", "shown"),
    [
        ("Ice\u2014Superintendents", ["Ice\u2014", "Superintendents"]),
        ("A Sea\u2014Misunderstandings", ["A Sea\u2014", "Misunderstandings"]),
        ("Lighthouse-superintendents", ["Lighthouse-", "superintendents"]),
    ],
)
def test_words_joined_by_a_dash_are_parted_there_and_by_no_hyphen(tmp_path: Path, head: str, shown: list[str]) -> None:
    for width in (12, 14):
        [found] = heads(inside(tmp_path, f"# {head}\n\nThe keeper.", PageFrame(width, 1.5 * width, 12)), 1)
        assert [line.text for line in found] == shown


def test_of_words_joined_by_a_dash_only_one_that_is_too_wide_by_itself_is_hyphenated(tmp_path: Path) -> None:
    [found] = heads(inside(tmp_path, "# Counterrevolutionaries\u2014Understanding\n\nThe keeper.", SMALL), 1)
    *_, before, last = [line.text for line in found]
    assert before.endswith("\u2014")
    assert last == "Understanding"
    assert any(line.text.endswith("-") for line in found)


def test_a_word_that_cannot_be_parted_but_between_letters_is_noted(tmp_path: Path) -> None:
    found = inside(tmp_path, "# Counterrevolutionaries\n\nThe keeper.", SMALL, language="none")
    assert any("1 word is wider than the lines of log.md and broken between letters" in note for note in notes(found))


def test_an_article_goes_with_its_word(tmp_path: Path) -> None:
    [head] = heads(inside(tmp_path, "# The Weathercock’s Trial\n\nThe keeper.", SMALL), 1)
    assert [line.text for line in head] == ["The Weathercock’s", "Trial"]
    [head] = heads(inside(tmp_path, "# By Mule to the Salt Stair\n\nThe keeper.", SMALL), 1)
    assert [line.text for line in head] == ["By Mule", "to the Salt Stair"]


def test_titles_are_no_smaller_than_chapters_nor_these_than_sections(tmp_path: Path) -> None:
    text = "# Straightforwardnesses\n\n## Fog\n\n### Rain\n\nThe keeper."
    found = inside(tmp_path, text, PageFrame(14, 21, 12))
    sizes = {line.text: line.line.size for page in found.pages[:3] for line in lines(page)}
    title = next(size for text, size in sizes.items() if text.startswith("Straight"))
    assert title >= sizes["Fog"] >= sizes["Rain"]


def ways(count: int) -> list[tuple[int, ...]]:
    return [(*ends, count) for parts in range(count) for ends in combinations(range(1, count), parts)]


@given(widths=st.lists(st.floats(0.5, 6), min_size=1, max_size=8), measure=st.floats(6, 20))
def test_balanced_lines_are_the_fewest_and_most_alike_of_all_ways(widths: list[float], measure: float) -> None:
    def cost(ends: tuple[int, ...]) -> tuple[int, float]:
        starts = (0, *ends[:-1])
        found = [sum(widths[a:b]) + 0.3 * (b - a - 1) for a, b in zip(starts, ends, strict=True)]
        wide = any(width > measure for width in found)
        return (999 if wide else len(ends), sum(width**2 for width in found))

    best = min(map(cost, ways(len(widths))))
    found = tuple(balanced(widths, 0.3, measure, [False] * len(widths)))
    assert cost(found)[0] == best[0]
    assert cost(found)[1] == pytest.approx(best[1])


def test_headings_with_room_have_their_usual_size(tmp_path: Path) -> None:
    [head] = heads(inside(tmp_path, "# Fog\n\nThe keeper.", FRAME), 1)
    assert head[0].line.size == pytest.approx(1.3 * SIZE)


@pytest.mark.parametrize(("over", "count", "size"), [(1.03, 1, 1.3 / 1.03), (1.08, 2, 1.3)])
def test_headings_are_a_little_smaller_where_that_saves_a_line(
    over: float, count: int, size: float, tmp_path: Path
) -> None:
    whole = FACE.shape("Duty of the Lamp").width * 1.3 * SIZE
    frame = PageFrame(whole / over * 9 / 6, 30, 12)
    [head] = heads(inside(tmp_path, "# Duty of the Lamp\n\nThe keeper.", frame, tracking="0 %"), 1)
    assert len(head) == count
    assert head[0].line.size == pytest.approx(size * SIZE, rel=1e-3)
