"""Wear: where a cover is exposed, more of it the heavier; a bleached spine; never a dashed line, never the words."""

from __future__ import annotations

from pathlib import Path as FilePath

import pytest

from bookmaker import check
from bookmaker.ground.drawing import Colour, luminance
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.grounds.wear import sunned
from bookmaker.things.book.designs.palettes import PALETTES, Material
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.half_leather import HalfLeather
from bookmaker.things.book.designs.styles.pamphlet import Pamphlet
from bookmaker.things.book.designs.styles.paper_boards import PaperBoards
from bookmaker.things.book.designs.styles.school import School
from bookmaker.things.book.designs.tones import apart
from bookmaker.writers.pdf import PdfFile
from tests.kit.cases import cased
from tests.kit.flats import flat_of, panel, part
from tests.kit.recording import Filled, RecordingCanvas, Stroked, record
from tests.kit.shelves import ONE_BOOK
from tests.kit.styles import SHAPES, drawn, dressed, every_style, style_of

SMALL = flat_of(4.0, 9.0, 13.0)
BOOK = Words("The Sound of Ice", "Ansel Brook")
GROUNDS = sorted({colour for palette in PALETTES.values() for kind in palette.grounds.values() for colour in kind})


def marks(canvas: RecordingCanvas) -> set[tuple[object, ...]]:
    return {
        (mark.path, mark.colour if isinstance(mark, Filled) else mark.pen)
        for mark in canvas.marks
        if isinstance(mark, (Filled, Stroked))
    }


def spots(model: type[DrawnDesign], flat: Flat, wear: str) -> list[Rect]:
    """Where the wear of a cover lies, mark by mark: what an unworn one of the same book does not have."""
    worn, fresh = (marks(drawn(model, flat, BOOK, colour="#5a2a30", wear=how)) for how in (wear, "none"))
    return [Rect.around(piece) for path, _ in worn - fresh for piece in pieces(path)]


def pieces(path: object) -> list[list[Point]]:
    """The separate outlines of a path, each as its points."""
    found: list[list[Point]] = []
    for command in path.commands:  # type: ignore[attr-defined]
        if command[0] == "M":
            found.append([])
        numbers = command[1:]
        found[-1] += [Point(*numbers[i : i + 2]) for i in range(0, len(numbers), 2)]
    return found


@every_style
def test_heavy_wear_leaves_more_than_light(model: type[DrawnDesign]) -> None:
    flat = SHAPES["turned in"]
    assert len(spots(model, flat, "heavy")) > 1.3 * len(spots(model, flat, "light")) > 100


@every_style
def test_the_corners_of_the_sides_are_worn_whatever_is_turned_in(model: type[DrawnDesign]) -> None:
    flat = SHAPES["turned in"]
    small = [spot.centre for spot in spots(model, flat, "heavy") if max(spot.size) < 2]
    front, back = panel(flat, Role.FRONT), panel(flat, Role.BACK)
    for corner in (Point(front.right, front.top), Point(front.right, front.y), Point(back.x, back.top)):
        near = Rect(*corner, 0, 0).grown(1.2)
        assert len([spot for spot in small if near.contains(Rect(*spot, 0, 0))]) >= 12


def test_the_corner_piece_of_a_half_binding_is_worn_where_its_folds_cross() -> None:
    flat = cased(binding="half", spine_stock="leather").part("lower front corner")
    corner = Point(flat.folds[1].start.x, flat.folds[0].start.y)
    small = [spot.centre for spot in spots(HalfLeather, flat, "heavy") if max(spot.size) < 2]
    assert len([spot for spot in small if abs(spot.x - corner.x) + abs(spot.y - corner.y) < 2]) >= 12


@every_style
@pytest.mark.parametrize("wear", ["light", "heavy"])
def test_wear_is_never_a_dashed_line(model: type[DrawnDesign], wear: str) -> None:
    flat = SHAPES["turned in"]
    worn, fresh = (drawn(model, flat, BOOK, colour="#5a2a30", wear=how).strokes for how in (wear, "none"))
    weave = {(mark.pen.width, mark.pen.dash) for mark in fresh}
    assert {mark.pen.dash for mark in worn if (mark.pen.width, mark.pen.dash) not in weave} <= {()}


@every_style
def test_words_lie_over_the_wear(model: type[DrawnDesign]) -> None:
    canvas = drawn(model, SHAPES["flush"], BOOK, wear="heavy")
    first = min(number for number, mark in enumerate(canvas.marks) if type(mark).__name__ == "Written")
    fresh = drawn(model, SHAPES["flush"], BOOK, wear="none")
    behind = {mark.path for mark in canvas.marks[first:] if isinstance(mark, (Filled, Stroked))}
    assert behind <= {mark.path for mark in fresh.marks if isinstance(mark, (Filled, Stroked))}


@pytest.mark.parametrize("ground", GROUNDS)
def test_light_bleaches_every_colour_a_little(ground: Colour) -> None:
    """Paler and yellower, further with more wear, and still the same colour: under 0.12 in Oklab from it."""
    light, heavy = sunned(ground, "light"), sunned(ground, "heavy")
    assert 0 < apart(ground, light) < apart(ground, heavy) < 0.12
    if luminance(ground) < 0.5:
        assert luminance(ground) < luminance(light) < luminance(heavy)
    assert (heavy.blue - ground.blue) < (heavy.red - ground.red) + 0.11 * (ground.red - ground.blue) + 1e-9


