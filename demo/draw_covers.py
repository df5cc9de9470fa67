"""Pictures for covers, in every file format that bookmaker reads."""

from __future__ import annotations

from math import cos, pi, sin
from pathlib import Path

from draw_charts import PAPER as CHART_PAPER
from draw_charts import draw_island, lettering, rose
from linocut import Block, Ink, Spot, blob, ring
from PIL import Image

__all__ = ["draw_covers"]

WIDTH, HEIGHT = 700, 1000
CREAM, NIGHT, DEEP = (246, 238, 218), (24, 38, 60), (38, 78, 98)
FOAM, SUN, RED, SLATE = (150, 188, 190), (232, 178, 84), (182, 64, 44), (78, 92, 104)
TURNED_RIGHT = 6
"""The EXIF orientation of a picture that must be turned a quarter clockwise to stand upright."""


def _bands(block: Block, inks: list[Ink], top: float, step: float, swell: float) -> None:
    """Waves, one behind the other."""
    for row, ink in enumerate(inks):
        y = top + row * step
        crest = [(x, y + swell * sin(x / 74 + row * 1.9)) for x in range(-10, WIDTH + 20, 12)]
        block.shape([*crest, (WIDTH + 10, HEIGHT), (-10, HEIGHT)], ink)


def _tower(block: Block, x: float, foot: float, tall: float) -> None:
    """A banded lighthouse with its lantern."""
    low, high = tall * 0.13, tall * 0.085
    for band in range(6):
        a, b = band / 6, (band + 1) / 6
        wide, narrow = low + (high - low) * a, low + (high - low) * b
        y, z = foot - tall * a, foot - tall * b
        ink = RED if band % 2 else CREAM
        block.shape([(x - wide, y), (x + wide, y), (x + narrow, z), (x - narrow, z)], ink)
        block.shape([(x + wide * 0.35, y), (x + wide, y), (x + narrow, z), (x + narrow * 0.35, z)], _darker(ink))
    top = foot - tall
    block.shape(
        [(x - high * 1.5, top), (x + high * 1.5, top), (x + high * 1.5, top - 16), (x - high * 1.5, top - 16)], NIGHT
    )
    block.shape(
        [
            (x - high * 0.8, top - 16),
            (x + high * 0.8, top - 16),
            (x + high * 0.8, top - 92),
            (x - high * 0.8, top - 92),
        ],
        SUN,
    )
    for side in (-0.8, -0.27, 0.27, 0.8):
        block.line([(x + high * side, top - 16), (x + high * side, top - 92)], NIGHT, 6)
    block.shape([(x - high, top - 90), (x + high, top - 90), (x, top - 150)], RED)
    block.shape(ring((x, top - 154), 10), RED)


def _darker(ink: Ink) -> Ink:
    return (int(ink[0] * 0.8), int(ink[1] * 0.8), int(ink[2] * 0.8))


def _lighthouse() -> Block:
    block = Block(WIDTH, HEIGHT, NIGHT, seed=11)
    lamp = (430.0, 318.0)
    for far, ink in ((620, (34, 54, 80)), (420, (52, 78, 102)), (250, (92, 116, 126))):
        block.shape(ring(lamp, far), ink)
    for lean in (0.0, pi):
        spread = [(lamp[0] + 900 * cos(lean + turn), lamp[1] + 900 * sin(lean + turn)) for turn in (-0.2, 0.06)]
        block.shape([lamp, *spread], (240, 212, 140))
    for _ in range(60):
        at = (block.chance.uniform(10, 690), block.chance.uniform(10, 560))
        block.shape(ring(at, block.chance.uniform(1.5, 3.5), 1, 8), CREAM)
    _bands(block, [SLATE, DEEP], 770, 50, 10)
    block.shape(
        blob([(190, 880), (300, 790), (360, 762), (500, 758), (590, 812), (690, 900), (500, 960), (250, 950)]),
        (18, 24, 34),
    )
    _tower(block, 430, 770, 380)
    _bands(block, [FOAM, DEEP, FOAM, NIGHT], 862, 36, 12)
    return block


