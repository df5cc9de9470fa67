"""What is advised about pages, taken at its word: the number is enough for the whole book, and fewer are not."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.problems import Problem, Severity

SHELF = """\
shelf: The Galley
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um}
books:
  - title: Plain Suppers
    author: M. Sterrick
    size: {height: 21 mm, width: 15 mm}
    block: {kind: %s, stock: page%s}
    cover: {kind: wrap, stock: cover}
    inside:
%s
"""

CHAPTERS = "\n\n".join(f"## Supper {n}\n\n" + "Boil the oats until the spoon stands. " * 9 for n in range(4))
FRONT = ["title page", "contents, begins: recto"]
TEXT = "text, file: cook.md"
ENDPIECE = "blank, pages: 3, begins: recto"
BLOCKS = [
    ("accordion", "", 2),
    ("leaves", "", 2),
    ("sections", "", 4),
    ("sections", ", pages_in_section: 8", 8),
    ("sections", ", fold: quarto", 8),
]


def found(folder: Path, kind: str, keys: str, parts: list[str]) -> list[Problem]:
    (folder / "cook.md").write_text(f"# Plain Suppers\n\n{CHAPTERS}\n", encoding="utf-8")
    (folder / "shelf.yaml").write_text(
        SHELF % (kind, keys, "\n".join(f"      - {{kind: {part}}}" for part in parts)), encoding="utf-8"
    )
    told = (problem for problem in check(folder / "shelf.yaml").problems if "spine_title" not in problem.field)
    return [problem for problem in told if "pages" in f"{problem}"]


def advised(problems: list[Problem]) -> int:
    [told] = [match for problem in problems if (match := re.search(r"pages: (\d+) in the block", problem.remedy))]
    return int(told[1])


@pytest.mark.parametrize(("kind", "keys", "step"), BLOCKS)
@pytest.mark.parametrize(
    "parts",
    [[TEXT], [*FRONT, TEXT], [*FRONT, TEXT, "colophon"], ["half title, pages: 2", *FRONT, TEXT, ENDPIECE]],
    ids=["text", "front", "both", "recto"],
)
def test_the_advised_pages_are_enough_and_fewer_are_not(
    tmp_path: Path, kind: str, keys: str, step: int, parts: list[str]
) -> None:
    def with_pages(pages: int) -> list[Problem]:
        return found(tmp_path, kind, f"{keys}, pages: {pages}", parts)

    roomy = with_pages(48)
    assert [problem.severity for problem in roomy] == [Severity.NOTE]
    pages = advised(roomy)
    assert pages % step == 0
    assert with_pages(pages) == []
    assert with_pages(pages - 2) != []
    short = with_pages(pages - step)
    assert any(problem.severity is Severity.ERROR for problem in short)
    assert advised(short) == pages


def test_blank_pages_are_counted_and_the_colophon_follows_the_text(tmp_path: Path) -> None:
    [note] = found(tmp_path, "leaves", ", pages: 48", [*FRONT, TEXT, "colophon"])
    filled = re.fullmatch(r"the parts of the inside fill (\d+) of 48 pages; the others stay empty", note.message)
    assert filled
    pages = int(filled[1]) + int(filled[1]) % 2
    assert note.remedy == (
        f"write pages: {pages} in the block for a thinner book, "
        "or add a part that takes what is left, such as dummy text, for a book as thick"
    )


def test_a_part_that_says_how_many_pages_it_has_is_advised_itself(tmp_path: Path) -> None:
    problems = found(tmp_path, "leaves", ", pages: 24", ["title page", f"{TEXT}, pages: 20", "colophon"])
    part = next(problem for problem in problems if problem.message.startswith("cook.md fills"))
    pages = int(re.match(r"write pages: (\d+) in this part", part.remedy)[1])  # type: ignore[index]
    again = found(tmp_path, "leaves", ", pages: 24", ["title page", f"{TEXT}, pages: {pages}", "dummy text"])
    assert again == []
    short = found(tmp_path, "leaves", ", pages: 24", ["title page", f"{TEXT}, pages: {pages - 1}", "dummy text"])
    assert f"write pages: {pages} in this part" in str(short[0])


def test_a_block_without_pages_takes_whole_sections(tmp_path: Path) -> None:
    for kind, keys, _ in BLOCKS:
        assert found(tmp_path, kind, keys, [*FRONT, TEXT, "colophon"]) == []
