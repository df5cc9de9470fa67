"""Sixteen plates for a book of the birds, eggs, feathers and shells of an island."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin
from pathlib import Path

from linocut import Block, Ink, Spot, blob, egg, ring

__all__ = ["draw_birds"]

PAPER, INK = (246, 240, 224), (33, 38, 44)
SEA, SAND, RUST, MOSS = (142, 171, 178), (221, 196, 150), (196, 92, 52), (150, 164, 120)
GROUNDS = (SEA, SAND, MOSS, (205, 168, 150))
AREA = (26.0, 26.0, 394.0, 564.0)


def _plate(number: int) -> Block:
    block = Block(420, 590, PAPER, seed=300 + number)
    ground = GROUNDS[number % len(GROUNDS)]
    block.ragged(AREA, ground)
    block.chatter((30, 34, 360, 420), PAPER, 26)
    return block


def _rock(block: Block, top: float = 455) -> None:
    """The ledge a bird stands on."""
    edge: list[Spot] = [(x, top + block.chance.uniform(-10, 12) + abs(x - 210) * 0.12) for x in range(26, 400, 23)]
    block.shape([*edge, (394, 564), (26, 564)], INK)
    for _ in range(34):
        x, y = block.chance.uniform(34, 370), block.chance.uniform(top + 26, 556)
        block.gouge((x, y), (x + block.chance.uniform(8, 26), y + block.chance.uniform(2, 14)), PAPER, 3)


def _feathers(block: Block, wing: list[Spot], ink: Ink, rows: int = 6) -> None:
    """Gouge marks that follow a wing, from its shoulder (first point) to its tip (last)."""
    (ax, ay), (bx, by) = wing[0], wing[-1]
    for row in range(rows):
        for step in range(9):
            t = (step + 0.5 * (row % 2)) / 9
            spread = (row - rows / 2 + 0.5) * 11 * sin(pi * min(1.0, t * 0.85 + 0.12))
            x, y = ax + (bx - ax) * t - spread * 0.6, ay + (by - ay) * t + spread
            block.gouge((x, y), (x + (bx - ax) * 0.08, y + (by - ay) * 0.08), ink, 3.2)


def _standing(
    block: Block, *, head: Ink, back: Ink, belly: Ink, bill: list[Spot], bill_ink: Ink, legs: float, neck: float = 0
) -> None:
    """A bird in profile, facing right; `legs` and `neck` stretch it."""
    up = 470 - legs
    hx, hy = 268.0, up - 250 - neck
    for x in (196, 226):
        block.line([(x, up - 30), (x + 4, 462)], bill_ink, 8)
        block.shape([(x - 6, 468), (x + 8, 456), (x + 40, 468)], bill_ink)
    body = [(hx - 42, hy + 30), (hx + 34, hy + 44), (hx + 32, up - 130), (hx - 20, up - 40), (180, up - 18)]
    block.shape(blob([*body, (104, up + 20), (84, up + 22), (128, up - 70), (hx - 76, up - 160)]), belly)
    wing = [(hx - 30, hy + 70), (hx - 12, up - 120), (160, up - 34), (82, up + 26), (126, up - 84), (hx - 78, up - 160)]
    block.shape(blob(wing), back)
    _feathers(block, [(hx - 50, hy + 100), (110, up + 2)], PAPER if back == INK else INK)
    block.shape(ring((hx, hy + 24), 44, 0.95), head)
    block.shape([(hx + bx, hy + 24 + by) for bx, by in bill], bill_ink)
    block.shape(ring((hx + 14, hy + 14), 8), PAPER if head == INK else INK)
    block.shape(ring((hx + 15, hy + 14), 4), INK if head == INK else PAPER)
    for step in range(9):
        y = up - 170 + step * 14
        block.gouge((hx + 22 - step * 2, y), (hx + 8 - step * 4, y + 12), INK if belly == PAPER else PAPER, 3)


def _puffin(block: Block) -> None:
    _rock(block)
    bill = [(30.0, -30.0), (64, -16), (84, 10), (60, 22), (30, 28)]
    _standing(block, head=INK, back=INK, belly=PAPER, bill=bill, bill_ink=RUST, legs=26)
    block.shape(blob([(250, 200), (296, 192), (304, 226), (272, 246), (246, 234)]), PAPER)
    block.shape(ring((284, 210), 7), INK)
    for x in (318, 330):
        block.line([(x, 212), (x + 4, 240)], SAND, 4)


def _guillemot(block: Block) -> None:
    _rock(block)
    _standing(
        block, head=INK, back=INK, belly=PAPER, bill=[(36, -12), (104, 4), (36, 14)], bill_ink=INK, legs=14, neck=34
    )


def _cormorant(block: Block) -> None:
    _rock(block)
    bill = [(30.0, -16.0), (106, -8), (116, 8), (104, 4), (34, 12)]
    _standing(block, head=INK, back=INK, belly=INK, bill=bill, bill_ink=RUST, legs=16, neck=70)


def _oystercatcher(block: Block) -> None:
    _rock(block)
    _standing(block, head=INK, back=INK, belly=PAPER, bill=[(34, -10), (124, 8), (34, 12)], bill_ink=RUST, legs=78)


def _gull(block: Block) -> None:
    _rock(block)
    bill = [(32.0, -16.0), (92, -8), (98, 12), (84, 12), (34, 16)]
    _standing(block, head=PAPER, back=(110, 124, 130), belly=PAPER, bill=bill, bill_ink=RUST, legs=44)


def _plover(block: Block) -> None:
    _rock(block)
    bill = [(36.0, -8.0), (84, 2), (36, 12)]
    _standing(block, head=SAND, back=(128, 92, 62), belly=PAPER, bill=bill, bill_ink=INK, legs=60)
    block.line(blob([(224, 236), (262, 254), (302, 244)], closed=False), INK, 14)


def _flying(block: Block, wing: Ink, body: Ink, tip: Ink, *, fork: float, span: float = 1.0) -> None:
    """A bird on the wing over a line of sea, seen from below."""
    for row in range(6):
        y = 452 + row * 20
        points: list[Spot] = [(26 + 18.4 * step, y + 7 * sin(step * 1.1 + row * 1.7)) for step in range(21)]
        block.line(points, INK if row % 2 else PAPER, 6)
    for side in (-1, 1):
        outline = [
            (0, -34),
            (52, -92),
            (112, -104),
            (168 * span, -34),
            (172 * span, -22),
            (116, -52),
            (62, -26),
            (0, 44),
        ]
        block.shape(blob([(210 + side * x, 278 + y) for x, y in outline]), wing)
        block.shape(blob([(210 + side * x, 278 + y) for x, y in ((126, -92), (170 * span, -24), (122, -54))]), tip)
        for step in range(12):
            x = 24 + step * 9
            rise = -40 - 44 * sin(step / 11 * pi * 0.62)
            block.gouge(
                (210 + side * x, 278 + rise), (210 + side * (x + 10), 304 + rise), PAPER if wing == INK else INK, 3.4
            )
    block.shape(blob([(210, 128), (232, 168), (238, 270), (218, 360), (202, 360), (182, 270), (188, 168)]), body)
    block.shape([(194, 336), (210 - fork, 426), (210, 426 - fork), (210 + fork, 426), (226, 336)], tip)
    block.shape([(199, 142), (210, 88), (221, 142)], RUST)
    for side in (-1, 1):
        block.shape(ring((210 + side * 13, 158), 4), INK if body != INK else PAPER)


def _petrel(block: Block) -> None:
    _flying(block, INK, INK, INK, fork=26, span=0.92)
    block.shape(blob([(188, 318), (232, 318), (226, 342), (194, 342)]), PAPER)


def _gannet(block: Block) -> None:
    _flying(block, PAPER, PAPER, INK, fork=18)
    block.shape(ring((210, 162), 23, 1.1), (222, 160, 72))


def _tern(block: Block) -> None:
    _flying(block, PAPER, PAPER, (110, 124, 130), fork=40)
    block.shape(ring((210, 156), 21, 0.9), INK)


def _spots(block: Block, centre: Spot, radius: float, ink: Ink, count: int) -> None:
    for _ in range(count):
        turn, far = block.chance.uniform(0, 2 * pi), block.chance.random() ** 0.5 * 0.82
        x, y = centre[0] + radius * far * cos(turn) * 0.9, centre[1] + radius * far * sin(turn) * 1.22
        size = block.chance.uniform(2, 9)
        block.shape(ring((x, y), size, block.chance.uniform(0.5, 1), 12), ink)


def _egg_plate(block: Block) -> None:
    block.shape(ring((222, 452), 120, 0.16), INK)
    block.shape(egg((210, 300), 116), (176, 196, 186))
    _spots(block, (210, 300), 110, INK, 70)
    _spots(block, (210, 250), 80, (128, 92, 62), 30)


def _scribbled_egg(block: Block) -> None:
    block.shape(ring((222, 456), 124, 0.15), INK)
    block.shape(egg((210, 296), 112, 0.3), PAPER)
    for _ in range(26):
        x, y = block.chance.uniform(140, 276), block.chance.uniform(200, 400)
        turns = [(x + block.chance.uniform(-22, 22), y + block.chance.uniform(-16, 16)) for _ in range(4)]
        block.line(blob(turns, closed=False), INK, block.chance.uniform(1.5, 4))


def _nest(block: Block) -> None:
    block.shape(ring((210, 330), 170, 0.72), INK)
    for step in range(150):
        turn, far = step * 2.399, 112 + 56 * block.chance.random()
        x, y = 210 + far * cos(turn), 330 + far * 0.72 * sin(turn)
        block.gouge((x, y), (x - 34 * sin(turn + 0.3), y + 26 * cos(turn + 0.3)), (SAND, PAPER, MOSS)[step % 3], 4)
    for x, y, lean in ((166.0, 320.0, -0.5), (254.0, 320.0, 0.5), (210.0, 352.0, 3.0)):
        block.shape(egg((x, y), 47, 0.18, lean), INK)
        block.shape(egg((x, y), 42, 0.18, lean), (188, 206, 196))
        for _ in range(16):
            block.shape(ring((x + block.chance.gauss(0, 14), y + block.chance.gauss(0, 18)), 3, 1, 10), INK)


def _feather(block: Block, vane: Ink, bars: Ink, *, barred: bool) -> None:
    spine = blob([(150, 540), (186, 440), (222, 300), (262, 70)], closed=False, steps=30)
    left = [(x - 62 * sin(pi * max(0, i - 16) / 82) ** 0.7, y + 14) for i, (x, y) in enumerate(spine) if i >= 16]
    right = [(x + 44 * sin(pi * max(0, i - 16) / 82) ** 0.7, y + 4) for i, (x, y) in enumerate(spine) if i >= 16]
    block.shape([*left, *reversed(right)], vane)
    for i in range(20, 88):
        x, y = spine[i]
        wide = sin(pi * (i - 16) / 82) ** 0.7
        if not barred or i % 9 < 4:
            block.gouge((x - 2, y), (x - 58 * wide, y - 30 * wide), bars, 5 if barred else 2)
            block.gouge((x + 2, y), (x + 42 * wide, y - 30 * wide), bars, 5 if barred else 2)
    block.line(spine, PAPER if vane == INK else INK, 5)


def _barred_feather(block: Block) -> None:
    _feather(block, PAPER, INK, barred=True)


def _dark_feather(block: Block) -> None:
    _feather(block, INK, PAPER, barred=False)


def _scallop(block: Block) -> None:
    block.shape([(128, 478), (292, 478), (262, 430), (158, 430)], RUST)
    edge = []
    for step in range(121):
        turn = pi * (1 - step / 120)
        far = 186 + 9 * abs(cos(step / 120 * pi * 9))
        edge.append((210 + far * cos(turn) * 0.93, 424 - far * sin(turn) * 1.28 + 26))
    block.shape([*edge, (226, 456), (194, 456)], RUST)
    for rib in range(10):
        turn = pi * (0.96 - 0.92 * rib / 9)
        end = (210 + 184 * cos(turn) * 0.93, 450 - 184 * sin(turn) * 1.28)
        block.gouge(end, (210, 446), PAPER, 13)
    for band in (0.5, 0.76, 0.9):
        arc = [(210 + (x - 210) * band, 450 + (y - 450) * band) for x, y in edge[6:-6]]
        block.line(arc, INK, 3)


def _urchin(block: Block) -> None:
    block.shape(ring((210, 300), 168), INK)
    for arm in range(20):
        turn = 2 * pi * arm / 20
        for step in range(11):
            far = 34 + step * 12.6
            size = 1.5 + 4.6 * sin(pi * (step + 1) / 12)
            ink = PAPER if arm % 4 < 2 else (205, 150, 160)
            block.shape(ring((210 + far * cos(turn), 300 + far * sin(turn)), size, 1, 14), ink)
    block.shape(ring((210, 300), 22), SAND)
    block.shape(ring((210, 300), 9), INK)


PLATES: tuple[Callable[[Block], None], ...] = (
    _puffin, _petrel, _guillemot, _scribbled_egg, _gannet, _cormorant, _barred_feather, _oystercatcher,
    _egg_plate, _tern, _scallop, _gull, _nest, _plover, _urchin, _dark_feather,
)  # fmt: skip


def draw_birds(folder: Path) -> None:
    """Write the plates as 01.png, 02.png and so on."""
    folder.mkdir(parents=True, exist_ok=True)
    for number, draw in enumerate(PLATES, start=1):
        block = _plate(number)
        draw(block)
        block.save(folder / f"{number:02}.png")
