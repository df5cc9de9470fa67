"""Sets: numbered, alike in colour and lettering whatever their thickness, one picture across their spines."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from bookmaker import check
from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import Role
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf_file.volumes import roman
from bookmaker.things.book.designs.artwork import NO_ARTWORK
from bookmaker.things.book.designs.colouring import coloured
from bookmaker.things.book.designs.design import InSet, Words
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.workshop import Checked
from tests.kit.by_kind import books_of, lettering_of
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, Placed, record
from tests.kit.styles import DRAWN, dressed, every_style, style_of

SHELF = """\
shelf: Sets
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
defaults:
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books:
"""


def written(folder: Path, books: str) -> Path:
    (folder / "shelf.yaml").write_text(SHELF + books, encoding="utf-8")
    return folder / "shelf.yaml"


def titles(checked: Checked) -> list[tuple[str, str | None]]:
    return [(book.entry.title, book.entry.volume) for book in books_of(checked.plan)]


@given(st.integers(1, 399))
def test_roman_figures_add_up(number: int) -> None:
    values = [{"I": 1, "V": 5, "X": 10, "L": 50, "C": 100}[figure] for figure in roman(number)]
    following = [*values[1:], 0]
    assert sum(v if v >= after else -v for v, after in zip(values, following, strict=True)) == number


def test_one_entry_makes_all_volumes(tmp_path: Path) -> None:
    checked = check(written(tmp_path, "  - {title: Annals, volumes: 3}\n  - {title: Index}\n"))
    assert titles(checked) == [("Annals", "I"), ("Annals", "II"), ("Annals", "III"), ("Index", None)]


def test_a_row_is_numbered_unless_it_numbers_itself(tmp_path: Path) -> None:
    books = "  - {volumes: 3, row: [North, {title: South, block: {pages: 60}}, {title: West, volume: last}]}\n"
    assert titles(check(written(tmp_path, books))) == [("North", "I"), ("South", "II"), ("West", "last")]


@pytest.mark.parametrize(
    ("volumes", "said"),
    {
        "1": "is 1; a set has 2 to 100 books; write how many, or leave it out for one book",
        "101": "is 101; a set has 2 to 100 books; write how many, or leave it out for one book",
        "many": "is not a whole number; write how many books the set has, 2 to 100",
        "[2]": "is not a whole number; write how many books the set has, 2 to 100",
        "3, row: [A, B]": "is 3, but the row beside it has another number of books; write as many items as volumes, "
        "or leave one of the two out; in defaults and within a row it cannot stand",
    }.items(),
)
def test_a_set_that_is_none_is_refused(volumes: str, said: str, tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as refused:
        read_shelf(written(tmp_path, f"  - {{title: Annals, volumes: {volumes}}}\n"))
    (problem,) = refused.value.problems
    title = "A" if "row" in volumes else "Annals"
    assert str(problem).endswith(f"{title}: volumes {said}")


@every_style
def test_volumes_of_unlike_thickness_are_lettered_alike(model: type, tmp_path: Path) -> None:
    style = style_of(model)
    row = "".join(f"      - {{block: {{pages: {pages}}}}}\n" for pages in (30, 60, 44))
    books = f"  - title: Annals of the Lights\n    volumes: 3\n    design: {{style: {style}}}\n    row:\n{row}"
    checked = check(written(tmp_path, books))
    sizes = [
        [line.x_height for line in lines if line.on == "spine" and line.what == "title"]
        for lines in lettering_of(checked)
    ]
    assert sizes[0] == pytest.approx(sizes[1])
    assert sizes[0] == pytest.approx(sizes[2])
    grounds = [
        next(mark.colour for mark in record(dress.art).marks if isinstance(mark, Filled))
        for book in books_of(checked.plan)
        for dress in [book.entry.design.dress(NO_ARTWORK, book.cover.flats[0], book.coat.words)]
        if style not in ("picture", "ledger")
    ]
    assert len(set(grounds)) <= 1


@every_style
def test_unlike_titles_of_a_series_are_lettered_alike(model: type, tmp_path: Path) -> None:
    books = (
        f"  - series: Lanterns\n    volumes: 3\n    author: A. Fell\n    design: {{style: {style_of(model)}}}\n"
        "    row: [Up, Windward, The Whole Way Home]\n"
    )
    checked = check(written(tmp_path, books))
    lines = [
        next(line for line in lines if line.on == "spine" and line.what == "title") for lines in lettering_of(checked)
    ]
    # the em is the same; capitals and small letters differ in what is measured of them
    assert len({line.way for line in lines}) == 1
    assert lines[0].x_height == pytest.approx(lines[1].x_height)
    assert lines[1].x_height == pytest.approx(lines[2].x_height)


def test_a_set_may_go_through_the_palette_step_by_step() -> None:
    volumes = [Words("Annals", volume=roman(number), in_set=InSet(0, 0, 9)) for number in range(1, 5)]
    row = [(Cloth(steps=True), words) for words in volumes]
    colours = [entry.colour for entry in coloured(row)]  # type: ignore[attr-defined]
    assert len(set(colours)) == 4
    alike = [(Cloth(), words) for _, words in row]
    assert {entry.colour for entry in coloured(alike)} == {colours[0]}  # type: ignore[attr-defined]


def test_books_of_a_series_look_alike_whatever_their_titles() -> None:
    one, other = (Words(title, author, series="Lights") for title, author in (("North", "A"), ("South", "B")))
    assert one.kin == other.kin
    assert one.seed != other.seed
    assert Words("North", "A").kin != Words("South", "A").kin
    volumes = [Words("Annals", "A", number) for number in ("I", "II")]
    assert volumes[0].kin == volumes[1].kin
    assert volumes[0].seed != volumes[1].seed  # wear is each volume's own


def test_a_spine_picture_runs_across_the_set(tmp_path: Path) -> None:
    Image.new("RGB", (900, 1300), "#305070").save(tmp_path / "row.png")
    entry = PictureCover(spine_picture="row.png")
    read = entry.load(tmp_path)
    lefts = []
    for thickness, begins in ((4.0, 0.0), (5.0, 4.165)):
        flat = flat_of(thickness)
        words = Words("Annals", volume="I", in_set=InSet(thickness - 4.0, begins, 9.33))
        spine = panel(flat, Role.SPINE)
        marks = record(entry.dress(read, flat, words).art).pictures
        lefts.append(min(mark.bounds.x for mark in marks) - spine.x + begins)
        widths = [mark.bounds.width for mark in marks]
        assert max(widths) >= 9.33 - 1e-6
    assert lefts[0] == pytest.approx(lefts[1])


def test_the_plate_of_the_title_leaves_most_of_a_spine_picture_to_be_seen(tmp_path: Path) -> None:
    """The picture must show in every book of a set, above the plate and below: on 40 % of the spine at the least."""
    Image.new("RGB", (900, 1300), "#305070").save(tmp_path / "row.png")
    entry = PictureCover(spine_picture="row.png", wear="none")
    flat = flat_of(4.0)
    art = entry.dress(entry.load(tmp_path), flat, Words("Annals", volume="I")).art
    spine, marks = panel(flat, Role.SPINE), record(art).marks
    after = max(number for number, mark in enumerate(marks) if isinstance(mark, Placed))
    fills = [Rect.around(mark.path.points()) for mark in marks[after:] if isinstance(mark, Filled)]
    plate = max((rect for rect in fills if rect.overlaps(spine)), key=lambda rect: rect.height)
    assert spine.y < plate.y and plate.top < spine.top
    assert plate.height < 0.6 * spine.height


def test_drawn_styles_are_many() -> None:
    assert len(DRAWN) == 10
    assert dressed(DRAWN[0], flat_of()).lettering


def test_what_is_wrong_in_the_entry_of_a_set_is_told_once_of_its_key(tmp_path: Path) -> None:
    """A flap that is too long, which refuses the shelf, and a picture that is too coarse, which does not."""
    entry = "  - title: Annals\n    volumes: 3\n    jacket:\n      stock: page\n      flap: 40 mm\n"
    with pytest.raises(ShelfFileError) as refused:
        check(written(tmp_path, entry))
    (problem,) = refused.value.problems
    assert str(problem).startswith("shelf.yaml:14:13: a flap of 40 mm is wider than the side")
    Image.new("RGB", (30, 44), "#304050").save(tmp_path / "sea.png")
    picture = "  - title: Annals\n    volumes: 3\n    design:\n      style: picture\n      front_picture: sea.png\n"
    found = check(written(tmp_path, picture + "  - title: Index\n"))
    coarse = [problem for problem in found.problems if "dots per inch" in problem.message]
    assert [problem.place.line for problem in coarse if problem.place] == [14]
    register = found.plan.register
    concerned = [found.shelf.concerns(coarse[0], id, register.fields) for id in register.counted]
    assert concerned == [True, True, True, False]
