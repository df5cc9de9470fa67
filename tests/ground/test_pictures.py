"""Picture files: what is read from them, what is refused, and what comes out for print."""

from __future__ import annotations

import hashlib
import os
import struct
import warnings
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageCms

from bookmaker.ground.geometry import Rect
from bookmaker.ground.pictures import Picture, covering, effective_dpi, fitting, load_picture
from bookmaker.ground.problems import ShelfFileError

RED, GREEN, BLUE, GREY = (255, 0, 0), (0, 255, 0), (0, 0, 255), (128, 128, 128)
CORNERS = {(0, 0): RED, (1, 0): GREEN, (0, 1): BLUE, (1, 1): GREY}


def four_corners(width: int = 64, height: int = 32) -> Image.Image:
    """Red, green above blue, grey: shows how a picture is turned."""
    image = Image.new("RGB", (width, height))
    for (right, low), colour in CORNERS.items():
        image.paste(colour, (right * width // 2, low * height // 2, (right + 1) * width // 2, (low + 1) * height // 2))
    return image


def corner_colours(image: Image.Image) -> list[tuple[int, ...]]:
    """The colours of the four quarters, row by row."""
    points = [(x, y) for y in (1, 3) for x in (1, 3)]
    found = [image.getpixel((image.width * x // 4, image.height * y // 4)) for x, y in points]
    return [colour if isinstance(colour, tuple) else (int(colour or 0),) for colour in found]


def close(colour: tuple[int, ...], wanted: tuple[int, ...], slack: int = 6) -> bool:
    return len(colour) == len(wanted) and all(abs(a - b) <= slack for a, b in zip(colour, wanted, strict=True))


def refusal(path: Path) -> str:
    with pytest.raises(ShelfFileError) as caught:
        load_picture(path)
    return str(caught.value)


# ---- what is read


@pytest.mark.parametrize("suffix", ["jpg", "png", "webp", "tif"])
def test_every_format_is_read_with_its_size_and_digest(tmp_path: Path, suffix: str) -> None:
    path = tmp_path / f"map.{suffix}"
    four_corners(60, 40).save(path, quality=95)
    picture = load_picture(path)
    assert (picture.width_px, picture.height_px) == (60, 40)
    assert picture.digest == hashlib.sha256(path.read_bytes()).hexdigest()
    assert picture.notes == ()
    pixels = picture.pixels()
    assert (pixels.mode, pixels.size) == ("RGB", (60, 40))
    assert close(corner_colours(pixels)[3], GREY)


# How a camera stores the upright picture for each orientation (CIPA DC-008, tag 0x0112): where the first row
# and the first column of the stored picture are in the scene, so the four stored quarters in reading order.
STORED = {
    1: (RED, GREEN, BLUE, GREY),  # top, left
    2: (GREEN, RED, GREY, BLUE),  # top, right
    3: (GREY, BLUE, GREEN, RED),  # bottom, right
    4: (BLUE, GREY, RED, GREEN),  # bottom, left
    5: (RED, BLUE, GREEN, GREY),  # left, top
    6: (GREEN, GREY, RED, BLUE),  # right, top
    7: (GREY, GREEN, BLUE, RED),  # right, bottom
    8: (BLUE, RED, GREY, GREEN),  # left, bottom
}


@pytest.mark.parametrize("suffix", ["jpg", "png", "webp", "tif"])
@pytest.mark.parametrize("orientation", STORED)
def test_a_turned_picture_comes_out_upright(tmp_path: Path, orientation: int, suffix: str) -> None:
    size = (64, 32) if orientation < 5 else (32, 64)
    stored = Image.new("RGB", size)
    for (right, low), colour in zip(CORNERS, STORED[orientation], strict=True):
        half_w, half_h = size[0] // 2, size[1] // 2
        stored.paste(colour, (right * half_w, low * half_h, (right + 1) * half_w, (low + 1) * half_h))
    exif = Image.Exif()
    exif[0x0112] = orientation
    path = tmp_path / f"turned.{suffix}"
    kept: dict[str, dict[str, Any]] = {"webp": {"lossless": True}, "jpg": {"quality": 100, "subsampling": 0}}
    stored.save(path, exif=exif, **kept.get(suffix, {}))
    picture = load_picture(path)
    assert (picture.width_px, picture.height_px) == (64, 32)
    pixels = picture.pixels()
    assert pixels.size == (64, 32)
    for found, wanted in zip(corner_colours(pixels), (RED, GREEN, BLUE, GREY), strict=True):
        assert close(found, wanted)


def test_an_orientation_that_does_not_exist_is_ignored(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x0112] = 77
    four_corners().save(tmp_path / "odd.png", exif=exif)
    assert load_picture(tmp_path / "odd.png").pixels().size == (64, 32)


@pytest.mark.parametrize(
    "damaged",
    [
        b"MM\0\x2a\xff\xff\xff\xff",  # the directory lies beyond the end
        b"MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x02\0\0\0\x04abc\0\0\0\0\0",  # the orientation is a text
    ],
)
def test_damaged_exif_data_leave_the_picture_usable(tmp_path: Path, damaged: bytes) -> None:
    four_corners().save(tmp_path / "odd.jpg", exif=b"Exif\0\0" + damaged)
    assert load_picture(tmp_path / "odd.jpg").pixels().size == (64, 32)


# ---- modes


def make_palette(path: Path) -> None:
    four_corners().quantize(8).save(path.with_suffix(".png"))


def make_cmyk(path: Path) -> None:
    four_corners().convert("CMYK").save(path.with_suffix(".tif"))


def make_one_bit(path: Path) -> None:
    Image.new("1", (64, 32), 1).save(path.with_suffix(".png"))


def make_grey(path: Path) -> None:
    Image.new("L", (64, 32), 77).save(path.with_suffix(".png"))


def make_grey_16(path: Path) -> None:
    Image.new("I;16", (64, 32), 250 * 257).save(path.with_suffix(".png"))


def make_grey_16_big_endian(path: Path) -> None:
    data = struct.pack(">H", 77 * 257) * 64 * 32
    Image.frombytes("I;16B", (64, 32), data).save(path.with_suffix(".tif"))


def make_colour_16(path: Path) -> None:
    """Pillow writes no 48-bit PNG, so its chunks are put together here."""
    row = b"\0" + struct.pack(">HHH", 10 * 257, 200 * 257, 30 * 257) * 64
    path.with_suffix(".png").write_bytes(png_of(64, 32, 16, 2, zlib.compress(row * 32)))


def make_see_through(path: Path) -> None:
    Image.new("RGBA", (64, 32), (0, 0, 0, 102)).save(path.with_suffix(".png"))


def make_see_through_grey(path: Path) -> None:
    Image.new("LA", (64, 32), (0, 102)).save(path.with_suffix(".png"))


def make_see_through_palette(path: Path) -> None:
    image = Image.new("P", (64, 32), 1)
    image.putpalette([0, 0, 0, 200, 10, 10])
    image.save(path.with_suffix(".png"), transparency=1)


def make_opaque(path: Path) -> None:
    """With room for transparency, but none in it."""
    Image.new("RGBA", (64, 32), (10, 200, 30, 255)).save(path.with_suffix(".png"))


def make_transparent_grey_16(path: Path) -> None:
    """One of 65 536 greys is transparent (tRNS), but not the one of this picture."""
    Image.new("I;16", (64, 32), 77 * 257).save(path.with_suffix(".png"), transparency=40_000)


def make_stereo(path: Path) -> None:
    """Two views in one JPEG file, as some cameras write (CIPA DC-007)."""
    left, right = (Image.new("RGB", (64, 32), colour) for colour in (BLUE, RED))
    left.save(path.with_suffix(".jpg"), "MPO", save_all=True, append_images=[right], quality=100)


def make_animated(path: Path) -> None:
    frames = [Image.new("RGB", (64, 32), colour) for colour in (BLUE, RED)]
    frames[0].save(path.with_suffix(".webp"), save_all=True, append_images=frames[1:], lossless=True)


def make_lab(path: Path) -> None:
    lab = ImageCms.profileToProfile(
        Image.new("RGB", (64, 32), (200, 80, 40)),
        ImageCms.createProfile("sRGB"),
        ImageCms.createProfile("LAB"),
        outputMode="LAB",
    )
    assert lab is not None
    lab.info.clear()
    lab.save(path.with_suffix(".tif"))


def make_crossed_profile(path: Path) -> None:
    """An sRGB profile under another name whose red and green have changed places (ICC.1: tags rXYZ, gXYZ)."""
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    crossed = profile.replace(b"rXYZ", b"!!!!").replace(b"gXYZ", b"rXYZ").replace(b"!!!!", b"gXYZ")
    crossed = crossed.replace("sRGB".encode("utf-16-be"), "Skew".encode("utf-16-be"))
    Image.new("RGB", (64, 32), (250, 0, 20)).save(path.with_suffix(".png"), icc_profile=crossed)


def make_profile_of_other_colours(path: Path) -> None:
    """A grey picture with a profile for XYZ."""
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("XYZ")).tobytes()
    Image.new("L", (64, 32), 90).save(path.with_suffix(".png"), icc_profile=profile)


def make_srgb_profile(path: Path) -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    Image.new("RGB", (64, 32), (90, 120, 150)).save(path.with_suffix(".png"), icc_profile=profile)


def make_broken_profile(path: Path) -> None:
    Image.new("RGB", (64, 32), (90, 120, 150)).save(path.with_suffix(".png"), icc_profile=b"not a profile")


def png_of(width: int, height: int, depth: int, colour_type: int, data: bytes) -> bytes:
    """A PNG from its parts (ISO/IEC 15948)."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    head = struct.pack(">IIBBBBB", width, height, depth, colour_type, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", data) + chunk(b"IEND", b"")


SIXTEEN_BITS = ("has 16 bits for each colour: printed with 8",)
SEE_THROUGH = ("is transparent in places: printed on white",)

MODES: dict[Callable[[Path], None], tuple[str, tuple[int, ...] | int, tuple[str, ...]]] = {
    make_one_bit: ("L", 255, ()),
    make_grey: ("L", 77, ()),
    make_grey_16: ("L", 250, SIXTEEN_BITS),
    make_grey_16_big_endian: ("L", 77, SIXTEEN_BITS),
    make_colour_16: ("RGB", (10, 200, 30), SIXTEEN_BITS),
    make_see_through: ("RGB", (153, 153, 153), SEE_THROUGH),
    make_see_through_grey: ("L", 153, SEE_THROUGH),
    make_see_through_palette: ("RGB", (255, 255, 255), SEE_THROUGH),
    make_opaque: ("RGB", (10, 200, 30), ()),
    make_transparent_grey_16: ("L", 77, SIXTEEN_BITS),
    make_stereo: ("RGB", BLUE, ()),
    make_animated: ("RGB", BLUE, ("holds several pictures: only the first is printed",)),
    make_lab: ("RGB", (200, 80, 40), ("is in Lab colours: converted to sRGB",)),
    make_crossed_profile: (
        "RGB",
        (0, 250, 20),
        ("has the colour profile 'Skew built-in': converted to sRGB",),
    ),
    make_profile_of_other_colours: ("L", 90, ()),
    make_srgb_profile: ("RGB", (90, 120, 150), ()),
    make_broken_profile: ("RGB", (90, 120, 150), ()),
}


@pytest.mark.parametrize("make", MODES, ids=lambda make: make.__name__)
def test_every_mode_comes_out_as_grey_or_rgb(tmp_path: Path, make: Callable[[Path], None]) -> None:
    mode, colour, notes = MODES[make]
    make(tmp_path / "picture")
    [path] = tmp_path.iterdir()
    picture = load_picture(path)
    assert picture.notes == notes
    pixels = picture.pixels()
    assert pixels.mode == mode
    found = pixels.getpixel((40, 20))
    as_tuple = found if isinstance(found, tuple) else (int(found or 0),)
    assert close(as_tuple, colour if isinstance(colour, tuple) else (colour,), slack=0 if mode == "L" else 2), found


def test_a_palette_and_cmyk_keep_their_colours(tmp_path: Path) -> None:
    make_palette(tmp_path / "palette")
    assert corner_colours(load_picture(tmp_path / "palette.png").pixels()) == [RED, GREEN, BLUE, GREY]
    make_cmyk(tmp_path / "cmyk")
    picture = load_picture(tmp_path / "cmyk.tif")
    assert corner_colours(picture.pixels()) == [RED, GREEN, BLUE, GREY]
    assert picture.notes == ("is CMYK without a colour profile: converted to sRGB by rule of thumb, colours may shift",)


def test_pictures_of_32_bits_are_refused(tmp_path: Path) -> None:
    Image.new("F", (4, 4), 0.5).save(tmp_path / "depth.tif")
    assert refusal(tmp_path / "depth.tif") == "depth.tif holds 32 bits for each colour; save it with 8 or 16 bits"
    Image.new("I", (4, 4), 70_000).save(tmp_path / "deep.tif")
    assert refusal(tmp_path / "deep.tif") == "deep.tif holds 32 bits for each colour; save it with 8 or 16 bits"
    Image.new("I", (4, 4), 0xFFFF).save(tmp_path / "fair.tif")
    assert load_picture(tmp_path / "fair.tif").pixels().getpixel((0, 0)) == 255


# ---- what is refused


def test_files_that_are_no_pictures_are_refused_each_in_its_words(tmp_path: Path) -> None:
    four_corners().save(tmp_path / "shore.gif")
    (tmp_path / "notes.png").write_text("a shopping list")
    (tmp_path / "void.png").touch()
    (tmp_path / "plates").mkdir()
    os.mkfifo(tmp_path / "pipe.png")
    assert refusal(tmp_path / "shore.gif") == (
        "shore.gif is a GIF picture, which cannot be used; save it as JPEG, PNG, WebP or TIFF"
    )
    assert refusal(tmp_path / "notes.png") == (
        "notes.png is not a picture; write the name of a picture file, or save it as JPEG, PNG, WebP or TIFF"
    )
    (tmp_path / "own.png").write_bytes(b"%PDF-1.7")
    assert refusal(tmp_path / "own.png") == "own.png is a PDF, not a picture; save it as JPEG, PNG, WebP or TIFF"
    assert refusal(tmp_path / "void.png") == "void.png is empty (0 bytes); save or copy it again from where it came"
    assert refusal(tmp_path / "plates") == "plates is a folder, not a picture; write the name of one picture file"
    assert refusal(tmp_path / "pipe.png") == "pipe.png is a pipe, not a picture; write the name of one picture file"
    missing = "there is no picture {}; write its path as seen from the folder of the shelf file"
    assert refusal(tmp_path / "gone.png") == missing.format("gone.png")
    assert refusal(tmp_path / "void.png" / "gone.png") == missing.format("gone.png")
    assert refusal(tmp_path / "a\0b.png") == missing.format("a?b.png")


def test_an_unreadable_file_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    four_corners().save(tmp_path / "locked.png")

    def locked(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", locked)
    assert refusal(tmp_path / "locked.png") == (
        "locked.png cannot be read (permission denied); allow reading it, or copy it beside the shelf file"
    )


@pytest.mark.parametrize("suffix", ["jpg", "png", "webp", "tif"])
@pytest.mark.parametrize("share", [0.3, 0.6, 0.9])
def test_a_picture_cut_short_is_refused(tmp_path: Path, suffix: str, share: float) -> None:
    whole = tmp_path / f"whole.{suffix}"
    Image.effect_noise((300, 200), 80).convert("RGB").save(whole)
    cut = tmp_path / f"cut.{suffix}"
    cut.write_bytes(whole.read_bytes()[: int(whole.stat().st_size * share)])
    assert refusal(cut) == f"cut.{suffix} is damaged or cut short; save or copy it again from where it came"


@pytest.mark.parametrize("size", [(30_000, 30_000), (10_001, 10_000)])
def test_too_many_pixels_are_refused_without_decoding_and_without_a_warning(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    path = tmp_path / "huge.png"
    path.write_bytes(png_of(*size, 8, 0, zlib.compress(b"")))
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        said = refusal(path)
    fits = {30_000: "10000 × 10000", 10_001: "10000 × 9999"}[size[0]]
    assert said == (
        f"huge.png has {size[0]} × {size[1]} pixels, more than 100 million; scale it down to {fits} pixels or fewer"
    )
    assert Image.MAX_IMAGE_PIXELS is not None


def test_a_picture_between_the_warning_of_the_decoder_and_our_limit_is_read_quietly(tmp_path: Path) -> None:
    path = tmp_path / "large.png"
    Image.new("1", (10_000, 10_000)).save(path)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert load_picture(path).width_px == 10_000


def test_a_picture_that_changed_after_it_was_read_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "map.png"
    four_corners().save(path)
    picture = load_picture(path)
    four_corners(20, 20).save(path)
    with pytest.raises(ShelfFileError) as caught:
        picture.pixels()
    assert str(caught.value) == "map.png has changed since it was first read; run the command again"
    path.unlink()
    with pytest.raises(ShelfFileError) as caught:
        picture.pixels()
    assert str(caught.value) == "map.png has changed since it was first read; run the command again"


# ---- printing


def test_resolution_is_that_of_the_coarser_direction() -> None:
    picture = Picture(Path("x.png"), 600, 900, "")
    assert effective_dpi(picture, 50.8, 50.8) == pytest.approx(300)
    assert effective_dpi(picture, 25.4, 76.2) == pytest.approx(300)


def test_fitting_and_covering_keep_proportions_and_centre() -> None:
    picture = Picture(Path("x.png"), 600, 300, "")
    area = Rect(10, 20, 30, 30)
    assert fitting(picture, area) == Rect(10, 27.5, 30, 15)
    assert covering(picture, area) == Rect(-5, 20, 60, 30)
