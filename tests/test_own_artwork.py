"""The maker's own pictures: to size, run on beyond their edges, coarse or ill-proportioned ones said; templates."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import pytest
from PIL import Image
from pypdf import PdfReader

from bookmaker.choice import Choice
from bookmaker.designs import dress_flat, load_design
from bookmaker.designs.design import Dress, Words
from bookmaker.designs.own_artwork import OwnArtwork
from bookmaker.designs.picture_cover import PictureCover
from bookmaker.drawing import Colour
from bookmaker.errors import ShelfFileError
from bookmaker.flat import Flat, Role
from bookmaker.geometry import Path as Outline
from bookmaker.geometry import Rect, Size, Transform
from bookmaker.pipeline import Wishes, make
from bookmaker.spec.entry import Entry
from bookmaker.writers.pdf import PdfFile
from tests.recording import record
from tests.test_designs import flat_of, panel

LEFT, MIDDLE, RIGHT = (200, 40, 40), (240, 240, 220), (40, 60, 200)


def striped(path: Path, width: int, height: int) -> None:
    """A picture with a red left edge, a blue right edge, and bone between."""
    image = Image.new("RGB", (width, height), MIDDLE)
    image.paste(LEFT, (0, 0, width // 10, height))
    image.paste(RIGHT, (width - width // 10, 0, width, height))
    image.save(path)


def dressed(entry: Entry, flat: Flat, folder: Path) -> Dress:
    return dress_flat(entry, load_design(entry, folder), flat, Words("Tides"))


def rendered(dress: Dress, flat: Flat, folder: Path) -> Image.Image:
    """The inked rectangle of a flat at 10 dots per mm."""
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    to_page = Transform.move(flat.bleed, flat.bleed)
    path = folder / "flat.pdf"
    with PdfFile(path, title="flat") as pdf, pdf.page(Size(*inked.size)) as canvas, canvas.placed(to_page):
        dress.art.draw(canvas)
    opened = pypdfium2.PdfDocument(path)
    image = opened[0].render(scale=254 / 72).to_pil().convert("RGB")
    opened.close()
    return image


def near(one: tuple[int, ...], other: tuple[int, int, int]) -> bool:
    return max(abs(a - b) for a, b in zip(one, other, strict=True)) < 24


def outer_dots(image: Image.Image) -> Iterator[tuple[int, ...]]:
    """The dots just inside the edges of the ink."""
    for x in range(1, image.width - 1, 7):
        for y in (1, image.height - 3):
            yield image.getpixel((x, y))  # type: ignore[misc]
    for y in range(1, image.height - 3, 7):
        for x in (1, image.width - 3):
            yield image.getpixel((x, y))  # type: ignore[misc]


@pytest.mark.parametrize("manner", ["mirror", "stretch"])
def test_the_edges_of_a_scan_run_on_into_turn_in_and_bleed(manner: str, tmp_path: Path) -> None:
    flat = flat_of(turn_in="5 mm", head_turn_in="4 mm")
    rects = [panel(flat, role) for role in (Role.BACK, Role.SPINE, Role.FRONT)]
    book = Rect.around([corner for rect in rects for corner in rect.corners])
    striped(tmp_path / "scan.png", round(book.width * 30), round(book.height * 30))
    dress = dressed(OwnArtwork(picture="scan.png", shows="book", run_on=manner), flat, tmp_path)
    image = rendered(dress, flat, tmp_path)
    assert dress.problems == ()
    assert (255, 255, 255) not in set(outer_dots(image))
    # half a millimetre to both sides of each fore-edge fold the picture's own edge is seen
    for x, colour in ((book.x, LEFT), (book.right, RIGHT)):
        for off in (-0.5, 0.5):
            dot = image.getpixel((round((x + off + flat.bleed) * 10), image.height // 2))
            assert near(dot, colour), (x, off, dot)  # type: ignore[arg-type]


def test_with_colour_a_scan_ends_at_its_edges(tmp_path: Path) -> None:
    flat = flat_of(turn_in="5 mm")
    striped(tmp_path / "scan.png", 1200, 720)
    entry = OwnArtwork.model_validate({"picture": "scan.png", "shows": "book", "run_on": "colour", "colour": "#00ff00"})
    image = rendered(dressed(entry, flat, tmp_path), flat, tmp_path)
    assert {dot for dot in outer_dots(image) if near(dot, (0, 255, 0))} == set(outer_dots(image))


def test_a_picture_of_the_whole_flat_lies_on_it_dot_by_dot(tmp_path: Path) -> None:
    flat = flat_of(turn_in="5 mm")
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    striped(tmp_path / "own.png", round(inked.width * 20), round(inked.height * 20))
    (placed,) = record(dressed(OwnArtwork(picture="own.png"), flat, tmp_path).art).pictures
    assert placed.bounds == pytest.approx(inked, abs=0.05)


@pytest.mark.parametrize(
    ("role", "edge"), [(Role.FRONT, "right"), (Role.BACK, "left")], ids=["front piece", "back piece"]
)
def test_a_piece_of_a_binding_shows_its_part_of_a_scan(role: Role, edge: str, tmp_path: Path) -> None:
    from tests.test_styles import part  # noqa: PLC0415 (the two files use one another's flats)

    flat = part(role)
    striped(tmp_path / "scan.png", 960, 630)
    image = rendered(dressed(OwnArtwork(picture="scan.png", shows="book"), flat, tmp_path), flat, tmp_path)
    x = image.width - 1 - round(flat.bleed * 10) - 5 if edge == "right" else round(flat.bleed * 10) + 5
    assert near(image.getpixel((x, image.height // 2)), RIGHT if edge == "right" else LEFT)  # type: ignore[arg-type]


def test_what_is_cropped_and_what_is_coarse_is_said(tmp_path: Path) -> None:
    striped(tmp_path / "scan.png", 300, 150)
    flat = flat_of()  # 2 · (15 + π/8 · 0.21) + 4 + π/4 · 0.21 = 34.33 mm wide and 21 mm high
    told = [str(problem) for problem in dressed(OwnArtwork(picture="scan.png", shows="book"), flat, tmp_path).problems]
    assert told == [
        # 150 pixels on 21 mm are 181.4 to the inch; 248.04 of them would be 300
        "scan.png prints at only 181 dots per inch; use a picture of at least 497 × 249 pixels",
        "scan.png has not the proportions of the book: 18% of it is cropped at left and right; draw it over the "
        "template that make --templates writes, or 245 × 150 pixels large",
    ]


def drawn_pdf(path: Path, size: Size, pages: int = 1) -> None:
    """A PDF whose pages are blue with a red square of 2 mm at their lower left corner."""
    with PdfFile(path, title="own") as pdf:
        for _ in range(pages):
            with pdf.page(size) as canvas:
                canvas.fill(Outline.rectangle(Rect(0, 0, *size)), Colour(0.0, 0.0, 1.0))
                canvas.fill(Outline.rectangle(Rect(0, 0, 2, 2)), Colour(1.0, 0.0, 0.0))


def test_a_pdf_of_the_whole_flat_is_printed_as_it_is(tmp_path: Path) -> None:
    flat = flat_of(turn_in="5 mm")
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    drawn_pdf(tmp_path / "own.pdf", Size(*inked.size), pages=2)
    dress = dressed(OwnArtwork(picture="own.pdf"), flat, tmp_path)
    assert [str(problem) for problem in dress.problems] == ["own.pdf has several pages: only the first is printed"]
    image = rendered(dress, flat, tmp_path)
    bottom = image.height - 1
    assert image.getpixel((15, bottom - 15)) == (255, 0, 0)
    assert image.getpixel((25, bottom - 25)) == (0, 0, 255)
    assert set(outer_dots(image)) == {(255, 0, 0), (0, 0, 255)}
    assert record(dress.art).pictures == []  # it stays vectors


def test_a_pdf_that_cannot_be_used_or_has_other_proportions_is_said(tmp_path: Path) -> None:
    (tmp_path / "bad.pdf").write_bytes(b"%PDF-1.7 no more")
    with pytest.raises(ShelfFileError) as refused:
        load_design(OwnArtwork(picture="bad.pdf"), tmp_path)
    assert [problem.field for problem in refused.value.problems] == [("picture",)]
    drawn_pdf(tmp_path / "own.pdf", Size(40, 40))
    (told,) = dressed(OwnArtwork(picture="own.pdf"), flat_of(), tmp_path).problems
    # the flat of 34.33 × 21 mm bleeds 2 mm all round
    assert str(told) == (
        "own.pdf has not the proportions of the flat: 35% of it is cropped at head and tail; "
        "draw it over the template that make --templates writes, or 38.33 mm × 25 mm large"
    )


def test_a_front_picture_is_mirrored_into_the_bleed(tmp_path: Path) -> None:
    flat = flat_of()
    striped(tmp_path / "front.png", 600, 840)
    image = rendered(dressed(PictureCover(front_picture="front.png"), flat, tmp_path), flat, tmp_path)
    assert near(image.getpixel((image.width - 10, image.height // 2)), RIGHT)  # type: ignore[arg-type]


SHELF = """\
shelf: Own
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um, film: 50 um}
books:
  - title: Tides
    size: {height: 21 mm, width: 15 mm}
    block: {kind: concertina, stock: page, pages: 48}
    cover: {kind: wrap, stock: card}
