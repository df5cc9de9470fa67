"""Pictures as screens have them: any mode as grey or sRGB of 8 bits, on a ground where it is transparent."""

from __future__ import annotations

import io
from dataclasses import dataclass

from PIL import Image, ImageCms

__all__ = ["Conversion", "see_through", "to_screen_colours", "to_srgb"]

WHITE = (255, 255, 255)


def see_through(image: Image.Image) -> bool:
    """Whether any pixel is less than opaque; pictures with a transparent colour count as such.

    The one transparent grey that a 16-bit picture may name is printed as that grey: Pillow cannot tell it.
    """
    if image.mode in {"RGBA", "LA"}:
        lowest = image.getchannel("A").getextrema()[0]
        return isinstance(lowest, (int, float)) and lowest < 255
    return image.has_transparency_data and not image.mode.startswith("I")


def to_screen_colours(image: Image.Image, ground: tuple[int, int, int]) -> Image.Image:
    """Any mode as RGB or L, in sRGB, on its ground where it is transparent."""
    conversion, mode = to_srgb(image), _plain_mode(image)
    opacity = image.convert("RGBA").getchannel("A") if see_through(image) else None
    if image.mode.startswith("I"):
        image = image.convert("I").point(lambda value: value * (1 / 257) + 0.5).convert("L")
    else:
        image = _in_mode(image, mode)
    if conversion is not None:
        image = ImageCms.applyTransform(image, conversion.transform) or image
    image = _in_mode(image, "L" if mode == "L" else "RGB")
    if opacity is not None:
        mode = image.mode if ground == WHITE else "RGB"
        image = Image.composite(image.convert(mode), Image.new("RGB", image.size, ground).convert(mode), opacity)
    return image


def _in_mode(image: Image.Image, mode: str) -> Image.Image:
    """The picture itself if it is in that mode, for Pillow would copy it."""
    return image if image.mode == mode else image.convert(mode)


def _plain_mode(image: Image.Image) -> str:
    """The mode with the same colours, 8 bits deep, without palette and transparency."""
    if image.mode in {"CMYK", "LAB"}:
        return image.mode
    return "L" if image.mode in {"1", "L", "LA", "La"} or image.mode.startswith("I") else "RGB"


@dataclass(frozen=True, slots=True)
class Conversion:
    """A way to sRGB, and the name of the profile it starts from."""

    profile_name: str
    transform: ImageCms.ImageCmsTransform


def to_srgb(image: Image.Image) -> Conversion | None:
    """How the picture's colours become sRGB; None if they are that, or nobody can say what they are."""
    mode, data = _plain_mode(image), image.info.get("icc_profile")
    if not data and mode != "LAB":
        return None
    try:
        profile = ImageCms.ImageCmsProfile(io.BytesIO(data) if data else ImageCms.createProfile("LAB"))
        name = ImageCms.getProfileDescription(profile).strip()
        if "srgb" in name.casefold():
            return None
        transform = ImageCms.buildTransform(profile, ImageCms.createProfile("sRGB"), mode, "RGB")
    except (OSError, ValueError, ImageCms.PyCMSError):  # damaged, or a profile for other colours than these
        return None
    return Conversion(name, transform)
