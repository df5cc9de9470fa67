"""What shows nothing is no value, whatever key it stands under."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import pytest
from pydantic import TypeAdapter, ValidationError

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.visible import brief, is_seen, printable
from bookmaker.typesetting.manuscripts.manuscript import read_manuscript
from tests.kit.models import all_models

NOTHING = {
    "nothing": "",
    "a blank": " ",
    "a soft hyphen": "\u00ad",
    "a joiner": "\u200d",
    "a no-break blank": "\u00a0",
    "a wide blank": "\u3000",
    "an empty cell of Braille": "\u2800",
    "several": " \u200c\u00a0\u00ad",
}


KEYS = [(model, key) for model in all_models() for key in model.model_fields]


def test_all_keys_are_found() -> None:
    names = {model.__name__ for model, _ in KEYS}
    assert {"ShelfSpec", "BookEntry", "StockEntry", "TextInside", "TitlePage", "SlipcaseEntry", "BoxFace"} <= names
    assert len(KEYS) > 300


@pytest.mark.parametrize("what", NOTHING)
def test_no_key_takes_a_value_that_shows_nothing(what: str) -> None:
    taking: list[str] = []
    for model, key in KEYS:
        field = model.model_fields[key]
        kind = TypeAdapter(Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation)
        for value in (NOTHING[what], [NOTHING[what]], {NOTHING[what]: NOTHING[what]}):
            try:
                kind.validate_python(value)
            except ValidationError:
                continue
            taking.append(f"{model.__name__}.{key}: {value!r}")
    assert taking == []


SHELF = """\
shelf: Nothing
stocks: {laid: {caliper: 75 um}, card: {caliper: 160 um}}
books:
  - title: Tide
    size: {height: 42 mm, width: 30 mm}
    block: {kind: accordion, stock: laid, pages: 16}
    cover: {kind: wrap, stock: card}
"""


def refusals(folder: Path, text: str) -> list[str]:
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(folder / "shelf.yaml")
    return [str(problem) for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("good", "bad", "told"),
    [
        ("stock: laid", 'stock: ""', "6:37: Tide: block.stock is empty; write a value or leave the line out"),
        ("stock: card", 'stock: "\u00ad"', "7:32: Tide: cover.stock holds nothing that can be seen; "
         "write a value or leave the line out"),
        ("title: Tide", 'title: "\u2800"', "4:12: book 1: title holds nothing that can be seen; "
         "write at least one letter"),
        ("card: {", '"\u00ad": {caliper: 1 mm}, card: {', "2:9: stocks has a name in which nothing can be seen; "
         "write names of at least one letter"),
    ],
)  # fmt: skip
def test_it_is_said_what_is_empty_and_where(tmp_path: Path, good: str, bad: str, told: str) -> None:
    assert refusals(tmp_path, SHELF.replace(good, bad)) == [f"shelf.yaml:{told}"]


@pytest.mark.parametrize("key", ["subtitle", "imprint", "place", "year"])
def test_a_sign_that_markdown_takes_away_stands_as_it_was_written(tmp_path: Path, key: str) -> None:
    page = f"    inside: [{{kind: title page, {key}: '\\'}}, {{kind: blank}}]\n"
    (tmp_path / "shelf.yaml").write_text(SHELF + page, encoding="utf-8")
    assert check(tmp_path / "shelf.yaml").sound


UNSEEN = ("\u00ad", "\u200d", "&nbsp;", "&shy;", "*\u00ad*", "[\u00a0](x)", "\u2800", "`\u00ad`")


@pytest.mark.parametrize("nothing", UNSEEN)
@pytest.mark.parametrize("text", ["# {}\n\nSea.", "Sea.\n\n## {}\n", "# {}: {}\n\nSea.", "Sea.\n\n{}\n\nWind.", "> {}"])
def test_passages_of_a_text_that_show_nothing_are_left_out_and_told(tmp_path: Path, nothing: str, text: str) -> None:
    (tmp_path / "sea.md").write_text(text.replace("{}", nothing) + "\n\nEnd.", encoding="utf-8")
    inside = "    inside: [{kind: contents}, {kind: text, file: sea.md, size: 3 pt}, {kind: blank}]\n"
    (tmp_path / "shelf.yaml").write_text(SHELF + inside, encoding="utf-8")
    check(tmp_path / "shelf.yaml")
    read = read_manuscript(tmp_path / "sea.md")
    assert all(is_seen(passage.text) for passage in read.passages)


def test_what_is_left_out_is_counted(tmp_path: Path) -> None:
    (tmp_path / "sea.md").write_text("# \u00ad\n\nSea.\n\n&shy;\n\n# Wind \u00ad\u200d and\n", encoding="utf-8")
    read = read_manuscript(tmp_path / "sea.md")
    assert [passage.text for passage in read.passages] == ["Sea.", "Wind and"]
    assert "sea.md has 2 passages in which nothing can be seen, left out" in [one.message for one in read.problems]


def test_what_can_be_seen() -> None:
    assert [text for text in NOTHING.values() if is_seen(text)] == []
    for text in ("a", ".", "—", "\u0301", "ש", "漢", "\\", "*", "\u00ad a"):
        assert is_seen(text), text


def test_no_sign_of_a_name_steers_a_terminal() -> None:
    assert printable("a\x1b[31mb\x9b2J\u202ec\ud800\rd\x07") == "a?[31mb?2J?c??d?"
    assert printable("Ὁ λύχνος\tשלום\n漢") == "Ὁ λύχνος\tשלום\n漢"
    assert brief("a\nb\tc") == "a?b?c"