"""


def test_a_template_has_the_exact_size_and_a_png_as_fine_as_the_print(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(templates=True))
    (piece,) = [
        piece
        for sheet in json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))["sheets"]
        for piece in sheet["pieces"]
        if piece["kind"] == "wrap"
    ]
    along = [[corner[axis] for corner in piece["outline_mm"]] for axis in (0, 1)]
    width, height = (max(values) - min(values) for values in along)
    page = PdfReader(tmp_path / "out" / "template-1.pdf").pages[0]
    trim = [float(side) * 25.4 / 72 for side in (page.trimbox.width, page.trimbox.height)]
    assert trim == pytest.approx([width, height], abs=0.01)
    media = [float(side) * 25.4 / 72 for side in (page.mediabox.width, page.mediabox.height)]
    assert media == pytest.approx([width + 4, height + 4], abs=0.01)  # a flush cover bleeds 2 mm
    with Image.open(tmp_path / "out" / "template-1.png") as picture:
        assert picture.size == pytest.approx([side / 25.4 * 600 for side in media], abs=1)
        assert picture.info["dpi"] == pytest.approx((600, 600), abs=0.1)
    said = page.extract_text()
    assert "front" in said
    assert "Tides" in said.splitlines()
    assert f"cover, {media[0]:.2f} mm × {media[1]:.0f} mm with its bleed" in said.splitlines()


def test_templates_are_of_what_is_chosen_jackets_too(tmp_path: Path) -> None:
    jacket = "    jacket: {stock: page, flap: 6 mm}\n"
    more = SHELF[SHELF.index("  - title") :].replace("Tides", "Moons") + jacket
    (tmp_path / "shelf.yaml").write_text(SHELF + more, encoding="utf-8")

    def written(*only: str) -> list[str]:
        wishes = Wishes(templates=True, choice=Choice(only=only))
        make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=wishes)
        return sorted(path.name for path in (tmp_path / "out").glob("template-*.pdf"))

    assert written() == ["template-1.pdf", "template-2-jacket.pdf", "template-2.pdf"]
    assert written("Tides") == ["template-1.pdf"]
    plan = make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(templates=True)).checked.plan
    page = PdfReader(tmp_path / "out" / "template-2-jacket.pdf").pages[0]
    width, height = (float(side) * 25.4 / 72 for side in (page.trimbox.width, page.trimbox.height))
    assert plan.books[1].jacket
    assert (width, height) == pytest.approx(plan.books[1].jacket.flat.size, abs=0.01)
    assert page.extract_text().count("flap") == 2
