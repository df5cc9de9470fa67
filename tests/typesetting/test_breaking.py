"""Line breaking by total fit, against every possible set of breaks."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.typesetting.lines.breaking import Glue, Line, Stop, Word, break_paragraph

GLUE = Glue(0.3, 0.15, 0.1, 1.0)
TRACKED = Glue(0.3, 0.15, 0.1, 1.0, 0.5, 0.2)
"""The same where the letters of a line may give 0.5 and take 0.2."""
PASSES = ((9.0, 0.0), (math.inf, 1.0))
"""Loosest ratio and lent stretch of each pass, written here apart from the code."""

Break = tuple[int, int]
"""A word and one of its stops."""


@st.composite
def words(draw: st.DrawFn) -> Word:
    """A word of up to 4 ems, parted at up to two places, with signs that hang into the margins."""
    width = draw(st.floats(0.5, 4.0))
    cuts = sorted(draw(st.lists(st.floats(0.2, 0.8), max_size=2, unique=True)))
    penalty = draw(st.sampled_from((50.0, 0.0, 500.0)))
    flagged = draw(st.booleans())
    inner = [Stop(width * cut + 0.2, width * cut, penalty, flagged) for cut in cuts]
    hang = draw(st.sampled_from((0.0, 0.0, 0.15)))
    return Word(width, hang, (*inner, Stop(width - draw(st.sampled_from((0.0, 0.12))), width)))


def every_way(paragraph: Sequence[Word]) -> Iterator[tuple[Break, ...]]:
    """All sets of breaks there are; the end of the paragraph belongs to each."""
    places = [(at, stop) for at, word in enumerate(paragraph) for stop in range(len(word.stops))]
    *inner, end = places
    for count in range(len(inner) + 1):
        for chosen in combinations(inner, count):
            yield (*chosen, end)


def tight(long: float, shrink: float, tightening: float) -> float:
    """The ratio of a line too long: spaces and letters lose alike, in shares of what they may."""
    return -long / (shrink + tightening) if shrink + tightening else -math.inf


def loose(short: float, stretch: float, loosening: float) -> float:
    """The ratio of a line too short: both gain alike, up to a ratio of 1; what is left then widens the spaces."""
    if short <= stretch + loosening:
        return short / (stretch + loosening) if stretch + loosening else 0.0
    return (short - loosening) / stretch if stretch else math.inf


def cost_of(
    paragraph: Sequence[Word],
    breaks: Sequence[Break],
    measures: Sequence[float],
    indent: float,
    trial: tuple[Glue, float, float],
) -> float:
    """The demerits of one way, after Knuth and Plass (1981); infinite if a line is too tight or too loose."""
    glue, loosest, lent = trial
    lefts = [sum(word.width + glue.space for word in paragraph[:at]) for at in range(len(paragraph))]
    total, fitness, flagged = 0.0, "normal", False
    first, start = 0, (0.0 if indent else paragraph[0].hang) - indent
    inside = False
    for number, (at, stop) in enumerate(breaks):
        whole = stop == len(paragraph[at].stops) - 1
        chosen = paragraph[at].stops[stop]
        short = measures[min(number, len(measures) - 1)] - (lefts[at] + chosen.before - start)
        spaces = at - first
        last = (at, stop) == breaks[-1]
        if short < 0:
            ratio = tight(-short, spaces * glue.shrink, glue.tightening)
        else:
            ratio = 0.0 if last else loose(short, spaces * glue.stretch + lent, glue.loosening)
        if not -1 <= ratio <= loosest:
            return math.inf
        penalty = chosen.penalty
        total += (1 + 100 * abs(ratio) ** 3 + penalty) ** 2
        classes = ["tight", "normal", "loose", "very loose"]
        now = "tight" if ratio < -0.5 else "normal" if ratio <= 0.5 else "loose" if ratio <= 1 else "very loose"
        if abs(classes.index(now) - classes.index(fitness)) > 1:
            total += 100
        if flagged and chosen.flagged:
            total += 200_000
        elif flagged and last and spaces == 0 and inside:
            if loosest < math.inf:
                return math.inf
            total += 5e9
        fitness, flagged, inside = now, chosen.flagged, not whole
        if whole:
            first = at + 1
            start = lefts[first] + paragraph[first].hang if not last else 0.0
        else:
            first, start = at, lefts[at] + chosen.after
    return total


@given(
    paragraph=st.lists(words(), min_size=1, max_size=6),
    measures=st.lists(st.floats(4.5, 12.0), min_size=1, max_size=3),
    indent=st.sampled_from((0.0, 0.0, 1.0, -0.5)),
    glue=st.sampled_from((GLUE, TRACKED)),
)
@settings(max_examples=400, deadline=None)
def test_no_set_of_breaks_is_better(paragraph: list[Word], measures: list[float], indent: float, glue: Glue) -> None:
    """Knuth and Plass, "Breaking Paragraphs into Lines", 1981: the sum of demerits is least."""
    if min(measures) < 4.5 + indent:
        measures = [measure + indent for measure in measures]
    lines = break_paragraph(paragraph, glue, measures, indent)
    found = [(line.last, line.closed) for line in lines]
    ways = list(every_way(paragraph))
    for loosest, lent in PASSES:
        costs = {way: cost_of(paragraph, way, measures, indent, (glue, loosest, lent)) for way in ways}
        least = min(costs.values())
        if least < math.inf:
            assert math.isclose(costs[tuple(found)], least, rel_tol=1e-9)
            return
    raise AssertionError("no way at all")


@given(
    paragraph=st.lists(words(), min_size=1, max_size=6),
    measure=st.floats(4.5, 12.0),
    count=st.integers(1, 6),
)
@settings(max_examples=200, deadline=None)
def test_of_so_many_lines_none_are_better(paragraph: list[Word], measure: float, count: int) -> None:
    """Spaces are at most 2.5 times as wide as usual: a ratio of 4.5, for they gain a third at a ratio of 1."""
    found = break_paragraph(paragraph, TRACKED, (measure,), count=count)
    costs = {
        way: cost_of(paragraph, way, (measure,), 0.0, (TRACKED, 4.5, 0.0))
        for way in every_way(paragraph)
        if len(way) == count
    }
    least = min(costs.values(), default=math.inf)
    if found:
        assert len(found) == count
        assert math.isclose(costs[tuple((line.last, line.closed) for line in found)], least, rel_tol=1e-9)
    else:
        assert least == math.inf


@given(paragraph=st.lists(words(), min_size=1, max_size=60), measure=st.floats(5.0, 25.0))
@settings(deadline=None)
def test_lines_follow_one_another_and_fill_the_measure(paragraph: list[Word], measure: float) -> None:
    lines = break_paragraph(paragraph, GLUE, (measure,))
    at: tuple[int, int | None] = (0, None)
    for line in lines:
        assert (line.first, line.opened) == at
        whole = line.closed == len(paragraph[line.last].stops) - 1
        at = (line.last + 1, None) if whole else (line.last, line.closed)
    assert at == (len(paragraph), None)
    for line in lines[:-1]:
        if line.last > line.first:
            assert math.isclose(width_of(paragraph, line), measure)
    assert width_of(paragraph, lines[-1]) <= measure + 1e-9
    assert all(line.short >= -GLUE.shrink * (line.last - line.first) - 1e-9 for line in lines)
    assert lines[-1].short <= 0


def width_of(paragraph: Sequence[Word], line: Line) -> float:
    """How wide a line is from margin to margin."""
    left = 0.0 if line.opened is not None else paragraph[line.first].hang
    width = line.short - (left if line.opened is None else paragraph[line.first].stops[line.opened].after)
    for at in range(line.first, line.last):
        width += paragraph[at].width + GLUE.space
    return width + paragraph[line.last].stops[line.closed].before


def test_a_box_wider_than_the_measure_stands_alone() -> None:
    wide = Word(9.0, 0.0, (Stop(9.0, 9.0),))
    narrow = Word(1.0, 0.0, (Stop(1.0, 1.0),))
    lines = break_paragraph([narrow, wide, narrow], GLUE, (5.0,))
    assert [(line.first, line.last) for line in lines] == [(0, 0), (1, 1), (2, 2)]


def test_a_hyphen_is_taken_where_it_saves_a_loose_line() -> None:
    """The first line would need r = 1.0 / 0.15; parted, it is full."""
    word = Word(1.4, 0.0, (Stop(0.7, 0.5, 50.0, flagged=True), Stop(1.4, 1.4)))
    plain = Word(2.0, 0.0, (Stop(2.0, 2.0),))
    lines = break_paragraph([plain, plain, word, plain], GLUE, (5.31,))
    assert (lines[0].last, lines[0].closed) == (2, 0)


def test_the_same_paragraph_is_broken_in_the_same_way_in_any_unit() -> None:
    paragraph = [Word(w / 7, 0.0, (Stop(w / 7, w / 7),)) for w in (9, 14, 3, 22, 8, 17, 5, 12, 30, 4, 11, 8)]
    tenfold = [Word(w * 10, 0.0, (Stop(w * 10, w * 10),)) for w, _, _ in paragraph]
    glue = Glue(*(part * 10 for part in GLUE))
    ends = [line.last for line in break_paragraph(paragraph, GLUE, (7.0,))]
    assert ends == [line.last for line in break_paragraph(tenfold, glue, (70.0,))]


def test_the_end_of_a_word_does_not_stand_alone_on_the_last_line_if_that_can_be_helped() -> None:
    """Parted, the first line is full: (1 + 50)² + 1². Whole, it needs r = 0.5 / 0.6, which is (1 + 57.9)² + 1²."""
    plain = Word(1.0, 0.0, (Stop(1.0, 1.0),))
    word = Word(1.0, 0.0, (Stop(0.2, 0.1, 50.0, flagged=True), Stop(1.0, 1.0)))
    lines = break_paragraph([plain] * 5 + [word], GLUE, (6.7,))
    assert [(line.last, line.closed) for line in lines] == [(4, 0), (5, 1)]
