"""Draws the pictures of the reading room: a chart, a wall paper, two photographs, a postcard. Nobody is meant by any.

python demo/draw_room.py
"""

from __future__ import annotations

from math import cos, hypot, pi, sin
from pathlib import Path
from random import Random

from PIL import Image, ImageDraw, ImageFilter, ImageFont

HERE = Path(__file__).parent
INTO = HERE / "pictures" / "room"
FONTS = HERE.parent / "fonts"
DPMM = 600 / 25.4
"""Pixels to the mm: what the printer prints."""

Points = list[tuple[float, float]]


def _canvas(width_mm: float, height_mm: float, ground: str) -> tuple[Image.Image, ImageDraw.ImageDraw]:
    image = Image.new("RGB", (round(width_mm * DPMM), round(height_mm * DPMM)), ground)
    return image, ImageDraw.Draw(image)


def _save(image: Image.Image, name: str, colours: int = 64) -> None:
    INTO.mkdir(exist_ok=True)
    image.quantize(colours, dither=Image.Dither.NONE).save(INTO / name, optimize=True)


def _coast(middle: tuple[float, float], radius: float, chance: Random, rough: float = 0.34) -> Points:
    """A closed shore about a point, as far off as a few waves of chance make it."""
    waves = [(n, rough / n**1.15 * (chance.random() - 0.3), 2 * pi * chance.random()) for n in range(1, 28)]
    shore = []
    for step in range(720):
        turn = step / 720 * 2 * pi
        far = radius * (1 + sum(high * sin(n * turn + phase) for n, high, phase in waves))
        shore.append((middle[0] + far * cos(turn), middle[1] + far * 0.8 * sin(turn)))
    return shore


def _grown(shore: Points, middle: tuple[float, float], times: float, by: float) -> Points:
    """A depth line around a shore: smoother the farther it is off."""
    count, reach = len(shore), round(by)
    line = []
    for n in range(count):
        near = [shore[(n + k) % count] for k in range(-reach, reach + 1)]
        x, y = (sum(point[axis] for point in near) / len(near) for axis in (0, 1))
        line.append((middle[0] + (x - middle[0]) * times, middle[1] + (y - middle[1]) * times))
    return line


def _rose(draw: ImageDraw.ImageDraw, x: float, y: float, radius: float, ink: str) -> None:
    """A compass rose of sixteen points."""
    for n in range(16):
        turn, far = n * pi / 8 - pi / 2, radius * (1.0 if n % 4 == 0 else 0.7 if n % 2 == 0 else 0.45)
        side = radius * 0.09
        tip = (x + far * cos(turn), y + far * sin(turn))
        left, right = ((x + side * cos(turn + w), y + side * sin(turn + w)) for w in (-pi / 2, pi / 2))
        draw.polygon([(x, y), left, tip], fill=ink)
        draw.line([tip, right, (x, y)], fill=ink, width=2)
    draw.ellipse([x - radius * 1.08, y - radius * 1.08, x + radius * 1.08, y + radius * 1.08], outline=ink, width=2)


def chart() -> None:
    """The Gannow Sound: islands, depth lines, soundings, a compass rose, a title."""
    chance = Random("gannow")
    image, draw = _canvas(74, 60, "#f1e8cf")
    wide, high = image.size
    islands = [
        ((0.3, 0.42), 0.17),
        ((0.64, 0.63), 0.12),
        ((0.74, 0.24), 0.075),
        ((0.5, 0.22), 0.03),
        ((0.47, 0.83), 0.04),
    ]
    shores = [((x * wide, y * high), _coast((x * wide, y * high), r * wide, chance)) for (x, y), r in islands]
    for times, by, tone in ((1.75, 60, "#dfe3d2"), (1.45, 36, "#cddbd3"), (1.2, 16, "#b7cfcc")):
        for middle, shore in shores:
            line = _grown(shore, middle, times, by)
            draw.polygon(line, fill=tone)
            draw.line([*line, line[0]], fill="#7fa3a2", width=2)
    for middle, shore in shores:
        draw.polygon(shore, fill="#e2cf9d")
        draw.line([*shore, shore[0]], fill="#4a3f2c", width=5)
        for times in (0.72, 0.46, 0.22):
            hill = _grown(shore, middle, times, 24)
            draw.line([*hill, hill[0]], fill="#b4935a", width=2)
    small = ImageFont.truetype(str(FONTS / _font("Sans")), round(1.0 * DPMM))
    sounded: list[tuple[float, float]] = []
    for _ in range(400):
        x, y = (0.03 + 0.94 * chance.random()) * wide, (0.03 + 0.94 * chance.random()) * high
        if x < 0.46 * wide and y < 0.15 * high:
            continue  # the title stands there
        if hypot(x - 0.87 * wide, y - 0.8 * high) < 0.12 * wide:
            continue  # so does the rose here
        if any(hypot(x - a, y - b) < 3.4 * DPMM for a, b in sounded):
            continue  # two depths would run into one another
        if image.getpixel((int(x), int(y))) in ((0xF1, 0xE8, 0xCF), (0xDF, 0xE3, 0xD2), (0xCD, 0xDB, 0xD3)):
            sounded.append((x, y))
            draw.text((x, y), str(3 + int(40 * chance.random())), fill="#54605e", font=small, anchor="mm")
    _graticule(draw, wide, high)
    _rose(draw, 0.87 * wide, 0.8 * high, 0.085 * wide, "#6b3a2a")
    title = ImageFont.truetype(str(FONTS / _font("Serif")), round(3.1 * DPMM))
    draw.text((0.03 * wide, 0.07 * high), "The Gannow Sound", fill="#3a2f22", font=title, anchor="lm")
    draw.text((0.03 * wide, 0.115 * high), "soundings in fathoms", fill="#3a2f22", font=small, anchor="lm")
    _save(image, "gannow-sound.png")


