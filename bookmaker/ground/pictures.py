"""Picture files: looked through once when the shelf file is read, decoded again when they are printed.

Whatever a file holds (palette, CMYK, 16 bits, transparency, frames, a turned camera), grey or sRGB of 8 bits comes out.
"""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from .demands import demand
from .files import SAVE_AGAIN, SourceFile, Wanted, read_again, read_file
from .geometry import Rect
from .problems import Problem, ShelfFileError
from .quantities import counted
from .units import MM_PER_INCH

if TYPE_CHECKING:
    from PIL import Image

__all__ = ["MOST_PIXELS", "Picture", "covering", "effective_dpi", "fitting", "load_picture", "show_dpi"]

MOST_PIXELS = 100_000_000
"""Larger pictures are refused: decoded, they need more memory than a home computer spares."""

LONGEST_SIDE = 65_000
"""Pixels; the formats that are written here have no more."""

MOST_HELD = 500_000_000
"""Bytes of memory that a picture may take while it is printed, with all that it is turned into on the way."""

FORMATS = ("JPEG", "PNG", "WEBP", "TIFF")
PDF_MARK = b"%PDF"
SAVE_AS = "save it as JPEG, PNG, WebP or TIFF"

PICTURE = Wanted(
    "picture",
    400_000_000,  # one of the most pixels, four colours each, as it is
    "save it as JPEG or PNG",
    instead="write the name of one picture file",
    empty=SAVE_AGAIN,
)

ORIENTATION = 0x0112
"""The EXIF tag that says how a picture comes upright (CIPA DC-008)."""

TURNS = (
    "FLIP_LEFT_RIGHT",
    "ROTATE_180",
    "FLIP_TOP_BOTTOM",
    "TRANSPOSE",
    "ROTATE_270",
    "TRANSVERSE",
    "ROTATE_90",
)
"""What brings a picture upright, by its EXIF orientation from 2 on; 1 is upright."""

SEE_THROUGH = "is transparent in places: printed on"
"""What is said of a picture that lets its ground show, before the name of the ground."""

SIDEWAYS = (5, 6, 7, 8)
"""Orientations of pictures that lie on their side."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture file that is known to be whole.

    `width_px` and `height_px` are those of the upright picture, `digest` is the SHA-256 of the file,
    `notes` say what is changed for print, each a sentence without its subject ("is CMYK: …"). Where it is transparent
    its `ground` shows, red, green and blue from 0 to 255. In `tones` it has two colours, of its shadows and its lights,
    and those between.
    """

    path: Path
    width_px: int
    height_px: int
    digest: str
    notes: tuple[str, ...] = ()
    ground: tuple[int, int, int] = (255, 255, 255)
    tones: tuple[tuple[int, int, int], tuple[int, int, int]] | None = None

    @property
    def key(self) -> tuple[object, ...]:
        """What tells it from all pictures that print otherwise."""
        return (self.digest, self.ground, self.tones)

    def over(self, ground: tuple[int, int, int]) -> Picture:
        """The same picture on a ground of another colour; one that is nowhere transparent stays as it is."""
        if not any(note.startswith(SEE_THROUGH) for note in self.notes):
            return self
        said = f"{SEE_THROUGH} #{bytes(ground).hex()}"
        notes = tuple(said if note.startswith(SEE_THROUGH) else note for note in self.notes)
        return replace(self, ground=ground, notes=notes)

    def in_tones(self, shadows: tuple[int, int, int], lights: tuple[int, int, int]) -> Picture:
        """The same picture in two colours and those between, as a photograph is toned."""
        return replace(self, tones=(shadows, lights))

    def pixels(self) -> Image.Image:
        """The upright picture in mode RGB or L, decoded anew.

        Raises:
            ShelfFileError: the file is not what it was when it was loaded.
        """
        from .colours.on_screen import to_screen_colours

        with _opened(read_again(self.path, PICTURE, self.digest)) as image:
            upright = to_screen_colours(_turned(image), self.ground)
        return upright if self.tones is None else _toned(upright, *self.tones)


def load_picture(path: Path, written: str = "") -> Picture:
    """Look through a picture file; `written` is its path as the shelf file has it.

    Raises:
        ShelfFileError: the file is missing, not a picture of a known format, too large or damaged.
    """
    file = read_file(path, PICTURE, written)
    with _opened(file) as image:
        _check_memory(path, image)
        _check_depth(path, image)
        width, height = image.size
        demand("pixels", width * height, name=path.name)
        notes = tuple(_notes(image))
        # A JPEG decoded at an eighth of its size is read to its end all the same, with far less memory.
        image.draft(None, (width // 8, height // 8))
        image.load()
        # TIFF comes upright by itself; its orientation is gone once it is decoded.
        turned = _orientation(image) in SIDEWAYS
    return Picture(path, *((height, width) if turned else (width, height)), file.digest, notes)


def effective_dpi(picture: Picture, width_mm: float, height_mm: float) -> float:
    """Pixels per inch when the picture is printed at a size, in the direction that has fewer.

    600 × 900 pixels on 50.8 × 50.8 mm are 300 per inch.
    """
    return min(picture.width_px / width_mm, picture.height_px / height_mm) * MM_PER_INCH


def show_dpi(resolution: float) -> str:
    """A resolution as a message says it.

    >>> show_dpi(150.2), show_dpi(1.3)
    ('150 dots per inch', '1 dot per inch')
    """
    return f"{counted(round(resolution), 'dot')} per inch"


def covering(picture: Picture, area: Rect) -> Rect:
    """The rectangle of the picture's own proportions that just covers an area, centred on it."""
    return _scaled(picture, area, max(area.width / picture.width_px, area.height / picture.height_px))


def fitting(picture: Picture, area: Rect, *, turned: bool = False) -> Rect:
    """The largest rectangle of the picture's own proportions inside an area, centred in it; or of it `turned`."""
    if turned:
        width, height = fitting(picture, Rect(0.0, 0.0, area.height, area.width)).size
        return Rect(area.centre.x - height / 2, area.centre.y - width / 2, height, width)
    return _scaled(picture, area, min(area.width / picture.width_px, area.height / picture.height_px))


def _scaled(picture: Picture, area: Rect, mm_per_px: float) -> Rect:
    width, height = picture.width_px * mm_per_px, picture.height_px * mm_per_px
    return Rect(area.centre.x - width / 2, area.centre.y - height / 2, width, height)


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy),))


