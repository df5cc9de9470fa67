"""Twelve charts of an island group that no ship has found."""

from __future__ import annotations

from math import cos, pi, sin
from pathlib import Path

from linocut import Block, Ink, Spot, ring
from PIL import ImageFont

__all__ = ["PAPER", "draw_charts", "draw_general_chart", "draw_island", "lettering", "rose"]

PAPER, INK, SHOAL, LAND, RED = (244, 236, 214), (44, 58, 70), (190, 212, 208), (222, 200, 148), (176, 62, 48)
WIDTH, HEIGHT = 440, 600
FACE = Path(__file__).parent.parent / "fonts/eb-garamond/EBGaramond_400Regular_Italic.ttf"
NAMES = (
    "Harrowmere Skerry", "Inner Wick", "The Gannow", "Candle Haven", "Petrel Sound", "Old Merrin",
    "The Nine Ladders", "Salt Ness", "Whistling Rocks", "Averil Bay", "The Patience", "Lamp Roads",
)  # fmt: skip


def _coast(block: Block, radius: float, rough: float = 0.3) -> list[tuple[float, float]]:
    """An island as distances from its middle: (angle, share of its radius), made of a few waves."""
    waves = [(n, block.chance.uniform(0, 2 * pi), block.chance.gauss(0, rough / n**0.8)) for n in range(2, 13)]
    turns = [2 * pi * step / 160 for step in range(160)]
    return [(t, radius * max(0.25, 1 + sum(size * cos(n * t + lag) for n, lag, size in waves))) for t in turns]


def _outline(coast: list[tuple[float, float]], centre: Spot, grown: float) -> list[Spot]:
    return [(centre[0] + (far + grown) * cos(t), centre[1] + (far + grown) * 1.1 * sin(t)) for t, far in coast]


def draw_island(block: Block, centre: Spot, radius: float) -> None:
    """An island in its shoal water, with hill strokes and a line of depth."""
    coast = _coast(block, radius)
    block.shape(_outline(coast, centre, 26), SHOAL)
    for start in range(0, 160, 4):
        block.line(_outline(coast, centre, 44)[start : start + 3], INK, 1)
    shore = _outline(coast, centre, 0)
    block.shape(shore, LAND)
    block.line([*shore, shore[0]], INK, 2.6)
    for turn, far in coast[::5]:
        for share in (0.82, 0.45) if radius > 40 else (0.8,):
            x, y = centre[0] + far * share * cos(turn), centre[1] + far * share * 1.1 * sin(turn)
            block.gouge((x, y), (x - far * 0.16 * cos(turn), y - far * 0.16 * sin(turn)), INK, 2.4)


def lettering(block: Block, at: Spot, text: str, size: float, ink: Ink) -> None:
    """Words centred on a point."""
    block.write(at, text, ImageFont.truetype(FACE, round(size * 3)), ink)


def rose(block: Block, centre: Spot, radius: float) -> None:
    """A compass rose of sixteen points."""
    block.line(ring(centre, radius * 0.62), INK, 1.4)
    for step in range(16):
        turn = pi * step / 8 - pi / 2
        far = radius * (1.0, 0.42, 0.66, 0.42)[step % 4]
        tip = (centre[0] + far * cos(turn), centre[1] + far * sin(turn))
        for side, ink in ((-1, PAPER), (1, RED if step == 0 else INK)):
            waist = (
                centre[0] + radius * 0.16 * cos(turn + side * 0.4),
                centre[1] + radius * 0.16 * sin(turn + side * 0.4),
            )
            block.shape([centre, waist, tip], ink)
            block.line([centre, waist, tip, centre], INK, 0.8)
    lettering(block, (centre[0], centre[1] - radius * 1.16), "N", radius * 0.36, INK)


def _rhumbs(block: Block, centre: Spot) -> None:
    for step in range(16):
        turn = pi * step / 8
        block.line([centre, (centre[0] + 800 * cos(turn), centre[1] + 800 * sin(turn))], (206, 196, 176), 1)


