"""Old photographs: their historic sizes, their tones, the same each time; their edges."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from bookmaker import check
from bookmaker.ground.geometry import Rect
from bookmaker.ground.outlines import area_within
from bookmaker.ground.pictures import load_picture
from bookmaker.sheets.piece import Piece
from tests.kit.pixels import Pixels, pdf_pixels
from tests.kit.recording import ink_box, record
from tests.kit.shelves import written

INCH = 25.4


def photograph(folder: Path, keys: str) -> Piece:
    text = "shelf: The Album\nstocks: {card: {caliper: 200 um}}\nthings:\n"
    path = written(
        f"{text}  - {{id: keeper, kind: photograph, stock: card, picture: {{picture: p.png}}, {keys}}}\n", folder
    )
    gradient = Image.linear_gradient("L").resize((300, 400))
    gradient.convert("RGB").save(folder / "p.png")
    return check(path).drafts["keeper"].pieces[0]


def seen(piece: Piece) -> Pixels:
    return pdf_pixels(piece.art, 254, 10, Rect(0, 0, *piece.flat.size))


@pytest.mark.parametrize(
    ("print_", "width", "height"),
    [
        # Early Photography; Getty AAT; "19th Century Photographic Plate Sizes"; common practice
        ("carte de visite", 2.5, 4.125),
        ("cabinet card", 4.25, 6.5),
        ("whole plate", 6.5, 8.5),
        ("half plate", 4.25, 5.5),
        ("quarter plate", 3.25, 4.25),
        ("sixth plate", 2.75, 3.25),
        ("snapshot", 3.5, 5.0),
    ],
)
def test_sizes_are_the_historic_ones(tmp_path: Path, print_: str, width: float, height: float) -> None:
    size = photograph(tmp_path, f"print: {print_}").flat.size
    assert size == pytest.approx((width * INCH / 12, height * INCH / 12))


def test_the_mount_is_wider_at_its_foot_and_bears_the_studio(tmp_path: Path) -> None:
    piece = photograph(tmp_path, "print: cabinet card, imprint: Lund, mount: '#ff0000'")
    (text,) = record(piece.art).texts
    (picture,) = record(piece.art).pictures
    clip_foot = piece.flat.size.height - (piece.flat.size.width - 4 * INCH / 12) / 2 - 5.5 * INCH / 12
    assert 0 < ink_box(text).y < ink_box(text).top < clip_foot
    assert picture.bounds.height >= 5.5 * INCH / 12 - 1e-6
    pixels = seen(piece)
    assert tuple(pixels[-3, 5]) == pytest.approx((255, 0, 0), abs=3)
    assert tuple(pixels[pixels.shape[0] // 2, pixels.shape[1] // 2]) != (255, 0, 0)


def test_tones_go_from_shadow_to_light_and_fade_by_degrees(tmp_path: Path) -> None:
    def darkest(age: str) -> tuple[float, ...]:
        pixels = seen(photograph(tmp_path / age.replace(" ", ""), f"print: whole plate, age: {age}"))
        inner = pixels[20:-20, 20:-20].reshape(-1, 3)
        return tuple(inner[inner.sum(1).argmin()])

    new, old = darkest("0 %"), darkest("80 %")
    assert new[0] > new[1] > new[2]  # brown
    assert sum(old) > sum(new) + 60
    assert darkest("80 %") == old


def test_a_picture_in_tones_is_told_from_the_same_as_it_is(tmp_path: Path) -> None:
    Image.new("RGB", (8, 8), (0, 0, 0)).save(tmp_path / "p.png")
    picture = load_picture(tmp_path / "p.png")
    toned = picture.in_tones((58, 36, 21), (242, 227, 196))
    assert toned.key != picture.key
    assert toned.pixels().getpixel((3, 3)) == (58, 36, 21)
    assert picture.pixels().getpixel((3, 3)) == (0, 0, 0)


def test_edges_are_cut_as_they_are_asked_for(tmp_path: Path) -> None:
    square, rounded, deckled = (
        photograph(tmp_path / edge, f"print: snapshot, edge: {edge}").flat for edge in ("square", "rounded", "deckled")
    )
    assert len(square.outline) == 4
    whole = area_within(square.outline)
    # four corners of 0.375 mm less their quarter circles
    assert whole - area_within(rounded.outline) == pytest.approx((4 - 3.14159) * 0.375**2, rel=0.1)
    assert 0.97 * whole < area_within(deckled.outline) < whole
    assert Rect.around(deckled.outline).size == pytest.approx(square.size, abs=1e-6)
