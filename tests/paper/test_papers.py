"""Sheet formats, grades and calipers: finding them, and what is said when they are not found."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.units import NotAMeasure
from bookmaker.paper.grades import (
    CALIPERS,
    GRADES,
    Caliper,
    caliper_from_bulk,
    find_grade,
    grammage_from_basis,
    nominal_caliper,
    usual_bulk,
)
from bookmaker.paper.papers import FORMATS, Confidence, SheetFormat, find_format
from tests.kit.manual import CHAPTERS


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("A4", "A4"),
        ("a4", "A4"),
        (" DIN A3 ", "A3"),
        ("ISO A5", "A5"),
        ("Letter", "letter"),
        ("US letter", "letter"),
        ("LEGAL", "legal"),
        ("tabloid", "tabloid"),
    ],
)
def test_named_formats(text: str, name: str) -> None:
    assert find_format(text) is FORMATS[name]


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("210 x 297 mm", (210.0, 297.0)),
        ("210x297mm", (210.0, 297.0)),
        ("210 mm × 297 mm", (210.0, 297.0)),
        ("21 cm by 29.7 cm", (210.0, 297.0)),
        ("8.5 x 11 in", (215.9, 279.4)),
        ('8 1/2" x 11"', (215.9, 279.4)),
        ("8½ × 11 in", (215.9, 279.4)),
        ("8,5 x 11 in", (215.9, 279.4)),
        ("210 mm x 11 in", (210.0, 279.4)),
        ("40 x 1500 mm", (40.0, 1500.0)),
        ("8 1/3 x 11 in", (float(Fraction(25, 3) * Fraction("25.4")), 279.4)),
    ],
)
def test_formats_by_their_sides(text: str, size: tuple[float, float]) -> None:
    assert find_format(text).size == size


def test_a_format_of_ones_own_keeps_unit_and_words() -> None:
    sheet = find_format("8.5 x 13 in")
    assert (sheet.name, sheet.unit, str(sheet.width), str(sheet.height)) == ("8.5 × 13 in", "in", "8.5", "13")
    assert sheet.source.mark is Confidence.PRACTICE


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("A44", "there is no sheet format 'A44'; did you mean A4?"),
        ("A4 landscape", "there is no sheet format 'A4 landscape'; did you mean A4?"),
        ("leter", "there is no sheet format 'leter'; did you mean letter?"),
        (
            "foolscap",
            "there is no sheet format 'foolscap'; write A3, A4, A5, letter, legal, tabloid, or two sides: 210 x 297 mm",
        ),
        ("210 x 297", "210 x 297 has no unit; write 210 x 297 mm"),
        ("210 mm x 297", "297 has no unit; write 297 mm"),
        ("210 x 297 kg", "'kg' is not a unit of length; write it in mm, cm, m, um, in, ft, mil, pt"),
        ("210 mm", "210 mm is not a sheet size; write two sides, such as 210 x 297 mm"),
        ("1 x 2 x 3 mm", "1 x 2 x 3 mm is not a sheet size; write two sides, such as 210 x 297 mm"),
        ("0 x 297 mm", "0 x 297 mm is not a sheet for a printer; write sides from 40 mm to 1500 mm"),
        ("210 x 3000 mm", "210 x 3000 mm is not a sheet for a printer; write sides from 40 mm to 1500 mm"),
        ("-210 x 297 mm", "-210 mm is negative; write 210 mm"),
        ("210 x mm", "'mm' is not a length; write it like 21 mm or 7/8 in"),
        ("", "the value is empty; write it like A4 or 210 x 297 mm"),
    ],
)
def test_formats_that_are_none(text: str, said: str) -> None:
    with pytest.raises(NotAMeasure) as caught:
        find_format(text)
    assert str(caught.value) == said


@given(st.integers(40, 1500), st.integers(40, 1500))
def test_a_format_is_as_large_as_it_says(width: int, height: int) -> None:
    assert find_format(f"{width} x {height} mm").size == (width, height)


@given(st.text(max_size=90) | st.from_regex(r"[0-9 ./,-]{1,9} ?(x|by|×) ?[0-9 ./,-]{1,9}(mm|in|\")?", fullmatch=True))
def test_any_text_is_a_format_or_refused(text: str) -> None:
    try:
        found = find_format(text)
    except NotAMeasure as problem:
        assert problem.message
        assert problem.remedy
    else:
        assert isinstance(found, SheetFormat)
        assert 40 <= min(found.size) <= max(found.size) <= 1500


def test_every_row_names_its_source() -> None:
    sources = [row.source for table in (FORMATS.values(), GRADES.values(), CALIPERS) for row in table]
    assert len(sources) == 6 + 4 + 22
    assert all(source.title for source in sources)
    assert {source.mark for source in sources} == {Confidence.PUBLISHED, Confidence.MEMORY}


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("bond", "bond"),
        ("Copier", "bond"),
        ("writing paper", "bond"),
        ("text", "book"),
        ("offset stock", "book"),
        ("Cover", "cover"),
        ("index card", "index"),
    ],
)
def test_grades_have_many_names(text: str, name: str) -> None:
    assert find_grade(text).name == name


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("covr", "there is no paper grade 'covr'; did you mean cover?"),
        (
            "velvet",
            "there is no paper grade 'velvet'; "
            "write one of bond, copier, copy, ledger, writing, cover, book, offset, text, index",
        ),
        ("", "the value is empty; write it like bond"),
    ],
)
def test_grades_that_are_none(text: str, said: str) -> None:
    for look_up in (
        find_grade,
        lambda grade: grammage_from_basis(20, grade),
        lambda grade: nominal_caliper(90, grade),
    ):
        with pytest.raises(NotAMeasure) as caught:
            look_up(text)
        assert str(caught.value) == said


@given(st.floats(0.1, 500), st.sampled_from(sorted(GRADES)))
def test_twice_the_pounds_weigh_twice_as_much(pounds: float, grade: str) -> None:
    assert grammage_from_basis(2 * pounds, grade) == pytest.approx(2 * grammage_from_basis(pounds, grade))


def test_the_same_sheet_has_one_grammage_in_every_grade() -> None:
    # 500 sheets of 25 × 38 in and of 17 × 22 in from one paper weigh as their areas do
    assert grammage_from_basis(25 * 38, "book") == pytest.approx(grammage_from_basis(17 * 22, "bond"))
    assert grammage_from_basis(20 * 26, "cover") == pytest.approx(grammage_from_basis(25.5 * 30.5, "index"))


@given(st.floats(5, 500), st.floats(0.3, 20))
def test_bulk_gives_back_itself(grammage: float, bulk: float) -> None:
    assert caliper_from_bulk(grammage, bulk) * 1000 / grammage == pytest.approx(bulk)


@pytest.mark.parametrize(
    ("grammage", "grade", "caliper"),
    [
        (88.8, "book", 0.120),
        (91.8, "text", 0.120),
        (92.0, "book", None),
        (82.0, "book", None),
        (198.9, "index", 0.230),
        (90.0, "cover", None),
        (0.0, "book", None),
    ],
)
def test_a_nominal_caliper_needs_a_row_nearby(grammage: float, grade: str, caliper: float | None) -> None:
    assert nominal_caliper(grammage, grade) == caliper


@pytest.mark.parametrize("row", CALIPERS, ids=lambda row: f"{row.grade} {row.grammage:.0f}")
def test_nominal_papers_have_the_bulk_of_paper(row: Caliper) -> None:
    assert 1.0 <= row.caliper / row.grammage * 1000 <= 1.4


def test_the_manual_lists_what_papers_are_taken_to_measure() -> None:
    """By US weight and grade, and every listed paper in grams; the sources beside them."""
    rows = [row for row in CHAPTERS["measuring.md"].splitlines() if re.match(r"\| (?:\d+ lb|office|book|card)", row)]
    seen = set()
    for row in rows:
        name, grams, mm, mil, bulk, source = (cell.strip() for cell in row.strip("|").split("|"))
        pounds = re.match(r"(\d+) lb (\w+)", name)
        grade = pounds[2] if pounds else {"office paper": "bond", "book paper": "book", "card": "index"}[name]
        weight = grammage_from_basis(float(pounds[1]), grade) if pounds else float(grams)
        listed = min((one for one in CALIPERS if one.grade == find_grade(grade).name),
                     key=lambda one: abs(one.grammage - weight))  # fmt: skip
        assert nominal_caliper(weight, grade) == listed.caliper, row
        assert grams == f"{weight:.0f}"
        assert (mm, mil) == (f"{listed.caliper:.3f}", f"{listed.caliper / 0.0254:.1f}")
        assert bulk == f"{1000 * listed.caliper / weight:.2f}"
        assert source == "from memory" if listed.source.mark is Confidence.MEMORY else source in listed.source.title
        seen.add((listed.grade, round(listed.grammage)))
    assert seen == {(one.grade, round(one.grammage)) for one in CALIPERS}


@pytest.mark.parametrize(("grammage", "caliper"), [(80, 0.100), (75, 0.100), (255, 0.290), (90.2, 0.104)])
def test_the_usual_bulk_gives_the_caliper_of_listed_papers_again(grammage: float, caliper: float) -> None:
    """Office paper, GPO A55 of 75 g/m², index card of 255 g/m², 24 lb bond: to a twentieth of a cm³/g."""
    assert caliper_from_bulk(grammage, usual_bulk(grammage)) == pytest.approx(caliper, rel=0.03)
