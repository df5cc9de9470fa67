"""The command line as scripts and makers meet it: output, messages, exit codes."""

from __future__ import annotations

import io
import json
import re
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from bookmaker.cli import commands as cli
from bookmaker.shelf.schema import shelf_schema
from tests.kit.command_line import Said, bookmaker
from tests.kit.schema_shape import astray
from tests.kit.shelves import ONE_BOOK, written

DEMO = Path(__file__).parents[2] / "demo"

Run = Callable[..., Said]

WORKED = """\
shelf: Worked case
printer: {sheet: A4, margins: 5 mm}
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
books:
  - title: A Pilot's Notes
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card}
    space: upper
"""


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """The command line in a folder with a shelf file."""
    monkeypatch.chdir(tmp_path)
    written(WORKED, tmp_path)
    return bookmaker


def test_the_worked_case_to_a_thousandth(run: Run) -> None:
    said = run("check", "shelf.yaml", "--json")
    assert (said.code, said.err) == (0, "")
    report = json.loads(said.out)
    book, space = report["books"][0], report["spaces"][0]
    assert (book["pages"], book["panels"], book["strips"]) == (48, 50, 5)
    assert book["block_thickness_mm"] == pytest.approx(4.14, abs=0.0005)
    assert book["spine_mm"] == pytest.approx(4.305, abs=0.0005)
    assert book["overall_mm"]["thickness"] == pytest.approx(4.56, abs=0.0005)
    assert book["overall_mm"]["height"] == pytest.approx(21, abs=0.0005)
    assert space["used_mm"] == pytest.approx(4.56, abs=0.0005)
    assert space["room_left_mm"] == pytest.approx(60 - 4.56 - 0.2, abs=0.0005)
    assert space["verdict"] == "fits"


def test_the_shape_of_the_report(run: Run, tmp_path: Path) -> None:
    text = WORKED.replace("width: 60 mm", "width: 4 mm")
    written(text, tmp_path)
    said = run("check", "shelf.yaml", "--json")
    assert said.code == 1
    report = json.loads(said.out)
    assert set(report) >= {"shelf", "books", "spaces", "problems"}
    assert report["shelf"] == "Worked case"
    assert set(report["books"][0]) >= {
        *("title", "space", "pages", "panels", "strips"),
        *("block_thickness_mm", "spine_mm", "overall_mm", "tolerance_mm"),
    }
    assert set(report["books"][0]["overall_mm"]) == {"thickness", "height", "depth"}
    assert set(report["spaces"][0]) >= {"name", "width_mm", "used_mm", "room_left_mm", "verdict"}
    assert report["spaces"][0]["verdict"] == "over"
    problem = report["problems"][0]
    assert set(problem) >= {"severity", "file", "line", "column", "field", "message", "remedy"}
    assert (problem["severity"], problem["file"], problem["line"]) == ("error", "shelf.yaml", 7)
    assert problem["remedy"]


def test_problems_go_to_stderr_and_the_tables_to_stdout(run: Run, tmp_path: Path) -> None:
    text = WORKED.replace("width: 60 mm", "width: 4 mm")
    written(text, tmp_path)
    said = run("check", "shelf.yaml")
    assert said.code == 1
    assert "A Pilot's Notes" in said.out
    assert "over" in said.out
    assert said.out.endswith("the shelf has problems: 1 error\n")
    assert said.err.startswith("shelf.yaml:7:18: ")
    assert "shelf.yaml:" not in said.out


def test_a_sound_shelf_says_so_in_plain_text(run: Run) -> None:
    said = run("check", "shelf.yaml")
    assert (said.code, said.err) == (0, "")
    assert said.out.endswith("the shelf is sound\n")
    made = run("make", "shelf.yaml", "--into", "out")
    assert (made.code, made.err) == (0, "")
    assert made.out.splitlines()[-1] == "the shelf is sound"
    assert "out/laid.pdf: 1 sheet" in made.out
    assert "\x1b" not in said.out + made.out


def test_a_shelf_with_errors_is_made_all_the_same(run: Run, tmp_path: Path) -> None:
    text = WORKED.replace("width: 60 mm", "width: 4 mm")
    written(text, tmp_path)
    said = run("make", "shelf.yaml", "--into", "out")
    assert said.code == 1
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == [
        "card.pdf",
        "guide.pdf",
        "laid.pdf",
        "plan.json",
    ]


@pytest.mark.parametrize("title", ["1984", "2001-02-03", "no", "12:30", "010", "1e3", "true", "0x1F", "1_000", ".5"])
def test_a_title_stays_as_it_was_written(run: Run, tmp_path: Path, title: str) -> None:
    text = WORKED.replace("A Pilot's Notes", title)
    written(text, tmp_path)
    said = run("check", "shelf.yaml", "--json")
    assert said.code == 0
    assert json.loads(said.out)["books"][0]["title"] == title


