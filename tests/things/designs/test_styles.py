"""The drawn styles, all of them: ink to the bleed, words in their panels, the same book always the same."""

from __future__ import annotations

from pathlib import Path as FilePath

import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.geometry import Rect, Transform, polygon
from bookmaker.sheets.flat import Role
from bookmaker.shelf.schema import shelf_schema
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.faces import read_faces
from bookmaker.things.book.designs.kinds import KINDS as STYLES
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.entry import BookEntry
from bookmaker.things.book.legibility import lettering_problems
from bookmaker.writers.pdf import PdfFile
from tests.kit.flats import flat_of, panel, part
from tests.kit.recording import Filled, ink_box, record
from tests.kit.styles import BOOK, DRAWN, SHAPES, drawn, dressed, every_style
from tests.kit.titles import TITLES


@every_style
@pytest.mark.parametrize("shape", SHAPES)
def test_ink_covers_the_flat_out_to_its_bleed(model: type[DrawnDesign], shape: str) -> None:
    """A ground lies under everything, so that no fold that is off shows white."""
    flat = SHAPES[shape]
    wanted = Rect(0, 0, *flat.size).grown(flat.bleed)
    grounds = [mark for mark in drawn(model, flat).marks if isinstance(mark, Filled) and not mark.clips]
    assert any(mark.path == polygon(Rect.around(mark.path.points()).corners) and
               Rect.around(mark.path.points()).contains(wanted) for mark in grounds[:3])  # fmt: skip


@every_style
@given(
    title=TITLES,
    author=TITLES | st.just(""),
    thickness=st.floats(0.8, 30),
    height=st.floats(9, 42),
    way=st.sampled_from(["auto", "up", "down", "across"]),
    device=st.sampled_from(["none", "lamp"]),
    volume=st.sampled_from(["", "II", "1907"]),
)
@settings(max_examples=12, deadline=None)
def test_words_never_leave_their_panel_nor_cross_a_fold(
    model: type[DrawnDesign],
    title: str,
    author: str,
    thickness: float,
    height: float,
    way: str,
    device: str,
    volume: str,
) -> None:
    flat = flat_of(thickness, height * 0.7, height)
    homes = [panel.rect for panel in flat.panels if panel.role in (Role.SPINE, Role.FRONT, Role.BACK)]
    for text in drawn(model, flat, Words(title[:120], author, volume), spine_title=way, device=device).texts:
        assert any(home.contains(ink_box(text), 1e-6) for home in homes), text.text


@pytest.mark.parametrize("role", [Role.FRONT, Role.BACK])
@pytest.mark.parametrize("turn_in_first", [True, False])
def test_the_fore_edge_of_a_piece_is_where_it_is_turned_in(role: Role, turn_in_first: bool) -> None:
    roles = [Role.TURN_IN, role] if turn_in_first else [role, Role.TURN_IN]
    flat = part(*roles)
    faces = read_faces(flat)
    (side,) = faces.sides
    assert faces.outward(side) == (-1 if turn_in_first else 1)
    assert faces.to_bleed(side) == faces.whole


@every_style
def test_every_word_stands_on_the_cover(model: type[DrawnDesign]) -> None:
    said = " ".join(text.text for text in drawn(model, SHAPES["flush"]).texts).casefold()
    for word in ("sound", "ice", "ansel", "brook", "ii"):
        assert word in said


@every_style
def test_titling_stands_out_from_its_ground(model: type[DrawnDesign]) -> None:
    for palette in ("library", "harbour", "orchard", "attic", "fairground"):
        for title in ("Salt", "Rope", "Weather", "Small Hours"):
            lettering = dressed(model, SHAPES["flush"], Words(title, "M. Ray"), palette=palette).lettering
            assert [line for line in lettering if line.contrast < 3] == []


@every_style
def test_the_same_book_always_looks_the_same(model: type[DrawnDesign], tmp_path: FilePath) -> None:
    def written(name: str, words: Words) -> bytes:
        path = tmp_path / name
        flat = SHAPES["flush"]
        with PdfFile(path, title="cover") as pdf, pdf.page(flat.size) as canvas:
            dressed(model, flat, words).art.draw(canvas)
        return path.read_bytes()

    one = written("one.pdf", BOOK)
    assert one == written("two.pdf", Words("The Sound of Ice", "Ansel Brook", "II", "1911"))
    assert one != written("three.pdf", Words("The Sound of Ice", "Ansel Brook", "III", "1911"))


@every_style
@pytest.mark.parametrize("shape", ["flush", "turned in", "folio"])
def test_a_cover_takes_less_than_60_kb(model: type[DrawnDesign], shape: str, tmp_path: FilePath) -> None:
    path, flat = tmp_path / "cover.pdf", SHAPES[shape]
    with PdfFile(path, title="cover") as pdf, pdf.page(flat.size) as canvas:
        dressed(model, flat).art.draw(canvas)
    assert path.stat().st_size < 60_000


