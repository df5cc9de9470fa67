"""What holds for every packing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bookmaker.ground.geometry import Rect
from bookmaker.sheets.packing import (
    Bin,
    Cut,
    Item,
    Placed,
    Strip,
)

__all__ = [
    "AREA",
    "bins_of",
    "can_be_cut_straight",
    "check_places",
    "check_strip",
    "cut_up",
    "outline",
    "random_looking",
    "sheets_of",
]


AREA = Bin(100, 80)
TINY = 1e-6


def check_strip(items: Sequence[Item], strip: Strip) -> None:
    """The laws of a strip."""
    area = Bin(strip.width, strip.height)
    check_places(items, strip.placed, [area], strip.gap)
    assert strip.bound <= strip.height + TINY
    assert strip.height <= strip.row_height + TINY
    assert strip.height == max((spot.y + spot.height for spot in strip.placed), default=0)
    panels = cut_up(strip.placed, area, strip.cuts(), strip.gap)
    assert all(len(panel) <= 1 for panel in panels)
    assert can_be_cut_straight([outline(spot) for spot in strip.placed])


def check_places(items: Sequence[Item], placed: Sequence[Placed], bins: Sequence[Bin], gap: float) -> None:
    """Every item once, in order, inside, as large as it is, turned only if allowed, gap between pieces kept."""
    assert [spot.key for spot in placed] == [item.key for item in items]
    for item, spot in zip(items, placed, strict=True):
        size = (item.height, item.width) if spot.turned else (item.width, item.height)
        assert (spot.width, spot.height) == size
        assert item.may_turn or not spot.turned
        area = bins[spot.bin]
        assert Rect(0, 0, area.width, area.height).contains(outline(spot), TINY)
    for number, spot in enumerate(placed):
        for other in placed[:number]:
            if spot.bin == other.bin:
                room = outline(spot).grown(gap)
                assert not room.overlaps(outline(other), TINY)


def outline(spot: Placed) -> Rect:
    """A piece where it lies."""
    return Rect(spot.x, spot.y, spot.width, spot.height)


def bins_of(placed: Sequence[Placed], leftovers: Sequence[Bin] = (), area: Bin = AREA) -> list[Bin]:
    """The left-overs and as many whole bins as are used."""
    return [*leftovers, *[area] * sheets_of(placed, leftovers)]


def sheets_of(placed: Iterable[Placed], leftovers: Sequence[Bin] = ()) -> int:
    """Whole bins used."""
    return len({spot.bin for spot in placed if spot.bin >= len(leftovers)})


def cut_up(pieces: Sequence[Placed], area: Bin, cuts: Sequence[Cut], gap: float) -> list[list[Placed]]:
    """Make the cuts one after the other, as with a knife; the pieces on each panel that is left.

    A cut must run from edge to edge through a panel that is loose by then, half the gap between pieces off any piece.
    """
    loose = {Rect(0.0, 0.0, area.width, area.height)}
    for cut in cuts:
        assert cut.panel in loose
        loose.remove(cut.panel)
        panel = cut.panel
        low, high = (panel.x, panel.right) if cut.upright else (panel.y, panel.top)
        assert low < cut.at < high
        line = ((cut.at, panel.y), (cut.at, panel.top)) if cut.upright else ((panel.x, cut.at), (panel.right, cut.at))
        assert (tuple(cut.start), tuple(cut.end)) == line
        for spot in pieces:
            start, end = (spot.x, spot.x + spot.width) if cut.upright else (spot.y, spot.y + spot.height)
            on_panel = outline(spot).overlaps(panel, TINY)
            assert not (on_panel and start - gap / 2 + TINY < cut.at < end + gap / 2 - TINY)
        x, y, width, height = panel
        if cut.upright:
            loose |= {Rect(x, y, cut.at - x, height), Rect(cut.at, y, x + width - cut.at, height)}
        else:
            loose |= {Rect(x, y, width, cut.at - y), Rect(x, cut.at, width, y + height - cut.at)}
    return [[spot for spot in pieces if panel.overlaps(outline(spot), TINY)] for panel in loose]


def can_be_cut_straight(rects: Sequence[Rect]) -> bool:
    """Whether straight edge-to-edge cuts can part the rectangles, found by trying, apart from bookmaker."""
    if len(rects) <= 1:
        return True
    for edge in {rect.right for rect in rects}:
        left = [rect for rect in rects if rect.right <= edge + TINY]
        right = [rect for rect in rects if rect.x >= edge - TINY]
        if right and len(left) + len(right) == len(rects):
            return can_be_cut_straight(left) and can_be_cut_straight(right)
    for edge in {rect.top for rect in rects}:
        lower = [rect for rect in rects if rect.top <= edge + TINY]
        upper = [rect for rect in rects if rect.y >= edge - TINY]
        if upper and len(lower) + len(upper) == len(rects):
            return can_be_cut_straight(lower) and can_be_cut_straight(upper)
    return False


def random_looking(count: int) -> list[Item]:
    """Pieces of many sizes, six to a group."""
    return [
        Item(str(n), 10 + 0.37 * (n * 7919 % 271), 8 + 0.19 * (n * 104729 % 263), may_turn=n % 3 > 0, group=str(n // 6))
        for n in range(count)
    ]
