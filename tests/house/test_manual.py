"""README and manual tell the truth: examples are made, outputs are compared, every key stands in its table."""

from __future__ import annotations

import contextlib
import io
import json
import re
import shlex
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
import typer
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from bookmaker.cli import commands as cli
from bookmaker.ground.typefaces.names import BUNDLED
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.schema import shelf_schema
from bookmaker.things.book.pages.part import Part
from bookmaker.typesetting.languages import LANGUAGES, UNPARTABLE
from bookmaker.typesetting.punctuation import is_punctuated
from bookmaker.writers.manual.chapters import chapters
from bookmaker.writers.manual.places import ROW, SAYS, TABLE, message_place, row_anchor
from tests.kit.fonts import LETTERS, font_of_boxes
from tests.kit.manual import CHAPTERS, EVERYTHING, MANUAL, README
from tests.kit.schema_shape import astray

ROOT = Path(__file__).parents[2]

FENCE = re.compile(r"^( *)```(\w+)\n(.*?)^\1```$", re.MULTILINE | re.DOTALL)

TABLES = {
    "the shelf": ["ShelfSpec"],
    "any printer": ["PaperPath"],
    "printer": ["PrinterEntry"],
    "margins": ["Margins"],
    "rules": ["Rules"],
    "diagonals": ["Diagonals"],
    "reverse_offset": ["ReverseOffset"],
    "a measured row": ["MeasuredRowEntry"],
    "a stock": ["StockEntry"],
    "a space": ["SpaceEntry"],
    "arrange": ["ArrangeEntry"],
    "a book": ["BookEntry"],
    "stands": ["Stands"],
    "size and life_size": ["PageSize", "LifeSize"],
    "an accordion": ["Accordion"],
    "leaves": ["Leaves"],
    "sections": ["Sections"],
    "a dummy block": ["Dummy"],
    "a wrap": ["Wrap"],
    "a case": ["Case"],
    "a jacket": ["Jacket"],
    "a slipcase": ["SlipcaseEntry"],
    "a listed slipcase": ["ListedSlipcase"],
    "invented books": ["Invented"],
    "a box": ["Tray", "TuckBox"],
    "an envelope": ["Envelope"],
    "post": ["PostEntry"],
    "a stamp": ["StampEntry"],
    "a lidded box": ["LiddedBox"],
    "a hinged box": ["HingedBox"],
    "a drawer box": ["DrawerBox"],
    "a folder": ["Folder"],
    "three sides": ["ThreeSides"],
    "the sides of a box": ["BoxSides"],
    "a surface": ["SurfaceEntry"],
    "a room surface": ["RoomSurfaceEntry"],
    "a place": ["PlaceEntry"],
    "a group": ["RowEntry", "SalonEntry"],
    "a grid": ["GridEntry"],
    "a frame": ["FrameEntry"],
    "a mount": ["MountEntry"],
    "rails": ["RailsEntry"],
    "wrap": ["WrapEntry"],
    "a photograph": ["Photograph"],
    "a paper": ["Letter", "Poster"],
    "a print": ["Print"],
    "a map": ["FoldedMap"],
    "a newspaper": ["Newspaper"],
    "sheet music": ["SheetMusic"],
    "cards": ["Cards"],
    "labels": ["Labels"],
    "playing cards": ["PlayingCards"],
    "a calendar": ["CalendarSheet"],
    "a game board": ["GameBoard"],
    "a face": ["FaceEntry"],
    "a fold": ["FoldEntry"],
    "the faces": ["BoxFaces"],
    "one face": ["BoxFace"],
    "blank pages": ["Blank"],
    "ruled pages": ["Ruled"],
    "a half title": ["HalfTitle"],
    "a title page": ["TitlePage"],
    "a dedication": ["Dedication"],
    "an epigraph": ["Epigraph"],
    "a table of contents": ["Contents"],
    "a colophon": ["Colophon"],
    "squared pages": ["Squared"],
    "ledger paper": ["LedgerPaper"],
    "music pages": ["Music"],
    "map pages": ["MapGrid"],
    "dummy text": ["DummyText"],
    "text pages": ["TextInside"],
    "page margins": ["PageMargins"],
    "picture pages": ["PicturesInside"],
    "an album": ["AlbumInside"],
    "PDF pages": ["PdfInside"],
    "a drawn design": [
        "Cloth",
        "Leather",
        "HalfLeather",
        "PaperBoards",
        "LedgerDesign",
        "Atlas",
        "School",
        "Pamphlet",
    ],
    "a picture cover": ["PictureCover"],
    "a room": ["RoomDesign"],
    "leaf tones": ["LeafTones"],
    "a paperback": ["Paperback"],
    "own artwork": ["OwnArtwork"],
    "a plain design": ["Plain"],
}
"""What each "key of …" table of the manual describes, by the name of its model."""

