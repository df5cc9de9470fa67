"""Books put together from plan.json alone: pieces taken off their sheets, cut, folded, gathered and read."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Face, Flat, Fold, FoldKind, Panel, Role, Stroke
from tests.kit import hands

__all__ = ["read"]

Plan = dict[str, Any]


def flat_of(piece: Plan) -> Flat:
    """A piece taken off its sheet and laid upright again, with its lower left corner at the origin."""
    xs, ys = zip(*piece["outline_mm"], strict=True)
    left, right, foot = min(xs), max(xs), min(ys)

    def point(at: list[float]) -> Point:
        if piece["turned_deg"]:
            return Point(at[1] - foot, right - at[0])
        return Point(at[0] - left, at[1] - foot)

    def rect(sides: list[float]) -> Rect:
        x, y, width, height = sides
        return Rect.around([point([x, y]), point([x + width, y + height])])

    def stroke(line: Plan) -> Stroke:
        return Stroke(point(line["from_mm"]), point(line["to_mm"]))

    folds = tuple(Fold(FoldKind(fold["kind"]), *_straight(stroke(fold))) for fold in piece["folds"])
    panels = tuple(
        Panel(
            Role(panel["role"]),
            rect(panel["rect_mm"]),
            panel["page"],
            Face(panel["face"]),
            panel["head_down"],
            panel["creep_mm"],
        )
        for panel in piece["panels"]
    )
    cuts = tuple(map(stroke, piece["cuts"]))
    outline = tuple(map(point, piece["outline_mm"]))
    return Flat(piece["kind"], piece["name"], "", outline, folds, panels, cuts=tuple(map(_straight, cuts)))


def _straight(line: Stroke) -> Stroke:
    """The line as it was before its ends were rounded: exactly upright or level."""
    (ax, ay), (bx, by) = line
    return Stroke(Point(ax, ay), Point(ax, by)) if abs(ax - bx) < 1e-3 else Stroke(Point(ax, ay), Point(bx, ay))


def pieces_of(plan: Plan, book: int, *kinds: str) -> list[Flat]:
    """The flats of a book in the order of their numbers."""
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["book"] == book]
    pieces = [piece for piece in pieces if piece["kind"] in kinds]
    return [flat_of(piece) for piece in sorted(pieces, key=lambda piece: int(piece["id"].rsplit("-", 1)[1]))]


def read(plan: Plan, book: int, right_to_left: bool) -> list[int]:
    """The pages of a book put together from its flats, blank ones left out.

    Each has its head up and lies, odd or even, on the side where the opened book has it.
    """
    strips = pieces_of(plan, book, "strip")
    if strips:
        return _along(strips, right_to_left)
    leaves = pieces_of(plan, book, "leaves")
    if leaves:
        found = [
            page
            for spot in hands.piled(leaves, right_to_left)
            for page in hands.open_leaf(hands.alone(*spot), right_to_left)
        ]
    else:
        sections = groupby(pieces_of(plan, book, "section sheet"), key=lambda flat: flat.name.split(",")[0])
        found = hands.gathered(
            [
                hands.nested([hands.leaf_through(*hands.fold_up(flat), right_to_left) for flat in flats])
                for _, flats in sections
            ]
        )
    printed = [(page.panel.page, page) for page in found if page.panel and page.panel.page]
    for page_number, page in printed:
        assert page.upright
        assert page.right_hand is ((page_number % 2 == 1) is not right_to_left)
    return [page_number for page_number, _ in printed]


def _along(strips: list[Flat], right_to_left: bool) -> list[int]:
    """A concertina from its first panel to its last; from end to end its folds alternate, valleys first.

    The next strip lies on a tab, whose fold is one of the concertina; panels that are joined back to back, with their
    free edges flush, meet in a ridge.
    """
    found: list[Panel] = []
    ways: list[FoldKind] = []
    for flat in strips:
        if found and found[-1].role is Role.TAB:
            found.pop()
        elif found:
            ways.append(FoldKind.MOUNTAIN)
        found += sorted(flat.panels, key=lambda panel: panel.rect.x, reverse=right_to_left)
        ways += [fold.kind for fold in sorted(flat.folds, key=lambda fold: fold.start.x, reverse=right_to_left)]
    assert len(found) == len(ways) + 1
    assert ways == [(FoldKind.VALLEY, FoldKind.MOUNTAIN)[number % 2] for number in range(len(ways))]
    assert not any(panel.head_down for panel in found)
    return [panel.page for panel in found if panel.page]