@every_style
def test_titling_is_read_on_every_ground_of_every_palette(model: type[DrawnDesign]) -> None:
    """WCAG 2.x asks for 3 for large letters; the bleached spine counts as it is printed."""
    on_paper = style_of(model) in ("paper boards", "pamphlet")
    for name, palette in PALETTES.items():
        materials = [Material.PAPER] if on_paper else [Material.CLOTH, Material.LEATHER]
        for ground in (colour for kind in materials for colour in palette.grounds[kind]):
            digits = "#" + "".join(f"{round(part * 255):02x}" for part in ground)
            lines = dressed(model, SMALL, Words("Salt", "M. Ray"), palette=name, colour=digits, wear="heavy").lettering
            assert [line for line in lines if line.contrast < 3] == [], digits


@every_style
@pytest.mark.parametrize("shape", ["turned in", "folio"])
def test_a_worn_cover_takes_less_than_60_kb(model: type[DrawnDesign], shape: str, tmp_path: FilePath) -> None:
    for title in ("Salt", "Rope", "Bees"):
        path, flat = tmp_path / "cover.pdf", SHAPES[shape]
        with PdfFile(path, title="cover") as pdf, pdf.page(flat.size) as canvas:
            dressed(model, flat, Words(title, "M. Ray"), wear="heavy").art.draw(canvas)
        assert path.stat().st_size < 60_000


def test_a_spine_piece_has_no_worn_corners_of_boards() -> None:
    """Its strips end under the sides, not at a fore-edge."""
    flat = part(Role.TAB, Role.BACK, Role.SPINE, Role.FRONT, Role.TAB, width=4.0)
    back = panel(flat, Role.BACK)
    near = Rect(back.x, back.centre.y, 0, 0).grown(1.0, 4.0)
    small = [spot.centre for spot in spots(Cloth, flat, "heavy") if max(spot.size) < 2]
    assert small
    assert not [spot for spot in small if near.contains(Rect(*spot, 0, 0))]


@pytest.mark.parametrize("model", [Cloth, School, PaperBoards])
@pytest.mark.parametrize("ground", ["#1a1c22", "#2b3440"])
def test_on_a_dark_ground_no_pale_line_runs_along_the_joints(model: type[DrawnDesign], ground: str) -> None:
    """Head and tail are rubbed in one go, the joints only here and there: else the spine stands in a frame."""
    flat = flat_of(5.0)
    spine = panel(flat, Role.SPINE)
    worn, fresh = (marks(drawn(model, flat, BOOK, colour=ground, wear=how)) for how in ("heavy", "none"))
    for path, _ in worn - fresh:
        for piece in pieces(path):
            box = Rect.around(piece)
            assert not (box.height > 0.2 * spine.height and box.width < 2 and box.grown(0.5).overlaps(spine))


def test_the_browning_of_a_pamphlet_goes_on_over_the_spine() -> None:
    flat = flat_of(4.0)
    spine = panel(flat, Role.SPINE)
    canvas = drawn(Pamphlet, flat, BOOK, wear="none", colour="#dccfb0")
    for y in (0.05, spine.height - 0.05):
        tones = []
        for x in (spine.x - 0.3, spine.centre.x, spine.right + 0.3):
            under = [mark for mark in canvas.marks if isinstance(mark, Filled) and not mark.clips
                     and Rect.around(mark.path.points()).contains(Rect(x, spine.y + y, 0, 0))]  # fmt: skip
            tones.append([mark.colour for mark in under if Rect.around(mark.path.points()).width > 1][-1])
        assert tones[0] == tones[1] == tones[2] != Colour.from_hex("#dccfb0")


@every_style
def test_wear_is_uneven_along_every_edge(model: type[DrawnDesign]) -> None:
    """Of an edge cut into pieces of half a mm some are rubbed and some are not: no line of wear runs along it."""
    flat = SHAPES["turned in"]
    front, found = panel(flat, Role.FRONT), [spot for spot in spots(model, flat, "light") if max(spot.size) < 2]
    for middle in (front.top, front.y):
        steps = [front.x + 0.5 * step for step in range(4, int(front.width / 0.5) - 2)]
        rubbed = [any(spot.overlaps(Rect(x, middle - 0.1, 0.5, 0.2)) for spot in found) for x in steps]
        assert rubbed.count(False) > 0.3 * len(rubbed)


def test_a_jacket_keeps_its_book_from_wear_and_light(tmp_path: FilePath) -> None:
    """The cover under it is as new; the jacket itself, in the same design, is worn."""
    book = ONE_BOOK.replace(
        "{kind: wrap, stock: card}", "{kind: wrap, stock: card}\n    design: {style: cloth, wear: WEAR}"
    )

    def inked(wear: str, jacket: str) -> dict[str, object]:
        path = tmp_path / "shelf.yaml"
        path.write_text(book.replace("WEAR", wear) + jacket, encoding="utf-8")
        return {piece.id: record(piece.art).marks for draft in check(path).drafts.values() for piece in draft.pieces}

    jacket = "    jacket: {stock: card}\n"
    bare, clad, new = inked("heavy", ""), inked("heavy", jacket), inked("none", jacket)
    assert clad["tide-tables-wrap-1"] == new["tide-tables-wrap-1"] != bare["tide-tables-wrap-1"]
    assert clad["tide-tables-jacket-1"] != new["tide-tables-jacket-1"]