TOLD_OF_ALL = {
    "PictureCover": "Cloth",
    "Paperback": "Cloth",
    "PrinterEntry": "PaperPath",
    "ListedSlipcase": "SlipcaseEntry",
    "GridEntry": "RowEntry",
    **dict.fromkeys(("Print", "FoldedMap", "Newspaper", "SheetMusic", "Cards", "PlayingCards", "Photograph"), "Letter"),
    **dict.fromkeys(("CalendarSheet", "GameBoard"), "Letter"),
    "Labels": "Cards",
    **dict.fromkeys(("LiddedBox", "HingedBox", "DrawerBox", "Folder", "Envelope"), "Tray"),
}
"""Models with a table of what they have besides the keys of another one: of all drawn designs, of any printer …"""

SHARED = set(Part.model_fields)
"""Keys that all parts of an inside have, in a table of their own."""

LATER_THAN_THE_SPEC = {"defaults", "invented", "row"}
"""Keys that are resolved before the models see the file."""


def blocks(language: str, where: str = EVERYTHING) -> list[str]:
    """The fenced blocks of one language, without the indentation of the list they stand in."""
    return [
        "".join(line.removeprefix(indent) for line in text.splitlines(keepends=True))
        for indent, found, text in FENCE.findall(where)
        if found == language
    ]


def named_files() -> dict[str, str]:
    """The whole shelf files: their first line is a comment with their name."""
    found = {}
    for text in blocks("yaml"):
        if match := re.match(r"# (\S+\.yaml)\n", text):
            found[match[1]] = text
    return found


def sessions() -> list[tuple[str, str]]:
    """Each command that is shown, with what it says that comes out."""
    steps: list[tuple[str, str]] = []
    for text in blocks("console"):
        for part in re.split(r"^\$ ", text, flags=re.MULTILINE)[1:]:
            command, _, output = part.partition("\n")
            steps.append((command, output))
    return steps


def run(command: str) -> tuple[int, str]:
    """Run a bookmaker command in this process: its exit code, and all it says in the order it says it."""
    said = io.StringIO()
    arguments = sys.argv
    sys.argv = shlex.split(command)
    try:
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said), pytest.raises(SystemExit) as ended:
            cli.main()
    finally:
        sys.argv = arguments
    code = ended.value.code
    return (code if isinstance(code, int) else 0), said.getvalue()


def tidied(text: str) -> str:
    """Without the blanks that tables end their lines with, and without blank lines at the ends."""
    return "\n".join(line.rstrip() for line in text.splitlines()).strip("\n")