def _graticule(draw: ImageDraw.ImageDraw, wide: int, high: int) -> None:
    """Faint meridians and parallels, and a graduated frame."""
    step = wide / 9
    for n in range(1, 10):
        draw.line([(n * step, 0), (n * step, high)], fill="#a9ada0", width=1)
        draw.line([(0, n * step), (wide, n * step)], fill="#a9ada0", width=1)
    edge = round(0.55 * DPMM)
    for n in range(19):
        tone = "#3a2f22" if n % 2 else "#f1e8cf"
        for box in ((n * step / 2, 0, (n + 1) * step / 2, edge), (n * step / 2, high - edge, (n + 1) * step / 2, high)):
            draw.rectangle(box, fill=tone, outline="#3a2f22")
        for box in ((0, n * step / 2, edge, (n + 1) * step / 2), (wide - edge, n * step / 2, wide, (n + 1) * step / 2)):
            draw.rectangle(box, fill=tone, outline="#3a2f22")


def _font(kind: str) -> str:
    """A typeface that lies in the fonts folder."""
    return next(path.relative_to(FONTS).as_posix() for path in sorted(FONTS.rglob("*.ttf")) if kind in path.name)


def wall_paper() -> None:
    """Sprigs of thrift between stripes, in rows that pass by halves."""
    image, draw = _canvas(44, 200, "#dfe4d3")
    wide, high = image.size
    step = wide / 6
    for n in range(7):
        draw.rectangle([n * step - 4, 0, n * step + 4, high], fill="#b9c6ab")
        draw.rectangle([n * step + 12, 0, n * step + 15, high], fill="#b9c6ab")
    for column in range(6):
        for row in range(-1, int(high / step) + 1):
            x, y = (column + 0.5) * step, (row + (0.5 if column % 2 else 0.0)) * step + step / 2
            _sprig(draw, x, y, step * 0.3)
    _save(image, "wall-paper.png", 16)


def _sprig(draw: ImageDraw.ImageDraw, x: float, y: float, size: float) -> None:
    draw.line([(x, y + size), (x, y - size * 0.3)], fill="#6f8a63", width=5)
    for way in (-1, 1):
        leaf = [(x, y + size * 0.6), (x + way * size * 0.5, y + size * 0.2), (x + way * size * 0.62, y - size * 0.12)]
        draw.line(leaf, fill="#6f8a63", width=7)
    for n in range(9):
        turn = n / 9 * 2 * pi
        px, py, r = x + size * 0.26 * cos(turn), y - size * 0.52 + size * 0.24 * sin(turn), size * 0.15
        draw.ellipse([px - r, py - r, px + r, py + r], fill="#c67f8c" if n % 2 else "#b56878")


def founder() -> None:
    """A keeper with a beard and a cap before a painted sky."""
    image, draw = _canvas(8.6, 11.8, "#8d8d8d")
    wide, high = image.size
    for row in range(high):
        tone = round(190 - 90 * row / high)
        draw.line([(0, row), (wide, row)], fill=(tone, tone, tone))
    x = wide / 2

    def oval(cx: float, cy: float, rx: float, ry: float, tone: int) -> None:
        draw.ellipse([x + (cx - rx) * wide, (cy - ry) * high, x + (cx + rx) * wide, (cy + ry) * high], fill=(tone,) * 3)

    draw.polygon(
        [
            (x - 0.42 * wide, high),
            (x - 0.34 * wide, 0.66 * high),
            (x - 0.1 * wide, 0.58 * high),
            (x + 0.1 * wide, 0.58 * high),
            (x + 0.34 * wide, 0.66 * high),
            (x + 0.42 * wide, high),
        ],
        fill=(38,) * 3,
    )
    draw.polygon([(x - 0.08 * wide, 0.6 * high), (x, 0.78 * high), (x + 0.08 * wide, 0.6 * high)], fill=(215,) * 3)
    oval(0, 0.41, 0.17, 0.15, 205)
    oval(0, 0.53, 0.18, 0.12, 88)
    oval(0, 0.475, 0.07, 0.02, 70)
    oval(0, 0.33, 0.2, 0.07, 34)
    draw.polygon(
        [
            (x - 0.22 * wide, 0.345 * high),
            (x + 0.22 * wide, 0.345 * high),
            (x + 0.19 * wide, 0.37 * high),
            (x - 0.19 * wide, 0.37 * high),
        ],
        fill=(20,) * 3,
    )
    for way in (-1, 1):
        oval(way * 0.065, 0.415, 0.016, 0.009, 30)
        for button in range(3):
            oval(way * 0.06, 0.8 + button * 0.07, 0.015, 0.009, 150)
    oval(0, 0.44, 0.022, 0.028, 180)
    _save(image.filter(ImageFilter.GaussianBlur(1.6)), "founder.png")