def _harbour() -> Block:
    block = Block(WIDTH, HEIGHT, (238, 204, 160), seed=12)
    block.shape(ring((520, 250), 96), (246, 236, 206))
    block.shape(
        blob([(-40, 560), (120, 380), (300, 430), (470, 350), (760, 540), (760, 700), (-40, 700)]), (150, 158, 134)
    )
    inks = ((182, 64, 44), (246, 238, 218), (64, 104, 116), (224, 168, 84), (206, 142, 122), (240, 226, 196))
    for house in range(7):
        x, wide, tall = 4 + house * 100, 94, 150 + block.chance.uniform(0, 90)
        top = 680 - tall
        block.shape([(x, 680), (x, top), (x + wide / 2, top - 64), (x + wide, top), (x + wide, 680)], inks[house % 6])
        block.shape(
            [(x - 6, top + 4), (x + wide / 2, top - 74), (x + wide + 6, top + 4), (x + wide / 2, top - 50)], NIGHT
        )
        for column in (0.22, 0.62):
            for row in range(int(tall // 74)):
                left, y = x + wide * column, top + 24 + row * 70
                block.shape([(left, y), (left + 18, y), (left + 18, y + 30), (left, y + 30)], NIGHT)
    block.shape([(0, 676), (700, 676), (700, 726), (0, 726)], SLATE)
    _bands(block, [(96, 140, 148), DEEP, (96, 140, 148), DEEP], 722, 70, 8)
    for x, y, long, ink in ((190, 806, 130, RED), (480, 880, 160, CREAM)):
        block.line([(x, y), (x, y - 190)], NIGHT, 7)
        block.shape([(x + 8, y - 180), (x + 8, y - 20), (x + long * 0.7, y - 20)], CREAM if ink == RED else SUN)
        block.shape(
            [
                (x - long / 2, y - 10),
                (x + long / 2 + 26, y - 14),
                (x + long / 2 - 20, y + 38),
                (x - long / 2 + 20, y + 38),
            ],
            ink,
        )
    return block


def _storm() -> Block:
    block = Block(WIDTH, HEIGHT, (58, 66, 78), seed=13)
    block.chatter((0, 0, 680, 520), (96, 108, 118), 170, lean=0.25)
    for row in range(5):
        y = 430 + row * 116
        for wave in range(-1, 4):
            x = wave * 230 + (row % 2) * 115
            body = [
                (x - 50, y + 190),
                (x + 20, y + 70),
                (x + 120, y - 6),
                (x + 208, y + 26),
                (x + 214, y + 84),
                (x + 172, y + 62),
            ]
            block.shape(blob([*body, (x + 150, y + 110), (x + 270, y + 200)]), (NIGHT, DEEP)[row % 2])
            for cut in range(7):
                start = (x + 36 + cut * 13, y + 84 - cut * 10)
                block.gouge(start, (start[0] + 22, start[1] + 96), FOAM, 7)
            for drop in range(9):
                at = (x + 120 + drop * 14, y - 12 + 6 * sin(drop * 2.0) + drop * 3)
                block.shape(ring(at, 11 - drop * 0.6, 1, 16), CREAM)
        block.shape([(0, y + 186), (700, y + 186), (700, 1000), (0, 1000)], (NIGHT, DEEP)[row % 2])
    block.shape(blob([(300, 402), (360, 420), (452, 396), (430, 452), (330, 458)]), RED)
    block.line([(372, 412), (392, 300)], CREAM, 7)
    block.shape([(396, 306), (386, 396), (446, 384)], CREAM)
    return block


def _map() -> Block:
    block = Block(WIDTH, HEIGHT, CHART_PAPER, seed=14)
    for spot, radius in (((300.0, 330.0), 120.0), ((540.0, 590.0), 46.0), ((170.0, 690.0), 62.0)):
        draw_island(block, spot, radius)
    rose(block, (500, 820), 96)
    lettering(block, (350, 90), "The Islands", 74, NIGHT)
    return block


def _scales() -> Block:
    """Rows of arches, like waves on a printed cotton."""
    block = Block(WIDTH, HEIGHT, DEEP, seed=15)
    for row in range(26):
        for column in range(-1, 9):
            centre = (column * 100 + (row % 2) * 50, row * 42.0)
            for far, ink in ((50, CREAM), (46, DEEP), (36, FOAM), (32, DEEP), (22, CREAM), (18, DEEP), (8, SUN)):
                block.shape(ring(centre, far, 1, 40), ink)
    return block


def _kelp() -> Block:
    block = Block(WIDTH, HEIGHT, (222, 228, 208), seed=16)
    greens = ((70, 88, 48), (120, 122, 58), (44, 70, 62), (158, 128, 62))
    for frond in range(9):
        x, ink = 40 + frond * 78, greens[frond % 4]
        stem: list[Spot] = [(x + 34 * sin(step * 0.55 + frond), 1010 - step * 66) for step in range(9 + frond * 5 % 6)]
        block.line(blob(stem, closed=False), ink, 7)
        for step, (a, b) in enumerate(stem[1:], start=1):
            side = 1 if step % 2 else -1
            leaf = [(a, b), (a + side * 34, b - 40), (a + side * 62, b - 108), (a + side * 18, b - 62)]
            block.shape(blob(leaf), ink)
            block.shape(ring((a + side * 8, b - 6), 10, 1.2, 20), ink)
    return block


def _few(block: Block) -> Image.Image:
    return block.finished().quantize(16, dither=Image.Dither.NONE)


def draw_covers(folder: Path) -> None:
    """Write the pictures of covers."""
    folder.mkdir(parents=True, exist_ok=True)
    _lighthouse().save(folder / "lighthouse-front.png")
    _storm().save(folder / "storm-front.png")
    _map().save(folder / "map-back.png")
    exif = Image.Exif()
    exif[0x0112] = TURNED_RIGHT
    lying = _harbour().finished().transpose(Image.Transpose.ROTATE_90)
    lying.save(folder / "harbour-front.jpg", quality=82, exif=exif)
    _few(_scales()).convert("RGB").save(folder / "wave-pattern.webp", lossless=True, method=6)
    _few(_kelp()).save(folder / "kelp.tif", compression="tiff_lzw")