@contextmanager
def _opened(file: SourceFile) -> Iterator[Image.Image]:
    """A picture, not yet decoded; whatever goes wrong with it inside the block is a refusal."""
    from PIL import Image, UnidentifiedImageError  # for the few shelves that have pictures

    try:
        with _without_pillow_limits(), Image.open(io.BytesIO(file.data), formats=FORMATS) as image:
            _check_size(file.path, image)
            yield image
    except ShelfFileError:
        raise
    except UnidentifiedImageError:
        _refuse(*_unknown(file))
    except Exception:  # a damaged file can make a decoder raise anything
        _refuse(f"{file.name} is damaged or cut short", SAVE_AGAIN)


@contextmanager
def _without_pillow_limits() -> Iterator[None]:
    """Pillow refuses large pictures by its own measure, before their size is known; ours is `MOST_PIXELS`."""
    from PIL import Image

    kept = Image.MAX_IMAGE_PIXELS
    Image.MAX_IMAGE_PIXELS = None
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        Image.MAX_IMAGE_PIXELS = kept


def _unknown(file: SourceFile) -> tuple[str, str]:
    """What to say of a file that is none of our formats."""
    if file.data.startswith(PDF_MARK):
        return f"{file.name} is a PDF, not a picture", SAVE_AS
    from PIL import Image

    try:
        with _without_pillow_limits(), Image.open(io.BytesIO(file.data)) as image:
            return f"{file.name} is a {image.format} picture, which cannot be used", SAVE_AS
    except Exception:  # any file at all may stand here
        return f"{file.name} is not a picture", f"write the name of a picture file, or {SAVE_AS}"


def _check_size(path: Path, image: Image.Image) -> None:
    width, height = image.size
    if max(width, height) > LONGEST_SIDE:
        _refuse(
            f"{path.name} is {max(width, height)} pixels long, more than {LONGEST_SIDE}", "cut it, or scale it down"
        )
    if width * height > MOST_PIXELS:
        share = (MOST_PIXELS / (width * height)) ** 0.5
        fits = f"{int(width * share)} × {int(height * share)}"
        _refuse(
            f"{path.name} has {width} × {height} pixels, more than {MOST_PIXELS // 1_000_000} million",
            f"scale it down to {fits} pixels or fewer",
        )


def _check_memory(path: Path, image: Image.Image) -> None:
    """Refuse what is turned into other colours, laid on its ground or turned round, if all of that needs too much room.

    Whoever asks others than JPEG how they are turned has them decoded.
    """
    from .colours.held import bytes_held

    turned = image.format in {"JPEG", "MPO"} and _orientation(image) > 1
    if (held := bytes_held(image, turned=turned)) > MOST_HELD:
        fits = " × ".join(str(int(side * (MOST_HELD / held) ** 0.5)) for side in image.size)
        _refuse(
            f"{path.name} needs {held // 1_000_000} MB of memory, more than {MOST_HELD // 1_000_000} MB",
            f"scale it down to {fits} pixels or fewer, or save it as plain RGB PNG",
        )


def _check_depth(path: Path, image: Image.Image) -> None:
    deepest = image.getextrema()[1] if image.mode == "I" else 0
    if image.mode == "F" or (isinstance(deepest, (int, float)) and deepest > 0xFFFF):
        _refuse(f"{path.name} holds 32 bits for each colour", "save it with 8 or 16 bits")


def _notes(image: Image.Image) -> Iterator[str]:
    from .colours.on_screen import see_through, to_srgb

    if image.format != "MPO" and getattr(image, "is_animated", False):
        yield "holds several pictures: only the first is printed"
    if image.mode.startswith("I") or ";16" in str(getattr(image, "tile", "")):
        yield "has 16 bits for each colour: printed with 8"
    if see_through(image):
        yield f"{SEE_THROUGH} white"
    conversion = to_srgb(image)
    if image.mode == "LAB":
        yield "is in Lab colours: converted to sRGB"
    elif conversion is not None:
        yield f"has the colour profile {conversion.profile_name!r}: converted to sRGB"
    elif image.mode == "CMYK":
        yield "is CMYK without a colour profile: converted to sRGB by rule of thumb, colours may shift"


def _orientation(image: Image.Image) -> int:
    """The EXIF orientation; 1 if there is none or the EXIF data cannot be read."""
    try:
        return int(image.getexif().get(ORIENTATION, 1))
    except Exception:  # damaged EXIF data can make its reader raise anything, and the picture is still good
        return 1


def _turned(image: Image.Image) -> Image.Image:
    from PIL.Image import Transpose

    image.load()
    turned = _orientation(image) - 2
    if not 0 <= turned < len(TURNS):
        return image
    upright = image.transpose(Transpose[TURNS[turned]])
    upright.info = image.info
    return upright


def _toned(image: Image.Image, shadows: tuple[int, int, int], lights: tuple[int, int, int]) -> Image.Image:
    """A picture whose greys go from one colour to another."""
    from PIL import ImageOps

    grey: Image.Image = image.convert("L")
    return ImageOps.colorize(grey, shadows, lights)