@pytest.mark.parametrize(
    "arguments",
    [
        ("make", "shelf.yaml", "--into"),
        ("ruler",),
        ("new",),
        ("chekc", "shelf.yaml"),
        ("check", "shelf.yaml", "--jsno"),
        ("check", "shelf.yaml", "more.yaml"),
        ("check", "missing.yaml"),
        ("check", "."),
        ("check", "shelf.yaml", "--explain", "A Pilots Note"),
        ("check", "shelf.yaml", "--explain", "2"),
        ("ruler", "--into", "r.pdf", "--sheet", "A9"),
        ("make", "shelf.yaml", "--into", "shelf.yaml"),
        ("make", "shelf.yaml", "--into", "."),
        ("new", "."),
    ],
    ids=" ".join,
)
def test_a_command_that_cannot_be_used_ends_with_2(run: Run, tmp_path: Path, arguments: tuple[str, ...]) -> None:
    said = run(*arguments)
    assert (said.code, said.out) == (2, "")
    assert said.err.strip()
    assert "Traceback" not in said.err
    assert [path.name for path in tmp_path.iterdir()] == ["shelf.yaml"]


def test_a_refusal_says_what_to_write(run: Run) -> None:
    assert run("check", "missing.yaml").err == (
        "there is no shelf file missing.yaml; write its path as seen from the folder you are in, "
        "or begin one with bookmaker new my-shelf\n"
    )
    assert run("check", "shelf.yaml", "--explain", "A Pilots Note").err == (
        "--explain: there is no book 'A Pilots Note'; did you mean \"A Pilot's Notes\"?\n"
    )
    assert run("ruler", "--into", "r.pdf", "--sheet", "A9").err == (
        "--sheet: there is no sheet format 'A9'; write A3, A4, A5, letter, legal, tabloid, or two sides: 210 x 297 mm\n"
    )


def test_without_a_name_it_is_the_usual_shelf_and_a_folder_beside_it(run: Run, tmp_path: Path) -> None:
    assert run("check") == run("check", "shelf.yaml")
    assert run("make").out.startswith("shelf-to-print/laid.pdf: 1 sheet\n")
    (tmp_path / "attic").mkdir()
    written(WORKED, tmp_path / "attic", "salt.yaml")
    assert run("make", "attic/salt.yaml").code == 0
    assert (tmp_path / "attic" / "salt-to-print" / "plan.json").is_file()
    (tmp_path / "shelf.yaml").unlink()
    for command in ("check", "make"):
        said = run(command)
        assert (said.code, said.out) == (2, "")
        assert said.err.startswith("there is no shelf file shelf.yaml; ")


def test_quiet_says_only_what_is_wrong(run: Run, tmp_path: Path) -> None:
    assert run("check", "--quiet") == run("make", "-q") == (0, "", "")
    written(WORKED.replace("width: 60 mm", "width: 4 mm"), tmp_path)
    loud, quiet = run("check"), run("check", "--quiet")
    assert (quiet.code, quiet.out, quiet.err) == (1, "", loud.err)
    assert loud.err.startswith("shelf.yaml:7:18: ")


def test_make_prints_the_plan_as_json(run: Run, tmp_path: Path) -> None:
    said = run("make", "--into", "out", "--json")
    assert (said.code, said.err) == (0, "")
    assert said.out == (tmp_path / "out" / "plan.json").read_text(encoding="utf-8")
    assert json.loads(said.out)["files"] == ["laid.pdf", "card.pdf", "guide.pdf", "plan.json"]


@pytest.mark.parametrize(("code", "told"), [(0, ""), (3, "out cannot be opened from here: open it as you open any ")])
def test_what_was_made_is_opened(run: Run, monkeypatch: pytest.MonkeyPatch, code: int, told: str) -> None:
    opened: list[str] = []
    monkeypatch.setattr("typer.launch", lambda place: opened.append(place) or code)
    said = run("make", "--into", "out", "--open")
    assert (said.code, opened) == (0, ["out"])
    assert said.err.startswith(told)
    assert run("make", "--into", "out").code == 0
    assert opened == ["out"]


@pytest.mark.parametrize("columns", [60, 80])
def test_tables_fit_the_terminal(run: Run, tmp_path: Path, columns: int) -> None:
    title = "A Pilot of the Northern Lights, and Other Verses"
    written(WORKED.replace("A Pilot's Notes", title).replace("width: 60 mm", "width: 4 mm"), tmp_path)
    said = run("check", columns=columns)
    assert max(map(len, (said.out + said.err).splitlines())) <= columns
    assert title[:20] in said.out
    assert "no room for" in said.out
    assert "thick" in said.out
    wide = run("check", "--wide", columns=columns).out
    assert "no room for" not in wide
    assert title in wide
    for column in ("pages", "panels", "pieces", "block", "spine", "high", "deep", "one way ±"):
        assert column in wide


def test_what_keeps_it_from_fitting_is_told_first_and_the_pages_last(run: Run, tmp_path: Path) -> None:
    text = WORKED.replace("width: 60 mm", "width: 4 mm")
    written(text + "    inside: {kind: text, file: a.txt, weight: 1 dot}\n", tmp_path)
    (tmp_path / "a.txt").write_text("The tide went out. " * 4000, encoding="utf-8")
    errors = [line for line in run("check").err.splitlines() if line.startswith("shelf.yaml:")]
    assert "upper is over" in errors[0]
    assert "words" in errors[-1]