@every_style
def test_a_title_without_glyphs_is_said(model: type[DrawnDesign]) -> None:
    problems = dressed(model, SHAPES["flush"], Words("🦀🌊", "A. Fell")).problems
    assert {problem.message for problem in problems} == {
        "no typeface of the cover has the title's 🦀 U+1F980, 🌊 U+1F30A"
    }


@every_style
def test_no_white_shows_where_a_fold_is_off(model: type[DrawnDesign], tmp_path: FilePath) -> None:
    """Rendered: no white dot within half a millimetre of any fold, and none within the bleed."""
    flat, path = SHAPES["turned in"], tmp_path / "cover.pdf"
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    to_page = Transform.move(flat.bleed, flat.bleed)
    with PdfFile(path, title="cover") as pdf, pdf.page(inked.size) as canvas, canvas.placed(to_page):
        dressed(model, flat, ink="#101010").art.draw(canvas)
    pdf_file = pypdfium2.PdfDocument(path)
    image = pdf_file[0].render(scale=150 / 72).to_pil().convert("RGB")
    pdf_file.close()
    dots = 150 / 25.4
    for fold in flat.folds:
        near = Rect.around((fold.start, fold.end)).grown(0.5).moved(flat.bleed, flat.bleed)
        box = [round(side * dots) for side in (near.x, inked.height - near.top, near.right, inked.height - near.y)]
        colours = image.crop(tuple(box)).getcolors(1_000_000)  # type: ignore[arg-type]
        assert (255, 255, 255) not in {colour for _, colour in colours or ()}
    edges = [image.crop((1, y, image.width - 1, y + 2)) for y in (1, image.height - 3)]
    assert not [edge for edge in edges if (255, 255, 255) in {colour for _, colour in edge.getcolors(100_000) or ()}]


def test_a_style_may_be_left_out() -> None:
    book = BookEntry.model_validate(
        {
            "title": "Salt",
            "size": {"height": "20 mm", "width": "14 mm"},
            "block": {"kind": "accordion", "stock": "paper", "pages": "8"},
            "cover": {"kind": "wrap", "stock": "card"},
            "design": {"colour": "#123456"},
        }
    )
    assert type(book.design).__name__ == "Plain"
    design = shelf_schema()["$defs"]["BookEntry"]["properties"]["design"]
    assert "oneOf" not in design  # {colour: …} is right for several styles
    assert len(design["anyOf"]) == len(STYLES)


def test_a_spine_piece_has_no_sides_however_wide_it_is() -> None:
    """Its sides go on under other pieces, as its tabs tell."""
    assert read_faces(part(Role.TAB, Role.BACK, Role.SPINE, Role.FRONT, Role.TAB)).sides == ()
    assert len(read_faces(part(Role.BACK, Role.SPINE, Role.FRONT)).sides) == 2


def test_faint_lettering_is_told() -> None:
    unworn = {"colour": "#777777", "ink": "#808080", "wear": "none"}  # wear would bleach the ground of the spine
    lettering = dressed(Cloth, flat_of(), Words("Tides"), **unworn).lettering
    # by the W3C's formula: (0.2159 + 0.05) / (0.1845 + 0.05)
    assert [str(problem) for problem in lettering_problems(lettering, 600)] == [
        f"the title on the {on} has a contrast of 1.1 to its ground, under 3; "
        "choose a lighter or darker ink, or leave it out"
        for on in ("spine", "front")
    ]


def test_small_lettering_is_told_with_its_dots_and_a_remedy() -> None:
    long = Words("An Exhaustive Catalogue of the Mosses, Lichens and Liverworts of the Seven Skerries", "A. Fell")
    lettering = dressed(DRAWN[0], flat_of(0.5, 7, 10), long).lettering
    told = [problem for problem in lettering_problems(lettering, 600) if problem.field == ("spine_title",)]
    assert len(told) == 2
    assert "printer dots: too small to print" in told[0].message


@pytest.mark.parametrize("look", range(1, 13))
@pytest.mark.parametrize(("width", "height"), [(13.0, 18.0), (15.0, 21.0), (16.0, 19.0)])
def test_words_on_cloth_keep_clear_of_the_corner_pieces(look: int, width: float, height: float) -> None:
    flat = flat_of(4.0, width, height)
    front = panel(flat, Role.FRONT)
    art = record(dressed(Cloth, flat, Words("Tides", "Tom Quay", look=look), wear="none").art)
    words = [ink_box(text) for text in art.texts if front.contains(ink_box(text))]
    reach = front.width * 0.28
    middle = front.grown(0.0, -reach, 0.0, -reach)
    assert words
    assert all(middle.contains(box, 0.05) for box in words)