def picnic() -> None:
    """Four people and a dog on a shore, a boat behind them."""
    image, draw = _canvas(6.8, 10.0, "#d8d8d8")
    wide, high = image.size
    draw.rectangle([0, high * 0.42, wide, high * 0.58], fill=(128,) * 3)
    draw.polygon(
        [(0, high * 0.6), (wide * 0.4, high * 0.55), (wide, high * 0.62), (wide, high), (0, high)], fill=(176,) * 3
    )
    draw.polygon(
        [(wide * 0.58, high * 0.44), (wide * 0.9, high * 0.44), (wide * 0.84, high * 0.48), (wide * 0.63, high * 0.48)],
        fill=(50,) * 3,
    )
    draw.polygon([(wide * 0.74, high * 0.18), (wide * 0.74, high * 0.43), (wide * 0.9, high * 0.43)], fill=(240,) * 3)
    for n, (place, tone) in enumerate(((0.16, 40), (0.36, 225), (0.55, 70), (0.74, 235))):
        foot, size = high * (0.84 if n % 2 else 0.8), high * (0.2 if n != 2 else 0.15)
        cx = wide * place
        draw.polygon(
            [
                (cx - size * 0.3, foot),
                (cx - size * 0.14, foot - size * 0.72),
                (cx + size * 0.14, foot - size * 0.72),
                (cx + size * 0.3, foot),
            ],
            fill=(tone,) * 3,
        )
        head = size * 0.13
        draw.ellipse([cx - head, foot - size - head, cx + head, foot - size + head], fill=(206,) * 3)
        draw.ellipse(
            [cx - head * 1.7, foot - size - head * 1.2, cx + head * 1.7, foot - size - head * 0.5], fill=(90,) * 3
        )
    draw.ellipse([wide * 0.42, high * 0.88, wide * 0.62, high * 0.93], fill=(30,) * 3)
    draw.ellipse([wide * 0.59, high * 0.86, wide * 0.67, high * 0.905], fill=(30,) * 3)
    _save(image.filter(ImageFilter.GaussianBlur(1.2)), "picnic.png")


def ferry() -> None:
    """The ferry under the light, as a postcard."""
    image, draw = _canvas(13.7, 9.5, "#f0d9a8")
    wide, high = image.size
    for row in range(round(high * 0.6)):
        share = row / (high * 0.6)
        draw.line(
            [(0, row), (wide, row)], fill=(round(120 + 120 * share), round(165 + 55 * share), round(190 - 20 * share))
        )
    draw.polygon(
        [
            (wide * 0.62, high * 0.6),
            (wide * 0.7, high * 0.42),
            (wide * 0.86, high * 0.38),
            (wide, high * 0.52),
            (wide, high * 0.62),
        ],
        fill="#5a5f4e",
    )
    draw.polygon(
        [
            (wide * 0.765, high * 0.4),
            (wide * 0.78, high * 0.12),
            (wide * 0.82, high * 0.12),
            (wide * 0.835, high * 0.4),
        ],
        fill="#f3efe2",
    )
    draw.rectangle([wide * 0.772, high * 0.24, wide * 0.828, high * 0.3], fill="#b8432f")
    draw.rectangle([wide * 0.78, high * 0.07, wide * 0.82, high * 0.12], fill="#e9c65a")
    for n in range(9):
        y = high * (0.6 + n * 0.045)
        points = [(x, y + sin(x / wide * 14 + n) * high * 0.012) for x in range(0, wide + 20, 10)]
        draw.polygon([*points, (wide, high), (0, high)], fill=("#3f7184", "#336273")[n % 2])
    draw.polygon(
        [(wide * 0.12, high * 0.66), (wide * 0.56, high * 0.66), (wide * 0.5, high * 0.78), (wide * 0.17, high * 0.78)],
        fill="#27323c",
    )
    draw.rectangle([wide * 0.2, high * 0.56, wide * 0.47, high * 0.66], fill="#f3efe2")
    draw.rectangle([wide * 0.3, high * 0.42, wide * 0.36, high * 0.56], fill="#b8432f")
    for n in range(6):
        draw.ellipse([wide * (0.215 + n * 0.042), high * 0.59, wide * (0.235 + n * 0.042), high * 0.62], fill="#27323c")
    for n in range(5):
        r = high * (0.03 + 0.012 * n)
        cx, cy = wide * (0.33 - 0.05 * n), high * (0.39 - 0.04 * n)
        draw.ellipse([cx - r * 1.5, cy - r, cx + r * 1.5, cy + r], fill="#d9d5cb")
    _save(image, "ferry.png")


if __name__ == "__main__":
    for picture in (chart, wall_paper, founder, picnic, ferry):
        picture()
