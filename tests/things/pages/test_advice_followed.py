"""What pages of text advise is followed to the letter, automatically: then nothing is left of what it was for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.problems import Problem, Severity
from bookmaker.ground.units import to_pt
from bookmaker.things.book.pages.prose.loaded_text import LoadedText, TextSource
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import PageFrame

SENTENCE = "The keeper trims the lamp at dusk and writes down the wind. "
VERSE = "The lamp is lit, the glass is wiped,\\\n   the keeper's wife has gone to bed.\n\n"
LONG_VERSE = f"{SENTENCE}\\\n{' ' * 40}Fog.\n\n"
TABLE = "| Day | Oil | Wick | Glass | Wind | Ships |\n|---|---|---|---|---|---|\n"
TABLE += "| Monday | none | new | wiped | SW | two |\n\n"
TEXTS = {
    "short": SENTENCE * 2,
    "prose": SENTENCE * 60,
    "long": f"## The lamp\n\n{SENTENCE * 90}\n\n## The wind\n\n{SENTENCE * 30}",
    "verse": VERSE * 6,
    "long verse": LONG_VERSE * 4,
    "table": TABLE * 2 + SENTENCE * 4,
}
KINDS = ("broken into two", r"not fit in \d+ page", "print as texture", "most words", r"does not fit in [\d.]+ pt")
"""What messages say that are gone when their advice is followed."""

NUMBER = r"(\d+(?:\.\d+)?)"
WAY = re.compile(rf"(smallest: and )?(pages|size|smallest|largest): {NUMBER}( pt)?|a page {NUMBER} mm wide")


class Sources(dict[str, TextSource]):
    """The texts by their names; a failing example needs no more of them than that."""

    def __repr__(self) -> str:
        return "texts"


@pytest.fixture(scope="module")
def sources(tmp_path_factory: pytest.TempPathFactory) -> Sources:
    folder = tmp_path_factory.mktemp("texts")
    for name, text in TEXTS.items():
        (folder / f"{name}.md").write_text(text, "utf-8")
    return Sources({name: TextInside(file=f"{name}.md").load(folder).source for name in TEXTS})


def followed(remedy: str, keys: dict[str, str], frame: PageFrame) -> Iterator[tuple[str, dict[str, str], PageFrame]]:
    """Each of the ways a remedy names, alone, in the keys of the text or in its pages."""
    for both, key, number, _, wide in WAY.findall(remedy):
        if wide:
            yield "width", keys, replace(frame, width=float(wide))
        elif key == "pages":
            yield key, keys, replace(frame, pages=int(number))
        else:
            sizes = {"smallest": f"{number} pt"} if both else {}
            yield key, keys | sizes | {key: f"{number} pt"}, frame


def kinds(problems: tuple[Problem, ...]) -> set[str]:
    return {kind for kind in KINDS for problem in problems if re.search(kind, problem.message)}


@given(
    name=st.sampled_from(sorted(TEXTS)),
    width=st.sampled_from([6.0, 9.0, 12.0, 15.0, 24.0]),
    height=st.sampled_from([9.0, 14.0, 21.0, 30.0]),
    pages=st.sampled_from([2, 4, 12, 24]),
    size=st.just("fit") | st.floats(0.8, 16).map("{:.2f} pt".format),
    bounds=st.sampled_from([{}, {"largest": "1.8 pt"}, {"largest": "15 pt"}, {"smallest": "2 pt"}]),
    dpi=st.sampled_from([300.0, 600.0]),
)
@settings(max_examples=40, deadline=None)
def test_advice_holds_when_it_is_followed(
    sources: Sources,
    name: str,
    width: float,
    height: float,
    pages: int,
    size: str,
    bounds: dict[str, str],
    dpi: float,
) -> None:
    frame = PageFrame(width, height, pages, resolution_dpi=dpi)
    keys = {"file": f"{name}.md", "size": size, **(bounds if size == "fit" else {})}
    said = LoadedText(TextInside.model_validate(keys), sources[name]).compose(frame).problems
    for problem in said:
        cured = kinds((problem,))
        if " and pages" in problem.remedy:
            continue
        for way, new, page in followed(problem.remedy, keys, frame):
            then = LoadedText(TextInside.model_validate(new), sources[name]).compose(page).problems
            left = kinds(then)
            assert not cured & left, (str(problem), way, list(map(str, then)))
            if way in {"size", "largest", "smallest"}:
                assert "most words" not in left, (str(problem), way, list(map(str, then)))
            if more := re.search(r"to fill (\d+)", problem.remedy) if way == "largest" else None:
                held = [p.message for p in then if "fills" in p.message]
                assert not held or f"fills {more[1]} " in held[0]
                assert not [p for p in then if p.severity is Severity.ERROR]


def test_lines_of_verse_are_offered_no_type_that_cannot_be_read(sources: Sources) -> None:
    """Their widest line is about 28 ems: in the 8 mm of a page 12 mm wide that is 0.8 pt."""
    source = sources["long verse"]
    frame = PageFrame(12, 21, 24)
    inside = LoadedText(TextInside.model_validate({"file": "a.md", "size": "1.4 pt"}), source).compose(frame)
    [told] = [problem for problem in inside.problems if "broken into two" in problem.message]
    assert re.fullmatch(r"choose a page [\d.]+ mm wide, for the longest to fit", told.remedy)
    inside = LoadedText(TextInside.model_validate({"file": "a.md", "size": "3.4 pt"}), source).compose(frame)
    [told] = [problem for problem in inside.problems if "broken into two" in problem.message]
    assert told.remedy == ""


def test_rows_of_a_table_are_no_verse(sources: Sources) -> None:
    entry = TextInside.model_validate({"file": "a.md", "size": "2.2 pt"})
    problems = LoadedText(entry, sources["table"]).compose(PageFrame(9, 12, 24)).problems
    assert any("no room for its columns" in p.message or "room for their columns" in p.message for p in problems)
    assert not [problem for problem in problems if "verse" in problem.message]


def test_type_that_prints_as_texture_because_it_was_fitted_needs_more_pages(sources: Sources) -> None:
    keys = {"file": "a.md", "size": "fit", "smallest": "1.2 pt"}
    entry, frame = TextInside.model_validate(keys), PageFrame(15, 21, 2, resolution_dpi=300)
    problems = LoadedText(entry, sources["prose"]).compose(frame).problems
    [told] = [problem for problem in problems if "texture" in problem.message]
    [size] = re.findall(r"for ([\d.]+) pt type", told.remedy)
    pages = int(told.remedy.split("pages: ")[1].split()[0])
    again = LoadedText(entry, sources["prose"]).compose(replace(frame, pages=pages))
    assert again.x_height
    assert to_pt(again.x_height) >= float(size) * 0.5
    assert not [problem for problem in again.problems if problem.severity is not Severity.NOTE]
