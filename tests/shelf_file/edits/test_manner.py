"""New keys where the models have them, and words that no reader takes for numbers."""

from __future__ import annotations

import pytest

from bookmaker.shelf.entries import ShelfSpec
from bookmaker.shelf_file.edits.edit import SetValue
from bookmaker.shelf_file.edits.manner import manner_of
from bookmaker.shelf_file.edits.yaml_text import edit_yaml
from bookmaker.shelf_file.yaml_tree import Plain
from bookmaker.things.book.entry import BookEntry

MANNER = manner_of(ShelfSpec, BookEntry)

TEXT = """\
shelf: Salt
stocks: {}
defaults:
  cover: {kind: wrap}
books:
  - title: Fog
    size: {height: 21 mm, width: 12 mm}
    inside: {file: fog.txt}
    row: [One]
"""


@pytest.mark.parametrize(
    ("path", "value", "old", "new"),
    [
        (("books", 0, "author"), "1984", "Fog\n", 'Fog\n    author: "1984"\n'),
        (("books", 0, "block", "pages"), "40", "12 mm}\n", "12 mm}\n    block: {pages: 40}\n"),
        (("books", 0, "inside", "kind"), "text", "{file", "{kind: text, file"),
        (("books", 0, "title"), "no", "Fog\n", '"no"\n'),
        (("books", 0, "design"), {"wear": "heavy"}, "fog.txt}\n", "fog.txt}\n    design: {wear: heavy}\n"),
        (("books", 0, "row", 0), "1", "[One]", '["1"]'),
        (("scale",), "1:12", "Salt\n", "Salt\nscale: 1:12\n"),
        (("defaults", "block"), {"pages": "8"}, "defaults:\n", "defaults:\n  block: {pages: 8}\n"),
    ],
)
def test_new_keys_and_words(path: tuple[str | int, ...], value: Plain, old: str, new: str) -> None:
    assert TEXT.count(old) == 1
    assert edit_yaml(TEXT, [SetValue(path, value)], MANNER) == TEXT.replace(old, new)
