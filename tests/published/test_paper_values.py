"""Weights and thicknesses of paper against published values."""

from __future__ import annotations

import pytest

from bookmaker.ground.amounts import parse_pile
from bookmaker.ground.units import parse_length
from bookmaker.paper.grades import CALIPERS, caliper_from_bulk, grammage_from_basis, nominal_caliper
from bookmaker.paper.papers import Confidence

GPO = "Government Paper Specification Standards No. 11"


@pytest.mark.parametrize(
    ("grade", "per_pound"), [("bond", 3.7597), ("cover", 2.7041), ("book", 1.4801), ("index", 1.8080)]
)
def test_grammage_of_one_pound(grade: str, per_pound: float) -> None:
    """Derived: 453.59237 g over 500 sheets of the basic size, an inch being 25.4 mm; worked out by hand.

    The basic sizes 17×22, 20×26, 25×38 and 25.5×30.5 in are from memory.
    """
    assert grammage_from_basis(1, grade) == pytest.approx(per_pound, abs=5e-5)


def test_bond_factor_of_the_trade_dictionary() -> None:
    """PrintWiki, "Grammage": bond has the factor 3.760, and 20 lb bond is 75.2 g/m²."""
    assert round(grammage_from_basis(1, "bond"), 3) == 3.760
    assert round(grammage_from_basis(20, "bond"), 1) == 75.2


@pytest.mark.parametrize(
    ("pounds", "grade", "grammage"),
    [
        (40, "book", 60),
        (50, "book", 75),
        (60, "book", 90),
        (70, "book", 105),
        (80, "book", 120),
        (100, "book", 150),
        (90, "index", 165),
        (110, "index", 200),
        (140, "index", 255),
        (170, "index", 305),
    ],
)
def test_rounded_pairs_of_the_gpo(pounds: float, grade: str, grammage: float) -> None:
    """Government Paper Specification Standards No. 11 (GPO, 1999): pairs of pounds and rounded g/m²."""
    assert grammage_from_basis(pounds, grade) == pytest.approx(grammage, rel=0.02)


@pytest.mark.parametrize(
    ("grade", "grammage", "caliper"),
    [
        ("book", 60, 0.075),
        ("book", 75, 0.100),
        ("book", 90, 0.120),
        ("book", 105, 0.140),
        ("book", 120, 0.160),
        ("book", 150, 0.200),
        ("index", 165, 0.190),
        ("index", 200, 0.230),
        ("index", 255, 0.290),
        ("index", 305, 0.350),
    ],
)
def test_nominal_calipers_of_the_gpo(grade: str, grammage: float, caliper: float) -> None:
    """Government Paper Specification Standards No. 11 (GPO, 1999): A55, A91 smooth (150 g/m²), K10."""
    assert nominal_caliper(grammage, grade) == caliper


@pytest.mark.parametrize(("pounds", "mil"), [(24, 4.1), (28, 4.7)])
def test_nominal_calipers_of_copier_paper(pounds: float, mil: float) -> None:
    """Government Paper Specification Standards No. 11 (GPO, 1999), O-63: in thousandths of an inch."""
    assert nominal_caliper(grammage_from_basis(pounds, "copier"), "copier") == pytest.approx(mil * 0.0254, rel=1e-12)


@pytest.mark.parametrize(("grammage", "caliper"), [(105, 0.140), (120, 0.160), (150, 0.200)])
def test_both_book_standards_agree_where_they_overlap(grammage: float, caliper: float) -> None:
    """Government Paper Specification Standards No. 11 (GPO, 1999): A91 smooth 0.140, 0.160, 0.200 mm."""
    listed = {
        row.caliper for row in CALIPERS if row.grade == "book" and row.grammage == grammage and GPO in row.source.title
    }
    assert listed == {caliper}


GPO_ROWS = [row for row in CALIPERS if GPO in row.source.title]


@pytest.mark.parametrize(
    ("pounds", "grade", "mil"),
    [(20, "bond", 3.9), (32, "bond", 5.9), (65, "cover", 9.5), (80, "cover", 11.5), (100, "cover", 14)],
)
def test_usual_us_papers_have_a_caliper(pounds: float, grade: str, mil: float) -> None:
    """Usual calipers of US papers, from memory; their bulk lies between 1.2 and 1.4 cm³/g."""
    grammage = grammage_from_basis(pounds, grade)
    caliper = nominal_caliper(grammage, grade)
    assert caliper == pytest.approx(mil * 0.0254, rel=1e-12)
    assert 1.2 < caliper * 1000 / grammage < 1.4
    assert {row.source.mark for row in CALIPERS if row not in GPO_ROWS} == {Confidence.MEMORY}


def test_the_table_holds_the_rows_of_the_gpo_and_no_others() -> None:
    """Government Paper Specification Standards No. 11 (GPO, 1999): A55, A91 smooth, K10; g/m² and mm."""
    assert [(row.grade, row.grammage, row.caliper) for row in GPO_ROWS if "O-63" not in row.source.title] == [
        ("book", 60, 0.075),
        ("book", 75, 0.100),
        ("book", 90, 0.120),
        ("book", 105, 0.140),
        ("book", 120, 0.160),
        ("book", 105, 0.140),
        ("book", 120, 0.160),
        ("book", 150, 0.200),
        ("index", 165, 0.190),
        ("index", 200, 0.230),
        ("index", 255, 0.290),
        ("index", 305, 0.350),
    ]


def test_gpo_rows_say_that_they_are_published() -> None:
    """The calipers are marked as published, source checked."""
    assert {row.source.mark for row in GPO_ROWS} == {Confidence.PUBLISHED}
    assert [row.source.title.rpartition("), ")[2] for row in GPO_ROWS] == (
        ["A55"] * 5 + ["A91, smooth finish"] * 3 + ["K10"] * 4 + ["O-63"] * 2
    )


@pytest.mark.parametrize(
    ("grammage", "bulk", "caliper"),
    [(80, 1.25, 0.100), (60, 1.25, 0.075), (160, 1.0, 0.160), (100, 0.8, 0.080)],
)
def test_caliper_is_grammage_times_bulk(grammage: float, bulk: float, caliper: float) -> None:
    """ISO 534 defines bulk as thickness over grammage (from memory): µm = g/m² · cm³/g."""
    assert caliper_from_bulk(grammage, bulk) == pytest.approx(caliper, rel=1e-12)


def test_a_measured_pile() -> None:
    """Common practice, no source: 20 sheets that measure 1.52 mm have 76 µm each."""
    sheets, height = parse_pile("20 sheets measure 1.52 mm")
    assert height / sheets == pytest.approx(0.076, rel=1e-12)


def test_board_and_paper_limits_in_inches() -> None:
    """Roberts & Etherington, *Bookbinding and the Conservation of Books*, 1982: board starts at 0.012 in,
    paper ends at 0.006 in.
    """
    assert parse_length("0.012 in") == parse_length("12 mil") == 0.3048
    assert parse_length("0.006 in") == parse_length("6 thou") == 0.1524
