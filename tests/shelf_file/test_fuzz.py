"""Shelf files that nobody would write: whatever stands in them, bookmaker answers in words."""

from __future__ import annotations

import string
from contextlib import chdir
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.problems import BookmakerError
from tests.kit.command_line import bookmaker

SHELF = """\
shelf: The Salt Office
scale: 1:12
printer: {sheet: A4, margins: 5 mm, resolution: 600 dpi, rules: {across: 149.4 mm, up: 150 mm}}
stocks:
  laid: {caliper: 75 um, glue: spray, grain: long, tolerance: 8 %}
  card: {pile: 10 sheets = 1.6 mm, film: [50 um, 10 um]}
  bond: {basis_weight: 60 lb book}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm, clearance: 0.2 mm}
defaults:
  block: {kind: accordion, stock: laid}
  cover: {kind: wrap, stock: card}
books:
  - title: Tide Tables
    author: N. Haul
    size: {height: 21 mm, width: 15 mm}
    block: {pages: 8, flyleaves: 2}
    inside: {kind: text, file: tide.txt, size: 3 pt}
    space: upper
  - title: Salt & Rope
    life_size: {height: 198 mm, width: 129 mm}
    direction: right-to-left
    block: {pages: 12, stock: bond}
    cover: {turn_in: 5 mm, head_turn_in: 4 mm}
    inside: {kind: ruled, spacing: 1.2 mm}
    design: {colour: "#2f4f46", spine_title: up}
"""

NASTY = (
    "", "~", "null", "no", "yes", "0", "-1", "1e999", "1e-999", ".inf", "-.inf", ".nan", "0x10", "1_000", "12:30",
    "2001-02-03", "1/0 mm", "0/0", "1:0", "0:1", "1:1e9", "99999999999999999999999 mm", "3 m", "0.001 um", "-0 mm",
    "mm", "µm", "½ in", "1½ in", "٣ mm", "Ⅷ mm", "² mm", "21 mm mm", "21 mm;", "10 %", "%", "0 sheets = 1 mm",
    "1 sheets = 1 mm = 1 mm", "0 lb book", "60 lb nothing", "A4 A4", "0 x 0 mm", "40 x 40 mm", "1 x 9999 mm",
    "[]", "{}", "[[]]", "{a: {b: [c]}}", "[1, 2]", "{kind: text}", "{kind: }", "{kind: [text]}",
    "{style: plain}",
    "*a", "&a x", "&a [*a]", "!!int x", "!!binary ////", "! x", "<<",
    "'", '"', '"\\0"', '"\\uD800"', '"\\e[2J"', '"\\x85"',
    "|\n      text", ">\n", "? x", "- x", "- - - x", "---", "...", "%YAML 9.9", "#", "@x",
    "`x`", "{", "}", "[", "]", ",",
    "/", "..", ".", "../../..", "/dev/null", "/etc", "tide.txt/x", "x" * 5000, "a/" * 3000,
    "\ufeff", "\u202e", "\u0301",
    "\U0001f4d6", "אב", "ﷺ", "\x85", "\u2028", "\x7f", "\x1b[31m", "\x0b", "\x0c", "\r",
)  # fmt: skip


def at(data: st.DataObject, text: str) -> int:
    return data.draw(st.integers(0, len(text)))


def cut(data: st.DataObject, text: str) -> str:
    start = at(data, text)
    return text[:start] + text[start + data.draw(st.integers(1, 40)) :]


def doubled(data: st.DataObject, text: str) -> str:
    start = at(data, text)
    return text[: start + data.draw(st.integers(1, 80))] + text[start:]


def lines_changed(data: st.DataObject, text: str) -> str:
    lines = text.split("\n")
    one, other = (data.draw(st.integers(0, len(lines) - 1)) for _ in range(2))
    what = data.draw(st.sampled_from(["swap", "delete", "repeat", "indent"]))
    if what == "swap":
        lines[one], lines[other] = lines[other], lines[one]
    elif what == "delete":
        del lines[one]
    elif what == "repeat":
        lines.insert(other, lines[one])
    else:
        lines[one] = data.draw(st.sampled_from(["  ", " ", "\t", "- ", ""])) + lines[one].lstrip()
    return "\n".join(lines)


def inserted(data: st.DataObject, text: str) -> str:
    start = at(data, text)
    odd = data.draw(st.text(max_size=4) | st.sampled_from(NASTY) | st.text(string.punctuation, max_size=3))
    return text[:start] + odd + text[start:]


def value_replaced(data: st.DataObject, text: str) -> str:
    """A nasty value after some key, in place of the rest of it."""
    colons = [place for place, sign in enumerate(text) if sign == ":" and text[place + 1 : place + 2] in {" ", "\n"}]
    if not colons:
        return text
    start = data.draw(st.sampled_from(colons)) + 1
    ends = [found for found in (text.find(sign, start + 1) for sign in (",", "}", "\n")) if found > 0]
    return f"{text[:start]} {data.draw(st.sampled_from(NASTY))}{text[min(ends, default=len(text)) :]}"


MUTATIONS = (cut, doubled, lines_changed, inserted, value_replaced, value_replaced)


@st.composite
def mutated(draw: st.DrawFn) -> bytes:
    data, text = draw(st.data()), SHELF
    for mutate in draw(st.lists(st.sampled_from(MUTATIONS), min_size=1, max_size=3)):
        text = mutate(data, text)
    raw = text.encode("utf-8", "surrogatepass")
    if draw(st.integers(0, 9)) == 0:
        place = draw(st.integers(0, len(raw)))
        raw = raw[:place] + draw(st.binary(max_size=3)) + raw[place + 1 :]
    return raw


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("fuzz")
    (folder / "tide.txt").write_text("The tide came in twice that day. " * 20, encoding="utf-8")
    (folder / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    return folder


def test_the_shelf_to_be_mutated_is_sound(folder: Path) -> None:
    (folder / "whole.yaml").write_text(SHELF, encoding="utf-8")
    assert check(folder / "whole.yaml").sound


@settings(max_examples=350, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.large_base_example])
@given(raw=mutated())
def test_any_shelf_file_is_worked_out_or_refused_in_words(folder: Path, raw: bytes) -> None:
    shelf = folder / "shelf.yaml"
    shelf.write_bytes(raw)
    try:
        problems = check(shelf).problems
    except BookmakerError as refusal:
        problems = tuple(refusal.problems)
        assert problems
    for problem in problems:
        assert problem.message.strip()
        assert problem.place is not None
        str(problem).encode("utf-8")
        assert not {"\x1b", "\n", "\r", "\0"} & set(str(problem))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.large_base_example])
@given(raw=mutated(), option=st.sampled_from(["--json", "--explain=1", ""]))
def test_the_command_ends_with_0_1_or_2(folder: Path, raw: bytes, option: str) -> None:
    (folder / "shelf.yaml").write_bytes(raw)
    with chdir(folder):
        said = bookmaker("check", "shelf.yaml", *([option] if option else []))
    assert said.code in {0, 1, 2}
    assert (said.out + said.err).encode()