def test_the_version_and_a_short_help(run: Run) -> None:
    assert re.fullmatch(r"bookmaker \d+\.\d+\.\d+\n", run("--version").out)
    for command in ((), ("check",), ("make",), ("new",), ("ruler",)):
        assert run(*command, "-h") == run(*command, "--help")
        assert "Examples:\n    bookmaker " in run(*command, "-h").out
    assert "--install-completion" in run("-h").out


def test_an_interrupt_ends_without_a_traceback(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("bookmaker.cli.checking.check", stop)
    said = run("check", "shelf.yaml")
    assert said.code not in {0, 1}
    assert "Traceback" not in said.err


def test_a_terminal_of_an_old_code_page_shows_a_substitute(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shown = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(io.BufferedWriter(shown), encoding="ascii"))
    monkeypatch.setattr(sys, "argv", ["bookmaker", "check", str(written(WORKED, tmp_path))])
    with pytest.raises(SystemExit) as ended:
        cli.main()
    assert ended.value.code == 0
    assert b"the shelf is sound" in shown.getvalue()


def test_a_starter_passes_check_at_once(run: Run, tmp_path: Path) -> None:
    said = run("new", "mine")
    assert (said.code, said.out) == (0, "wrote mine/shelf.yaml; next: bookmaker check mine/shelf.yaml\n")
    checked = run("check", "mine/shelf.yaml")
    assert checked.code == 0
    assert "error" not in checked.err
    assert "warning" not in checked.err
    assert run("make", "mine/shelf.yaml", "--into", "out").code == 0
    assert run("new", "mine").code == 2
    assert sorted(path.name for path in (tmp_path / "mine").iterdir()) == [
        "attic.txt",
        "shelf.schema.json",
        "shelf.yaml",
    ]
    named = re.match(r"# yaml-language-server: \$schema=(\S+)\n", (tmp_path / "mine/shelf.yaml").read_text("utf-8"))
    assert named
    assert json.loads((tmp_path / "mine" / named[1]).read_text("utf-8")) == shelf_schema()


@pytest.mark.parametrize("name", ["starter", "worked", "salt", "shelf.yaml", "too-full.yaml"])
def test_good_shelves_are_of_the_shape_of_the_schema(run: Run, tmp_path: Path, name: str) -> None:
    said = run("schema")
    assert said.code == 0
    schema = json.loads(said.out)
    assert schema == shelf_schema()
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    run("new", "mine")
    texts = {
        "starter": (tmp_path / "mine" / "shelf.yaml").read_text(encoding="utf-8"),
        "worked": WORKED,
        "salt": ONE_BOOK,
    }
    text = texts.get(name) or (DEMO / name).read_text(encoding="utf-8")
    assert astray(text, schema) == []


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("pages: 48", "pages: many"),
        ("space: upper", "spcae: upper"),
        ("kind: wrap", "kind: warp"),
        ("  - title: A Pilot's Notes\n    size", "  - size"),
        ("books:", "book:"),
    ],
)
def test_the_schema_tells_bad_shelves(right: str, wrong: str) -> None:
    assert right in WORKED
    schema = shelf_schema()
    assert astray(WORKED.replace(right, wrong), schema)


def test_every_reference_of_the_schema_leads_somewhere(run: Run) -> None:
    text = run("schema").out
    named = set(re.findall(r'"\$ref": "#/\$defs/([^"]+)"', text))
    assert named
    assert named <= set(json.loads(text)["$defs"])


def test_a_room_without_books_has_a_headline(run: Run, tmp_path: Path) -> None:
    head, _, _ = WORKED.partition("spaces:")
    cards = "  - {id: cards, kind: print, stock: card, width: 20 mm, height: 30 mm}\n"
    written(f"{head}things:\n{cards}{cards.replace('cards', 'bills')}", tmp_path)
    assert run("check", "shelf.yaml").out.splitlines()[0] == "Worked case: 2 things"
    written(f"{WORKED}things:\n{cards}", tmp_path)
    lines = run("check", "shelf.yaml").out.splitlines()
    assert lines[0] == "Worked case: 1 book, lengths in mm"
    assert "things" in lines


def test_a_folder_without_its_option_is_met_with_it(run: Run) -> None:
    said = run("make", "shelf.yaml", "printed2")
    assert (said.code, said.out) == (2, "")
    assert said.err.startswith("there is one word too many: printed2; if it is where to write, write --into printed2")


def test_what_has_changed_is_all_where_nothing_was_made_before(run: Run) -> None:
    told = "nothing was made in printed before to compare with: all is printed"
    assert told in run("make", "shelf.yaml", "--into", "printed", "--changed").out
    assert told not in run("make", "shelf.yaml", "--into", "printed", "--changed").out
