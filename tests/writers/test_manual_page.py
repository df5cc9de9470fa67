"""The manual, looked up and as one page: everything is found, every link leads somewhere, no network is asked."""

from __future__ import annotations

import re
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest

import bookmaker
from bookmaker.shelf.schema import shelf_schema
from bookmaker.writers.manual.chapters import Section, anchor_of, chapters, sections_of
from bookmaker.writers.manual.keys import Key, every_key, keys_chapter
from bookmaker.writers.manual.page import manual_page
from bookmaker.writers.manual.places import key_place, message_place
from bookmaker.writers.manual.topics import Topic, look_up

TEXTS = chapters()
SECTIONS = [section for name, text in TEXTS.items() for section in sections_of(name, text)]
SCHEMA = shelf_schema()
KEYS = list(every_key(SCHEMA))


def found(word: str) -> Topic:
    return look_up(word, SECTIONS, KEYS, TEXTS["glossary"])


class Links(HTMLParser):
    """What a page calls its parts, and what it asks for."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: list[str] = []
        self.asked: list[str] = []
        self.feed(page)

    def handle_starttag(self, _: str, attrs: list[tuple[str, str | None]]) -> None:
        for key, value in attrs:
            if key == "id":
                self.names.append(value or "")
            if key in ("href", "src"):
                self.asked.append(value or "")


def test_every_link_of_the_page_leads_to_a_part_of_it() -> None:
    links = Links(manual_page(TEXTS | {"keys": keys_chapter(SCHEMA)}))
    assert len(links.names) == len(set(links.names)) > 60
    assert {name for name in links.asked if name.startswith("#")} <= {f"#{name}" for name in links.names}
    assert [name for name in links.asked if not name.startswith(("#", "data:image/png;base64,"))] == []


def test_every_key_of_every_group_has_a_row_of_its_own() -> None:
    names = set(Links(manual_page(TEXTS)).names)
    groups = [model["properties"] for model in SCHEMA["$defs"].values() if "properties" in model]
    assert {key_place(key, group) for group in groups for key in group} <= names
    assert key_place("pages", {"kind", "pages", "fill_sections", "fastening"}) == "key-of-sections-pages"
    assert key_place("no such key", {"no such key"}) == "keys"


def test_messages_lead_to_their_cause() -> None:
    page = Links(manual_page(TEXTS))
    rows = [name for name in page.names if name.startswith("the-message-says-")]
    assert len(rows) > 10
    assert message_place("stocks.page paper.caliper: 90 has no unit") == "the-message-says-has-no-unit"
    assert message_place("lower shelf is over by 3 mm") in rows
    assert message_place("nobody ever said this") is None


def test_looks_and_search_may_stand_beside_the_page() -> None:
    page = manual_page(TEXTS, "manual.css", "manual.js")
    assert "<style>" not in page and "addEventListener" not in page
    assert {"manual.css", "manual.js"} <= set(Links(page).asked)


def test_the_page_has_all_that_the_chapters_say() -> None:
    page = manual_page(TEXTS)
    shown = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", page))
    assert {section.heading for section in SECTIONS if section.heading not in unescape(shown)} == set()


def test_sections_are_the_whole_of_their_chapter() -> None:
    text = "# One\n\nfirst\n\n```yaml\n# no heading\nbooks:\n```\n\n## Two: a thing\n\nsecond\n"
    assert list(sections_of("one", text)) == [
        Section("one", "One", 1, "first\n\n```yaml\n# no heading\nbooks:\n```"),
        Section("one", "Two: a thing", 2, "second"),
    ]
    assert anchor_of("Two: a thing") == "two-a-thing"


def test_every_key_is_found_by_its_name() -> None:
    names = set(SCHEMA["properties"]) | {key for part in SCHEMA["$defs"].values() for key in part.get("properties", {})}
    assert {key.name for key in KEYS} == names
    for name in names:
        assert next(key.name for key in found(name).keys) == name


@pytest.mark.parametrize(
    ("word", "first"), [("ease", "clearance"), ("Concertina", "accordion"), ("spine strip", "stiffener")]
)
def test_the_other_name_of_a_thing_is_found(word: str, first: str) -> None:
    assert [meaning.split(" (")[0] for meaning in found(word).meanings] == [first]


def test_a_key_that_means_the_same_in_several_groups_is_told_once() -> None:
    [key] = look_up(
        "wear", [], [Key("wear", "cloth", "how worn", "", ""), Key("wear", "atlas", "how worn", "", "")], ""
    ).keys
    assert (key.group, key.meaning) == ("cloth, atlas", "how worn")


def test_what_nobody_wrote_of_is_not_found() -> None:
    assert found("gramophone").empty
    assert not found("blocks").empty


def test_messages_that_the_manual_explains_are_those_that_are_said() -> None:
    sources = " ".join(
        path.read_text(encoding="utf-8") for path in sorted(Path(bookmaker.__file__).parent.rglob("*.py"))
    )
    said = re.sub(r"\s+", " ", re.sub(r'"\s*\n\s*f?"', "", sources))
    _, _, table = TEXTS["messages"].partition("| the message says |")
    words = re.findall(r"^\| ([^|]+) \|", table, re.MULTILINE)
    assert len(words) > 15
    assert [phrase for phrase in words if phrase not in said] == []
