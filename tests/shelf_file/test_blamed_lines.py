"""Slips of the keyboard are told on the line where they are, however late the reader of YAML stumbles over them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from bookmaker import check
from tests.kit.shelves import refused, written

HEAD = """\
shelf: Slips
stocks:
  page: {caliper: 100 um}
books:
"""

ON_LINES = """\
  - title: Book BOOK
    author: A. Writer
    size: {height: 21 mm, width: 15 mm}
    block:
      kind: accordion
      stock: page
      pages: 32
    cover: {kind: wrap, stock: page}
    design: {style: cloth, colour: "#22304a", spine_title: across}
"""

IN_BRACES = """\
  - {title: Book BOOK, author: A. Writer, size: {height: 21 mm, width: 15 mm},
     block: {kind: accordion, stock: page, pages: 32}, cover: {kind: wrap, stock: page},
     design: {style: cloth, colour: "#22304a", spine_title: across}}
"""

BOOKS = 3
"""A slip may be in the first, in one between, and in the last."""

TITLES = {
    "'Tis the Season": '''"'Tis the Season"''',
    '"Ways to go': '"Ways to go"',
    "'It's what's left'": '''"It's what's left"''',
    "'Don't stop'": '''"Don't stop"''',
    '"Why" not': """'"Why" not'""",
    "'Why' not": '''"'Why' not"''',
    '"Why" or "not"': """'"Why" or "not"'""",
    '"A "short" walk"': """'A "short" walk'""",
    "!Help": '"!Help"',
    "!Help me": '"!Help me"',
    "[x]": '"[x]"',
    "[x] y": '"[x] y"',
    "{x}": '"{x}"',
    "{x} y": '"{x} y"',
    "&x": '"&x"',
    "&x y": '"&x y"',
    "& Sons": '"& Sons"',
    "*x": '"*x"',
    "* x *": '"* x *"',
    "@x": '"@x"',
    "%x": '"%x"',
    "`x": '"`x"',
    "? why": '"? why"',
    "> why": '"> why"',
    "| why": '"| why"',
    "- why": '"- why"',
    "] why": '"] why"',
    "} why": '"} why"',
    "#1": '"#1"',
    "why: not": '"why: not"',
}
"""Titles as they may be typed, and as the message says to write them."""

ONLY_IN_BRACES = {'Why, "not" and': """'Why, "not" and'""", "Who? # me": '"Who? # me"', "# 1": '"# 1"'}
ONLY_ON_LINES = {", why": '", why"', "-": '"-"'}

SLIPS = [
    ("author: A", "author:A", "write author: A. Writer"),
    ("title: B", "title:B", "write title: Book BOOK"),
    ("title: B", "title = B", "write title: Book BOOK"),
    ("title: B", "title; B", "write title: Book BOOK"),
    ("title: B", "title B", "write title: Book BOOK"),
    ("title: B", "title：B", "write title: Book BOOK"),
    ("15 mm}", "15 mm", "write } at the end of this line"),
    ("15 mm}", "15 mm)", "write { and } in place of ( and )"),
    ("15 mm}", "15 mm}}", "there is one } too many; leave it out"),
    ("across}", "across", "write } at the end of this line"),
    ("page}\n", "page\n", "write } at the end of this line"),
    ("{height", "height", "write {height:"),
    ("{height: 21 mm, width: 15 mm}", "height: 21 mm, width: 15 mm", "write size: {height: 21 mm, width: 15 mm}"),
    ("{height: 21 mm, width: 15 mm}", "(height: 21 mm, width: 15 mm)", "write { and } in place of ( and )"),
    ("size: {", "size {", "write size: "),
    ("size: {", "size:{", "write size: "),
    ("mm, width", "mm width", "write , width:"),
    ("mm, width", "mm; width", "write , width:"),
    ("{height: 21", "{height:21", "write height: 21 mm"),
    ('"#22304a"', '"#22304a', 'write the same mark at the end: "#22304a"'),
    ('"#22304a"', '#22304a"', 'as "#22304a"'),
    ('"#22304a"', "#22304a", 'as "#22304a"'),
    ("  - title", "  -title", "write - title: with a blank after the dash"),
    ("  - title", "  – title", "write - title: with a blank after the dash"),
    ("  - title", "    title", "write - title:"),
    ("  - title", "  title", "write - title:"),
    ("  - title", " - title", "write 2 blanks before it"),
    ("  - title", "- title", "write 2 blanks before it"),
    ("    author", "     author", "write 4 blanks before it"),
    ("    author", "   author", "write 4 blanks before it"),
    ("    author", "\u00a0\u00a0\u00a0\u00a0author", "write an ordinary blank in its place"),
    ("    author", "\tauthor", "indent with spaces"),
    ("      kind", "    kind", "write 6 blanks before it"),
    ("      stock", "     stock", "write 6 blanks before it"),
    ("      stock", "       stock", "write 6 blanks before it"),
]
"""What stands in a book, as it may be mistyped, and what the message says to write, which brings it back."""

KNOWN_LATER = {"15 mm", "15 mm)", "15 mm}}", "height: 21 mm, width: 15 mm"}
"""Braces whose partners are not known where a book stands in braces itself."""


def shelf(book: str, number: int, right: str, wrong: str) -> tuple[str, int]:
    """A shelf with a slip in one book, and the line of it; BOOK is the number of the book."""
    books = [book.replace("BOOK", str(each)) for each in range(BOOKS)]
    right, wrong = (text.replace("BOOK", str(number)) for text in (right, wrong))
    above = HEAD + "".join(books[:number])
    line = (above + books[number].partition(right)[0]).count("\n") + 1
    books[number] = books[number].replace(right, wrong, 1)
    return HEAD + "".join(books), line


def told(text: str, folder: Path) -> str:
    [only] = refused(text, folder)
    return only


def title_rows() -> Iterator[tuple[str, str, str]]:
    for book, more in ((ON_LINES, ONLY_ON_LINES), (IN_BRACES, ONLY_IN_BRACES)):
        yield from ((book, typed, right) for typed, right in (TITLES | more).items())


@pytest.mark.parametrize("number", range(BOOKS))
@pytest.mark.parametrize(("book", "typed", "right"), [*title_rows()])
def test_a_title_is_blamed_on_its_line_and_reads_as_it_is_said_to_be_written(
    book: str, typed: str, right: str, number: int, tmp_path: Path
) -> None:
    text, line = shelf(book, number, "Book BOOK", typed)
    said = told(text, tmp_path)
    assert said.startswith(f"shelf.yaml:{line}:") and right in said
    mended, _ = shelf(book, number, "Book BOOK", right)
    names = [plan.name for plan in check(written(mended, tmp_path)).plan.plans.values()]
    assert names[number] == right[1:-1]


def slip_rows() -> Iterator[tuple[str, str, str, str]]:
    for book in (ON_LINES, IN_BRACES):
        for right, wrong, remedy in SLIPS:
            if right in book and not (book is IN_BRACES and wrong in KNOWN_LATER):
                yield book, right, wrong, remedy


@pytest.mark.parametrize("number", range(BOOKS))
@pytest.mark.parametrize(("book", "right", "wrong", "remedy"), [*slip_rows()])
def test_a_slip_is_blamed_on_its_line(
    book: str, right: str, wrong: str, remedy: str, number: int, tmp_path: Path
) -> None:
    text, line = shelf(book, number, right, wrong)
    said = told(text, tmp_path)
    assert said.startswith(f"shelf.yaml:{line}:"), said
    assert remedy.replace("BOOK", str(number)) in said


def test_a_slip_is_told_before_others_further_down(tmp_path: Path) -> None:
    text, line = shelf(ON_LINES.replace("across}", "across"), 0, "author: A", "author:A")
    assert told(text, tmp_path).startswith(f"shelf.yaml:{line}:")


def test_text_in_quotes_that_goes_on_further_in_is_read(tmp_path: Path) -> None:
    """And so do brackets over several lines, and a name that is repeated."""
    text, _ = shelf(ON_LINES, 1, "title: Book BOOK\n", 'title: &name "Ways\n      to: go"\n')
    text = text.replace("author: A. Writer", "author: *name").replace("21 mm, ", "21 mm,\n      ")
    text = text.replace("author: *name", "author: A", 1)
    names = [plan.name for plan in check(written(text, tmp_path)).plan.plans.values()]
    assert names == ["Book 0", "Ways to: go", "Book 2"]