def _border(block: Block) -> None:
    for x0, y0, x1, y1 in (
        (0, 0, WIDTH, 20),
        (0, HEIGHT - 20, WIDTH, HEIGHT),
        (0, 0, 20, HEIGHT),
        (WIDTH - 20, 0, WIDTH, HEIGHT),
    ):
        block.shape([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], PAPER)
    for step in range(20):
        if step % 2 == 0:
            x, y = 20 + step * (WIDTH - 40) / 20, 20 + step * (HEIGHT - 40) / 20
            dx, dy = (WIDTH - 40) / 20, (HEIGHT - 40) / 20
            for top in (20, HEIGHT - 26):
                block.shape([(x, top), (x + dx, top), (x + dx, top + 6), (x, top + 6)], INK)
            for left in (20, WIDTH - 26):
                block.shape([(left, y), (left + 6, y), (left + 6, y + dy), (left, y + dy)], INK)
    for inset in (20, 26):
        frame = [(inset, inset), (WIDTH - inset, inset), (WIDTH - inset, HEIGHT - inset), (inset, HEIGHT - inset)]
        block.line([*frame, frame[0]], INK, 1.2)


def _soundings(block: Block, islands: list[tuple[Spot, float]]) -> None:
    """Depths in fathoms, deeper away from land."""
    for row in range(11):
        for column in range(8):
            x = 56 + column * 47 + block.chance.uniform(-13, 13)
            y = 100 + row * 45 + block.chance.uniform(-13, 13)
            away = min(((x - cx) ** 2 + (y - cy) ** 2) ** 0.5 - radius for (cx, cy), radius in islands)
            if away > 58 and not (x > 300 and y > 440):
                lettering(block, (x, y), str(round(away / 7 + block.chance.uniform(0, 6))), 15, INK)


def _chart(number: int) -> Block:
    block = Block(WIDTH, HEIGHT, PAPER, seed=700 + number)
    islands: list[tuple[Spot, float]] = [((block.chance.uniform(150, 260), block.chance.uniform(210, 330)), 82.0)]
    for _ in range(3):
        spot = (block.chance.uniform(80, 360), block.chance.uniform(120, 480))
        if all(((spot[0] - x) ** 2 + (spot[1] - y) ** 2) ** 0.5 > radius + 110 for (x, y), radius in islands):
            islands.append((spot, block.chance.uniform(16, 34)))
    _rhumbs(block, (350, 505))
    for centre, radius in islands:
        draw_island(block, centre, radius)
    _soundings(block, islands)
    (x, y), _ = islands[0]
    block.shape(ring((x + 24, y - 20), 7), RED)
    rose(block, (350, 505), 52)
    _border(block)
    lettering(block, (WIDTH / 2, 60), NAMES[number], 38, INK)
    return block


def draw_charts(folder: Path) -> None:
    """Write the charts as 01.png, 02.png and so on."""
    folder.mkdir(parents=True, exist_ok=True)
    for number in range(len(NAMES)):
        _chart(number).save(folder / f"{number + 1:02}.png")


def draw_general_chart(file: Path) -> None:
    """A chart of all the islands, as wide as two pages."""
    width, height = 960, 560
    block = Block(width, height, PAPER, seed=799)
    for step in range(1, 8):
        block.line([(0, height * step / 8), (width, height * step / 8)], (206, 196, 176), 1)
    for step in range(1, 14):
        block.line([(width * step / 14, 0), (width * step / 14, height)], (206, 196, 176), 1)
    islands = [
        ((125 + number % 4 * 220 + 60 * (number // 4 % 2), 95 + number // 4 * 175), block.chance.uniform(24, 34))
        for number in range(len(NAMES))
    ]
    for centre, radius in islands:
        draw_island(block, centre, radius)
    for name, (centre, radius) in zip(NAMES, islands, strict=True):
        lettering(block, (centre[0], centre[1] + radius + 48), name, 21, INK)
    rose(block, (890, 480), 44)
    frame = [(8, 8), (width - 8, 8), (width - 8, height - 8), (8, height - 8)]
    block.line([*frame, frame[0]], INK, 2.5)
    file.parent.mkdir(parents=True, exist_ok=True)
    block.save(file)