def real_sessions() -> Iterator[tuple[str, str]]:
    """Each command that is shown, with what really comes out; runs in the working folder."""
    for name, text in named_files().items():
        Path(name).write_text(text, encoding="utf-8")
    code = 0
    for command, _ in sessions():
        if command == "echo $?":
            yield command, str(code)
        else:
            code, output = run(command)
            yield command, tidied(output)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty working folder, and no wish for colours."""
    monkeypatch.chdir(tmp_path)
    for name in ("FORCE_COLOR", "TTY_COMPATIBLE", "COLUMNS"):
        monkeypatch.delenv(name, raising=False)
    return tmp_path


@pytest.mark.usefixtures("folder")
def test_outputs_are_those_shown() -> None:
    shown = [(command, tidied(output)) for command, output in sessions()]
    assert shown
    assert list(real_sessions()) == shown


def test_snippets_are_one_sound_shelf(folder: Path) -> None:
    snippets = [text for text in blocks("yaml") if not text.startswith("# ")]
    assert len(snippets) >= 6
    (folder / "shelf.yaml").write_text("\n".join(snippets), encoding="utf-8")
    (folder / "texts").mkdir()
    (folder / "texts" / "rivers.txt").write_text("The river moved on a Tuesday.\n\n" * 12, encoding="utf-8")
    lamp = "島の灯台守は、毎晩7時に「古い『ランプ』」を灯した。12月の海は静かだった。\n\n"
    (folder / "texts" / "lamp.txt").write_text(lamp * 12, encoding="utf-8")
    (folder / "faces").mkdir()
    font_of_boxes(folder / "faces" / "mincho.otf", "".join(dict.fromkeys(f"{LETTERS}目次{lamp}".replace("\n", ""))))
    for place, count in (("covers", 1), ("coasts", 24)):
        (folder / place).mkdir()
        for number in range(count):
            name = "ledger" if place == "covers" else f"{number:02}"
            Image.new("RGB", (400, 560), (40, 90, 10 * number)).save(folder / place / f"{name}.png")
    survey = Canvas("survey.pdf", invariant=1)
    for number in range(1, 5):
        survey.drawString(72, 700, f"Sheet {number}")
        survey.showPage()
    survey.save()
    code, output = run("bookmaker make shelf.yaml --into out")
    assert (code, "the shelf is sound" in output) == (0, True), output


def test_snippets_use_every_key_of_the_models() -> None:
    """What the snippets show is all there is, so nothing in the tables goes untried."""
    snippets = "".join(blocks("yaml"))
    keys = {key for model in TABLES.values() for name in model for key in model_keys(name)}
    assert {key for key in keys if not re.search(rf"\b{key}:", snippets)} == set()


def model_keys(name: str) -> set[str]:
    """The keys of one model, as the schema has them."""
    schema = shelf_schema()
    found = schema if name == "ShelfSpec" else schema["$defs"][name]
    keys = set(found["properties"])
    return keys - SHARED if keys > SHARED else keys


def test_every_model_has_a_table() -> None:
    described = {name for names in TABLES.values() for name in names} - {"ShelfSpec"}
    assert described == {name for name, part in shelf_schema()["$defs"].items() if "properties" in part}


@pytest.mark.parametrize("heading", TABLES)
def test_table_has_exactly_the_keys_of_its_model(heading: str) -> None:
    table = re.search(rf"^\| key of {heading} \|.*\n\|[-|]+\n((?:\|.*\n)+)", EVERYTHING, re.MULTILINE)
    assert table, f"no table of {heading}"
    listed = re.findall(r"^\| `(\w+)` \|", table[1], re.MULTILINE)
    assert len(listed) == len(set(listed)) == len(table[1].splitlines())
    for name in TABLES[heading]:
        shared = model_keys(TOLD_OF_ALL[name]) if name in TOLD_OF_ALL else set()
        assert set(listed) - LATER_THAN_THE_SPEC == model_keys(name) - LATER_THAN_THE_SPEC - shared


def test_keys_of_any_part_stand_in_a_table_of_their_own() -> None:
    table = re.search(r"^\| key of any part \|.*\n\|[-|]+\n((?:\|.*\n)+)", EVERYTHING, re.MULTILINE)
    assert table
    assert set(re.findall(r"^\| `(\w+)` \|", table[1], re.MULTILINE)) == SHARED
    snippets = "".join(blocks("yaml"))
    assert {key for key in SHARED if not re.search(rf"\b{key}:", snippets)} == set()


def test_commands_named_are_those_there_are() -> None:
    commands = "new|arrange|manual|check|make|show|ruler|schema|looks|freeze|keep"
    named = set(re.findall(rf"bookmaker ({commands})\b", EVERYTHING))
    assert named == {command.callback.__name__ for command in cli.app.registered_commands if command.callback}
    assert set(re.findall(r"`?(?:\$ |`|bin/)bookmaker ([a-z]+)", EVERYTHING)) == named


def test_options_are_named() -> None:
    commands = typer.main.get_command(cli.app).commands  # type: ignore[attr-defined]
    options = {name for command in commands.values() for option in command.params for name in option.opts}
    long = {name for name in options if name.startswith("--")}
    assert long
    assert {name for name in long if not re.search(rf"{name}\b", EVERYTHING)} == set()


def test_languages_are_named() -> None:
    line = next(line for line in EVERYTHING.splitlines() if line.startswith("Languages with hyphens"))
    assert dict(re.findall(r"(?:: |, )([^,`]+) `(\w\w)`", line)) == {name: tag for tag, name in LANGUAGES.items()}
    english = next(part for part in line.split(". ") if part.startswith("Each has"))
    named = {LANGUAGES[tag] for tag in LANGUAGES if not is_punctuated(tag)}
    assert {name for name in LANGUAGES.values() if name in english} - {"English"} == named
    line = next(line for line in EVERYTHING.splitlines() if line.startswith("Languages with quotation marks alone"))
    assert dict(re.findall(r"(?:: |, )([^,`]+) `(\w\w)`", line)) == {name: tag for tag, name in UNPARTABLE.items()}


def test_typefaces_are_named() -> None:
    last = CHAPTERS["typefaces.md"]
    assert set(BUNDLED) - set(re.findall(r"`([a-z ]+)`", last)) == set()


def anchors(text: str) -> set[str]:
    """What the headings of a text are called in links."""
    return {re.sub(r"[^\w\- ]", "", title.lower()).replace(" ", "-") for title in re.findall(r"^#+ (.+)$", text, re.M)}


def links() -> Iterator[tuple[Path, str]]:
    """Every link with the file it stands in; those to other places of the world are not followed."""
    for path in (ROOT / "README.md", *sorted(MANUAL.glob("*.md"))):
        for target in re.findall(r"\]\(([^)]+)\)", FENCE.sub("", path.read_text(encoding="utf-8"))):
            if not target.startswith("https://"):
                yield path, target


def test_links_lead_somewhere() -> None:
    for path, target in links():
        name, _, anchor = target.partition("#")
        aim = (path.parent / name).resolve() if name else path
        assert aim.is_file(), f"{path.name}: {target}"
        if anchor:
            assert anchor in anchors(aim.read_text(encoding="utf-8")), f"{path.name}: {target}"


def test_every_chapter_stands_in_the_contents() -> None:
    assert set(CHAPTERS) | {"contents.md"} == {path.name for path in MANUAL.glob("*.md")}


def test_readme_is_short() -> None:
    assert len(README) <= 12_000


@pytest.mark.usefixtures("folder")
def test_short_shelves_of_readme_and_recipes_are_sound() -> None:
    for name in re.findall(r"^# (\S+\.yaml)$", README + CHAPTERS["recipes.md"], re.MULTILINE):
        Path(name).write_text(named_files()[name], encoding="utf-8")
        code, output = run(f"bookmaker check {name}")
        assert (code, "the shelf is sound" in output) == (0, True), output


def test_two_lines_install_and_run() -> None:
    demo, tests = (text.strip() for text in blocks("sh", README))
    assert "\n" not in demo
    assert "\n" not in tests
    assert demo.split(" && ") == [
        "python3 -m venv .venv",
        ".venv/bin/pip install -q .",
        ".venv/bin/bookmaker make demo/shelf.yaml --into out",
    ]
    assert tests.split(" && ") == [
        "python3 -m venv .venv",
        '.venv/bin/pip install -q ".[test]"',
        ".venv/bin/ruff check .",
        ".venv/bin/ruff format --check .",
        ".venv/bin/mypy",
        ".venv/bin/pytest -n 2",
    ]


def test_ci_runs_the_line_of_the_readme() -> None:
    """The script takes the line from the README and changes only where the environment lies."""
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    pattern = re.search(r"grep -m 1 -E '([^']+)' README\.md", script)
    assert pattern
    found = next(line for line in README.splitlines() if re.search(pattern[1], line))
    assert found == blocks("sh", README)[1].strip()
    assert "${line//.venv/$place/venv}" in script
    assert "mktemp -d" in script


def test_first_paragraph_states_the_job() -> None:
    first = README.split("\n\n")[1]
    for word in ("makers", "you have to", "fits", "print", "spine"):
        assert word in first


def test_top_level_is_tidy() -> None:
    """Nothing lies at the top but what the project consists of."""
    git = shutil.which("git")
    if not git or not (ROOT / ".git").exists():
        pytest.skip("not a git checkout")
    listed = subprocess.run([git, "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    top = {name.split("/")[0] for name in listed.splitlines()}
    assert {name for name in top if not name.startswith(".")} == {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "bookmaker",
        "fonts",
        "tests",
        "demo",
    }


def test_editors_find_nothing_wrong_with_what_is_shown() -> None:
    shelves = {
        name: text
        for name, text in named_files().items()
        if name not in {"mistakes.yaml", "study-inkjet.yaml", "porch-laser.yaml"}
    }
    shelves["snippets"] = "\n".join(text for text in blocks("yaml") if not text.startswith("# "))
    assert [f"{name}: {wrong}" for name, text in shelves.items() for wrong in astray(text, shelf_schema())] == []


def test_every_key_is_described_to_editors() -> None:
    schema = shelf_schema()
    groups = [schema["properties"], *(part.get("properties", {}) for part in schema["$defs"].values())]
    assert [key for keys in groups for key, field in keys.items() if "description" not in field] == []


def test_defaults_are_shown_to_editors_as_one_writes_them() -> None:
    keys = {name: part.get("properties", {}) for name, part in shelf_schema()["$defs"].items()}
    shown = [keys[of][key].get("default") for of, key in (("SpaceEntry", "clearance"), ("StockEntry", "glue"),
             ("BoxFaces", "colour"), ("BoxFaces", "as_books"), ("DummyText", "size"), ("Plain", "ink"))]  # fmt: skip
    assert shown == ["0.2 mm", "30 um", "#3b4a3f", "no", "1 pt", None]


@pytest.mark.usefixtures("folder")
def test_schema_is_json() -> None:
    code, output = run("bookmaker schema")
    assert (code, json.loads(output)) == (0, shelf_schema())


def test_worked_case_is_read_as_written(folder: Path) -> None:
    """The one-book example, worked by hand: 48 pages of 75 µm, glue 15 µm, cover 160 + 50 µm."""
    (folder / "one-book.yaml").write_text(named_files()["one-book.yaml"], encoding="utf-8")
    spec = read_shelf(folder / "one-book.yaml").spec
    stock = spec.stocks["page paper"]
    assert (stock.thickness, stock.glue) == (0.075, 0.015)


def test_every_message_has_an_anchor_of_its_own() -> None:
    rows = [first for text in chapters().values() for head, body in TABLE.findall(text) if head == SAYS
            for first in ROW.findall(body)]  # fmt: skip
    anchors = [row_anchor(SAYS, first) for first in rows]
    assert len(anchors) > 400
    assert [anchor for anchor, count in Counter(anchors).items() if count > 1] == []
    assert message_place("ledge is over: 3 books with their clearance need 20.43 mm, the space has 18 mm") in anchors
    assert message_place("cover.flap: a flap of 30 mm is wider than the side it lies behind, which is 12 mm") == (
        "the-message-says-a-flap-of-is-wider-than-the-side-it-lies-behind-which-is"
    )


def test_what_holds_if_a_length_is_left_out_is_told_in_inches_too() -> None:
    """In thousandths; great lengths in tenths."""
    tables = re.findall(r"^\| key of .*\n\|[-|]+\n((?:\|.*\n)+)", EVERYTHING, re.MULTILINE)
    cells = [row.rsplit(" | ", 1)[1] for table in tables for row in table.splitlines()]
    metric = {cell for cell in cells if re.search(r"[1-9][\d.]* mm", cell)}
    of_a_metric_page = {"150 mm |", "100 mm |"}
    told = metric - of_a_metric_page
    assert {cell for cell in told if " in)" not in cell} == set()
    pairs = [pair for cell in told for pair in re.findall(r"([\d.]+) mm \(([\d.]+) in\)", cell)]
    assert len(pairs) > 20
    assert [
        pair
        for pair in pairs
        if abs(float(pair[0]) / 25.4 - float(pair[1])) > (0.0006 if float(pair[0]) < 100 else 0.06)
    ] == []
