"""Long lists of problems cut short: the first of every kind, and how many more there are of it."""

from __future__ import annotations

from bookmaker.cli.abridged import MOST_OF_A_KIND, abridged
from bookmaker.ground.problems import Place, Problem, Severity


def odd(line: int, file: str = "titles.csv", severity: Severity = Severity.ERROR) -> Problem:
    told = f"pages: {2 * line + 1} is odd, as 'Volume {line}' shows"
    return Problem(told, severity=severity, place=Place(file, line, 3))


def test_twenty_of_a_kind_are_told_and_the_rest_is_counted() -> None:
    assert MOST_OF_A_KIND == 20
    many = [odd(line) for line in range(2, 334)]
    assert list(abridged(many[:20])) == many[:20]
    assert [str(problem) for problem in list(abridged(many))[19:]] == [
        str(many[19]),
        "titles.csv: and 312 more like titles.csv:21:3, the last of them on line 333",
    ]


def test_kinds_files_and_severities_are_counted_apart_and_order_is_kept() -> None:
    other = Problem("height: 21 has no unit", place=Place("titles.csv", 5, 2))
    many = [
        *(odd(line) for line in range(1, 19)),
        other,
        *(odd(line, "shelf.yaml") for line in range(1, 19)),
        *(odd(line, severity=Severity.NOTE) for line in range(1, 19)),
    ]
    assert list(abridged(many)) == many


def test_problems_without_a_place_are_all_told() -> None:
    many = [Problem(f"book {number} is lost") for number in range(50)]
    assert list(abridged(many)) == many


def test_names_and_files_may_differ_within_a_kind_and_the_rest_stands_behind_it() -> None:
    loose = [
        Problem(
            f"{title} is loose on page {page} of fog-{page}.md", severity=Severity.NOTE, place=Place("s.yaml", page)
        )
        for page, title in enumerate(("Salt", "Salt and Rope", "Fog", "Rain"), start=1)
    ]
    tight = Problem("the ledge is tight", severity=Severity.NOTE, place=Place("s.yaml", 9))
    told = abridged([*loose, tight], 2, names=("Salt", "Salt and Rope", "Fog", "Rain"), remedy="--wide shows all")
    assert [str(problem) for problem in told] == [
        *map(str, loose[:2]),
        "s.yaml: and 2 more like s.yaml:2:0, the last of them on line 4; --wide shows all",
        str(tight),
    ]
