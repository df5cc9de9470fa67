"""The maker's own pictures: to size, run on beyond their edges, coarse or ill-proportioned ones said; templates."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pypdfium2
import pytest
from PIL import Image, ImageDraw
from pydantic import ValidationError
from pypdf import PdfReader

from bookmaker import check, make
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Path as Outline
from bookmaker.ground.geometry import Rect, Size, Transform
from bookmaker.ground.pictures import load_picture
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import Flat, Panel, Role
from bookmaker.shelf.choice import Choice
from bookmaker.things.book.designs.design import Design, Dress, Words
from bookmaker.things.book.designs.styles.own_artwork import OwnArtwork
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.things.book.designs.styles.plain import Plain
from bookmaker.workshop import Checked, Wishes
from bookmaker.writers.pdf import PdfFile
from tests.kit.by_kind import books_of, drafts_of
from tests.kit.flats import flat_of, panel, part
from tests.kit.recording import Imported, record

LEFT, MIDDLE, RIGHT = (200, 40, 40), (240, 240, 220), (40, 60, 200)


def striped(path: Path, width: int, height: int) -> None:
    """A picture with a red left edge, a blue right edge, and bone between."""
    image = Image.new("RGB", (width, height), MIDDLE)
    image.paste(LEFT, (0, 0, width // 10, height))
    image.paste(RIGHT, (width - width // 10, 0, width, height))
    image.save(path)


def dressed(entry: Design, flat: Flat, folder: Path) -> Dress:
    return entry.dress(entry.load(folder), flat, Words("Tides"))


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


@pytest.mark.parametrize("manner", ["folded over", "pulled out"])
def test_the_edges_of_a_scan_run_on_into_turn_in_and_bleed(manner: str, tmp_path: Path) -> None:
    flat = flat_of(turn_in="5 mm", head_turn_in="4 mm")
    rects = [panel(flat, role) for role in (Role.BACK, Role.SPINE, Role.FRONT)]
    book = Rect.around([corner for rect in rects for corner in rect.corners])
    striped(tmp_path / "scan.png", round(book.width * 30), round(book.height * 30))
    dress = dressed(OwnArtwork(picture="scan.png", shows="book", surround=manner), flat, tmp_path)
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
    entry = OwnArtwork.model_validate(
        {"picture": "scan.png", "shows": "book", "surround": "ground", "colour": "#00ff00"}
    )
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
        # 150 pixels on 21 mm are 181.4 to the inch; 34.33 × 21 mm at 300 to the inch are 405.5 × 248.03
        "scan.png prints at only 181 dots per inch and does not have the proportions of the book: "
        "18% of it is cropped at left and right; use a picture of at least 406 × 249 pixels",
    ]


@pytest.mark.parametrize(
    ("size", "shows", "told"),
    [
        ((406, 249), "book", []),
        ((1, 1), "book", ["at only 1 dot per inch and does not have", "use a picture of at least 406 × 249 pixels"]),
        ((203, 124), "book", ["own.png prints at only 150 dots per inch; use a picture of at least 406 × 249 pixels"]),
        # 34.33 : 21 = 1.6348; 600 pixels across ask for 367.02 up
        ((600, 800), "book", ["54% of it is cropped at head and tail; crop it to 600 × 368 pixels, back, spine"]),
        # with 2 mm of bleed 38.33 : 25 = 1.5332
        (
            (600, 800),
            "flat",
            [
                "too narrow for its height",
                "make the picture 1227 × 800 pixels",
                "over the template that make --templates writes",
            ],
        ),
        # drawn for a spine that has become thicker since: 902 × 591 pixels are 38.33 · 902/906 = 38.16 mm wide
        ((905, 591), "flat", []),
        (
            (902, 591),
            "flat",
            ["own.png is 0.17 mm too narrow for its height: the folds drawn on it are off; the book"],
        ),
        # drawn for a lower book: at its width of 906 it must be 591 high
        ((906, 560), "flat", ["mm too low for its width", "make the picture 906 × 591 pixels"]),
    ],
)
def test_a_picture_gets_one_message_with_the_size_that_puts_it_right(
    size: tuple[int, int], shows: str, told: list[str], tmp_path: Path
) -> None:
    Image.new("RGB", size).save(tmp_path / "own.png")
    entry = OwnArtwork.model_validate({"picture": "own.png", "shows": shows})
    found = [str(problem) for problem in dressed(entry, flat_of(), tmp_path).problems]
    assert len(found) == min(1, len(told))
    assert all(part in found[0] for part in told)


@pytest.mark.parametrize("shows", ["book", "flat"])
@pytest.mark.parametrize("size", [(902, 585), (906, 560), (600, 800), (1301, 333), (40, 700), (203, 110)])
def test_the_pixels_that_are_advised_pass_the_check(size: tuple[int, int], shows: str, tmp_path: Path) -> None:
    entry = OwnArtwork.model_validate({"picture": "own.png", "shows": shows})
    for wanted in (size, None):
        if wanted:
            Image.new("RGB", wanted).save(tmp_path / "own.png")
        told = [str(problem) for problem in dressed(entry, flat_of(), tmp_path).problems]
        for wide, high in re.findall(r"(\d+) × (\d+) pixels", " ".join(told)):
            Image.new("RGB", (int(wide), int(high))).save(tmp_path / "own.png")
    assert told == []


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
        OwnArtwork(picture="bad.pdf").load(tmp_path)
    assert [problem.field for problem in refused.value.problems] == [("picture",)]
    drawn_pdf(tmp_path / "own.pdf", Size(40, 40))
    (told,) = dressed(OwnArtwork(picture="own.pdf"), flat_of(), tmp_path).problems
    # the flat of 34.33 × 21 mm bleeds 2 mm all round; 38.33 of 40 are 96 %
    assert str(told) == (
        "own.pdf is 40 mm × 40 mm, but the cover with its bleed 38.33 mm × 25 mm: it is printed at 96%, "
        "and 35% of it is cropped at head and tail; draw it over the template that make --templates writes"
    )


def test_a_pdf_of_the_right_proportions_and_another_size_is_said(tmp_path: Path) -> None:
    flat = flat_of()
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    drawn_pdf(tmp_path / "twice.pdf", Size(2 * inked.width, 2 * inked.height))
    drawn_pdf(tmp_path / "true.pdf", Size(inked.width + 0.08, inked.height - 0.08))
    (told,) = dressed(OwnArtwork(picture="twice.pdf"), flat, tmp_path).problems
    said = "twice.pdf is 76.66 mm × 50 mm, but the cover with its bleed 38.33 mm × 25 mm: it is printed at 50%; draw"
    assert str(told).startswith(said)
    assert dressed(OwnArtwork(picture="true.pdf"), flat, tmp_path).problems == ()


def test_a_pdf_scan_is_only_asked_for_its_proportions(tmp_path: Path) -> None:
    drawn_pdf(tmp_path / "scan.pdf", Size(343.3, 210))
    drawn_pdf(tmp_path / "square.pdf", Size(200, 200))
    assert dressed(OwnArtwork(picture="scan.pdf", shows="book"), flat_of(), tmp_path).problems == ()
    (told,) = dressed(OwnArtwork(picture="square.pdf", shows="book"), flat_of(), tmp_path).problems
    assert str(told) == (
        "square.pdf does not have the proportions of the book: 39% of it is cropped at head and tail; "
        "crop it to 34.33 mm × 21 mm or another size of these proportions"
    )


def test_a_front_picture_is_mirrored_into_the_bleed(tmp_path: Path) -> None:
    flat = flat_of()
    striped(tmp_path / "front.png", 600, 840)
    image = rendered(dressed(PictureCover(front_picture="front.png"), flat, tmp_path), flat, tmp_path)
    assert near(image.getpixel((image.width - 10, image.height // 2)), RIGHT)  # type: ignore[arg-type]


def in_parts(path: Path, widths: tuple[int, int, int], height: int) -> None:
    """A scan whose back is red, whose spine is bone and whose front is blue."""
    image = Image.new("RGB", (sum(widths), height), MIDDLE)
    image.paste(LEFT, (0, 0, widths[0], height))
    image.paste(RIGHT, (widths[0] + widths[1], 0, sum(widths), height))
    image.save(path)


def test_the_spine_of_a_scan_is_fitted_to_the_spine(tmp_path: Path) -> None:
    """A thick book's cover around a thin one: every colour begins where its own face does, to a tenth of a mm."""
    flat = flat_of()
    in_parts(tmp_path / "scan.png", (700, 400, 700), 1000)
    entry = OwnArtwork.model_validate({"picture": "scan.png", "shows": "book", "widths": ["140 mm", "80 mm", "140 mm"]})
    dress = dressed(entry, flat, tmp_path)
    image = rendered(dress, flat, tmp_path)
    spine = panel(flat, Role.SPINE)
    for x, colours in ((spine.x, (LEFT, MIDDLE)), (spine.right, (MIDDLE, RIGHT))):
        for off, colour in zip((-0.15, 0.15), colours, strict=True):
            dot = image.getpixel((round((x + off + flat.bleed) * 10), image.height // 2))
            assert near(dot, colour), (x, off, dot)  # type: ignore[arg-type]
    # 15.08 mm of 21 are 0.718 of the height, in the scan 700 of 1000
    assert dress.problems == ()


def test_the_sides_of_a_scan_keep_their_proportions(tmp_path: Path) -> None:
    """A round mark stays round, and what a side loses for it is told."""
    flat = flat_of()
    image = Image.new("RGB", (2000, 1000), MIDDLE)
    ImageDraw.Draw(image).ellipse((300, 400, 500, 600), LEFT)
    image.save(tmp_path / "scan.png")
    widths = {"picture": "scan.png", "shows": "book", "widths": ["80 mm", "40 mm", "80 mm"]}
    dress = dressed(OwnArtwork.model_validate(widths), flat, tmp_path)
    drawn = rendered(dress, flat, tmp_path)
    red = [(x, y) for x in range(drawn.width) for y in range(drawn.height) if near(drawn.getpixel((x, y)), LEFT)]  # type: ignore[arg-type]
    across, up = (max(dot[axis] for dot in red) - min(dot[axis] for dot in red) for axis in (0, 1))
    assert across == pytest.approx(up, abs=2)
    # 800 of 1000 pixels on 15.08 of 21 mm: 0.718/0.8 of the side is seen
    (note, other) = (str(problem) for problem in dress.problems)
    assert note.startswith("left side of scan.png: 10% of it is cropped at left and right; write the widths as")
    assert other.startswith("right side of scan.png")


def test_widths_without_a_scan_are_refused() -> None:
    with pytest.raises(ValidationError, match="has widths, but not of a scan"):
        OwnArtwork.model_validate({"picture": "scan.png", "widths": ["140 mm", "28 mm", "140 mm"]})


@pytest.mark.parametrize("widths", [["140 mm"], "28 mm", ["140", "28", "140"], ["0 mm", "28 mm", "140 mm"]])
def test_widths_that_are_none_are_refused(widths: object) -> None:
    with pytest.raises(ValidationError):
        OwnArtwork.model_validate({"picture": "scan.png", "shows": "book", "widths": widths})


def test_a_flap_shows_no_mirrored_cover(tmp_path: Path) -> None:
    """A scan runs on around the fold of the flap, and no further."""
    edges = {0: Role.FLAP, 8: Role.BACK, 23: Role.SPINE, 27: Role.FRONT, 42: Role.FLAP, 50: Role.FLAP}
    panels = [Panel(edges[x], Rect(x, 0, right - x, 20)) for x, right in pairwise(edges)]
    flat = Flat("jacket", "jacket", "paper", Rect(0, 0, 50, 20).corners, (), tuple(panels), bleed=1.0)
    striped(tmp_path / "scan.png", 1020, 600)
    image = rendered(dressed(OwnArtwork(picture="scan.png", shows="book"), flat, tmp_path), flat, tmp_path)
    across = {x: image.getpixel((round((x + 1) * 10), 100)) for x in (2, 6.5, 7.5, 8.5, 41.5, 42.5, 43.5, 48)}
    ground = OwnArtwork(picture="scan.png").colour
    flap = tuple(round(part * 255) for part in (ground.red, ground.green, ground.blue))
    shown = {x: next(n for n, c in {"back": LEFT, "front": RIGHT, "flap": flap}.items() if near(d, c))  # type: ignore[arg-type]
             for x, d in across.items()}  # fmt: skip
    assert list(shown.values()) == ["flap", "flap", "back", "back", "front", "front", "flap", "flap"]


@pytest.mark.parametrize(
    ("size", "lost"),
    [((600, 840), ""), ((1200, 840), "50% of it is cropped at left"), ((600, 1120), "25% of it is cropped at head")],
)
def test_a_picture_that_loses_much_of_itself_is_told(size: tuple[int, int], lost: str, tmp_path: Path) -> None:
    """On a front of 15.08 × 21 mm: 15.08/21 · 840/600 = 1.0054, 0.4973 of 1200 pixels are lost."""
    Image.new("RGB", size).save(tmp_path / "front.png")
    problems = dressed(PictureCover(front_picture="front.png"), flat_of(), tmp_path).problems
    found = [str(problem) for problem in problems if "cropped" in str(problem)]
    assert len(found) == bool(lost)
    assert all(lost in one and "crop it to the proportions of the 15.08 mm × 21 mm it fills" in one for one in found)


SHELF = """\
shelf: Own
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um, film: 50 um}
books:
  - title: Tides
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: 48}
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
    page = PdfReader(tmp_path / "out" / "template-tides.pdf").pages[0]
    trim = [float(side) * 25.4 / 72 for side in (page.trimbox.width, page.trimbox.height)]
    assert trim == pytest.approx([width, height], abs=0.01)
    media = [float(side) * 25.4 / 72 for side in (page.mediabox.width, page.mediabox.height)]
    assert media == pytest.approx([width + 4, height + 4], abs=0.01)  # a flush cover bleeds 2 mm
    with Image.open(tmp_path / "out" / "template-tides.png") as picture:
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

    assert written() == ["template-moons-jacket.pdf", "template-moons.pdf", "template-tides.pdf"]
    assert written("Tides") == ["template-tides.pdf"]
    plan = make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(templates=True)).checked.plan
    page = PdfReader(tmp_path / "out" / "template-moons-jacket.pdf").pages[0]
    width, height = (float(side) * 25.4 / 72 for side in (page.trimbox.width, page.trimbox.height))
    assert books_of(plan)[1].jacket
    assert (width, height) == pytest.approx(books_of(plan)[1].jacket.flat.size, abs=0.01)
    assert page.extract_text().count("flap") == 2


HALF = SHELF.replace("cover: {kind: wrap, stock: card}", "cover: {kind: case, stock: card, CASE}").replace(
    "books:", "  cloth: {caliper: 180 um}\n  board: {caliper: 0.6 mm}\nbooks:"
)
HALF = HALF.replace("CASE", "boards: board, binding: half, spine_stock: cloth")


def half_bound(folder: Path, design: str) -> Checked:
    (folder / "shelf.yaml").write_text(HALF + f"    design: {{style: artwork, {design}}}\n", encoding="utf-8")
    return check(folder / "shelf.yaml")


def test_each_piece_of_a_cover_shows_its_own_page(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(HALF, encoding="utf-8")
    make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(templates=True))
    assert (
        len(PdfReader(tmp_path / "out" / "template-tides.pdf").pages) == 7
    )  # the spine piece, two sides, four corners
    checked = half_bound(tmp_path, "picture: out/template-tides.pdf")
    assert checked.problems == ()
    pieces = [piece for piece in drafts_of(checked)[0].pieces if piece.flat.kind.startswith("case")]
    shown = [{m.page.index for m in record(piece.art).marks if isinstance(m, Imported)} for piece in pieces]
    assert shown == [{0}, {1}, {2}, {3}, {4}, {5}, {6}]


def test_a_template_says_which_piece_a_page_is(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(HALF, encoding="utf-8")
    make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(templates=True))
    texts = [page.extract_text() for page in PdfReader(tmp_path / "out" / "template-tides.pdf").pages]
    assert "1 of 7: spine piece" in texts[0]
    assert "2 of 7: front side" in texts[1]
    assert "7 of 7: upper back corner" in texts[6]


def test_a_page_of_another_size_than_its_piece_is_said(tmp_path: Path) -> None:
    drawn_pdf(tmp_path / "own.pdf", Size(20, 30), pages=7)
    told = [str(problem) for problem in half_bound(tmp_path, "picture: own.pdf").problems]
    assert [line.split(" is ")[0].split(": ")[1:] for line in told] == [[f"page {n} of own.pdf"] for n in range(1, 8)]
    assert "20 mm × 30 mm, but the spine piece with its bleed" in told[0]
    assert "but the lower front corner with its bleed" in told[3]


@pytest.mark.parametrize(("pages", "has"), [(0, "one picture"), (1, "one picture"), (3, "the 3 pages")])
def test_a_single_picture_of_a_cover_in_pieces_is_refused_with_what_to_supply(
    pages: int, has: str, tmp_path: Path
) -> None:
    name = "own.pdf" if pages else "own.png"
    if pages:
        drawn_pdf(tmp_path / name, Size(40, 25), pages=pages)
    else:
        striped(tmp_path / name, 900, 600)
    checked = half_bound(tmp_path, f"picture: {name}")
    assert [str(problem).split(": ", 1)[1] for problem in checked.problems] == [
        f"this cover is cut in 7 pieces, and {name} has {has}: no piece is printed; name a PDF file of 7 pages, one "
        "for each piece as in the template that make --templates writes; or a picture of the closed book, spine in "
        "the middle, and write shows: book",
    ]
    assert not checked.sound


def test_the_pieces_of_a_binding_show_a_scan_side_by_side(tmp_path: Path) -> None:
    """Each piece shows the scan at the same scale, and what lies on it: the spine piece its middle."""
    striped(tmp_path / "scan.png", 1600, 1000)
    checked = half_bound(tmp_path, "picture: scan.png, shows: book")
    spine, front, back = (record(piece.art).pictures[-1] for piece in drafts_of(checked)[0].pieces[-7:-4])
    assert [placed.bounds.height for placed in (spine, front, back)] == pytest.approx([spine.bounds.height] * 3)
    assert spine.bounds.width == pytest.approx(front.bounds.width) == pytest.approx(back.bounds.width)
    middle = drafts_of(checked)[0].pieces[-7].flat.size.width / 2
    assert spine.bounds.centre.x == pytest.approx(middle, abs=0.01)


@pytest.mark.parametrize("mode", ["RGBA", "LA"])
def test_transparent_artwork_shows_the_ground_it_lies_on(mode: str, tmp_path: Path) -> None:
    """Half transparent black shows half of the ground; what happens is said with the colour."""
    clear = (0, 0, 0, 128) if mode == "RGBA" else (0, 128)
    Image.new(mode, (600, 840), clear).save(tmp_path / "art.png")
    flat = flat_of()
    for model, key in ((OwnArtwork, "picture"), (Plain, "front_picture"), (PictureCover, "front_picture")):
        style = model.model_fields["style"].default
        worn = {"wear": "none"} if model is PictureCover else {}
        entry = model.model_validate({"style": style, key: "art.png", "colour": "#3264c8", **worn})
        dress = dressed(entry, flat, tmp_path)
        image = rendered(dress, flat, tmp_path)
        front = panel(flat, Role.FRONT)
        at = (round(front.centre.x / flat.size.width * image.width), image.height // 2)
        assert near(image.getpixel(at), (25, 50, 100))
        said = [problem for problem in dress.problems if "transparent" in problem.message]
        assert [problem.message for problem in said] == ["art.png is transparent in places: printed on #3264c8"]
        assert [problem.field for problem in said] == [(key,)]


def test_one_picture_on_two_grounds_is_printed_twice(tmp_path: Path) -> None:
    Image.new("RGBA", (100, 100), (0, 0, 0, 0)).save(tmp_path / "art.png")
    picture = load_picture(tmp_path / "art.png")
    red, blue = picture.over((255, 0, 0)), picture.over((0, 0, 255))
    with PdfFile(tmp_path / "two.pdf", title="two") as pdf, pdf.page(Size(20, 10)) as canvas:
        canvas.picture(red, Rect(0, 0, 10, 10))
        canvas.picture(blue, Rect(10, 0, 10, 10))
    with pypdfium2.PdfDocument(tmp_path / "two.pdf") as document:
        image = document[0].render(scale=4).to_pil().convert("RGB")
    assert near(image.getpixel((20, 20)), (255, 0, 0))
    assert near(image.getpixel((image.width - 20, 20)), (0, 0, 255))
