"""The steps of a box."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.outlines import Outline
from ...ground.told import figure, unit
from ..common_steps import FOLDING, KNIFE, SCORING, count_folds, glue_over, spray_caution
from ..making import Bench, Chapter, Figure, Making
from ..thing import Around
from ..views.flat_view import flat_figure
from ..wording import as_list, long, sides, with_article
from .net import Net, NetPanel, Room
from .plan import BoxPlan
from .views import folding_figure, order_of_folds

__all__ = ["box_chapter"]

NET_HIGH = 85.0
"""How high a net is drawn at most, in mm: its folding stands beside it and is as high."""


def box_chapter(box: BoxPlan, bench: Bench, around: Around) -> Chapter:
    """What it holds, how each net is scored, cut, folded and glued, and how it is closed."""
    holds = f" for {as_list([around.printed(one) for one in box.held])}" if box.held else ""
    where = f", and stands in {box.space}" if box.space else ""
    makings = tuple(_making(box, number, net, bench) for number, net in enumerate(box.nets))
    sizes = (
        *zip(("inside, long", "wide", "high"), map(long, box.room), strict=True),
        *zip(("outside, long", "wide", "high"), map(long, box.outside), strict=True),
    )
    title = f"{box.entry.kind.capitalize()}: {box.name}"
    return Chapter(title, f"{with_article(box.entry.kind).capitalize()}{holds}{where}.", makings, sizes)


def _making(box: BoxPlan, number: int, net: Net, bench: Bench) -> Making:
    flat = box.flats[number]
    tabs = [panel.rect for panel in net.panels if panel.name in dict(net.glued)]
    glue = (glue_over(bench.glue_of(flat), tabs, bench.stock_of(flat).glue),) if tabs else ()
    last = number == len(box.nets) - 1
    steps = (*_begun(box, net, number, bench), *_folded(net, bench.glue_of(flat)), *(_closed(box) if last else ()))
    figures = tuple(_figures(box, net, number, bench))
    tools = (*KNIFE, *SCORING, *FOLDING)
    return Making(f"The {net.name}", steps, figures, takes=(box.flats[number].kind,), tools=tools, supplies=glue)


def _figures(box: BoxPlan, net: Net, number: int, bench: Bench) -> Iterator[Figure]:
    order, glue = list(order_of_folds(net)), _glued(net)
    yield flat_figure(
        box.flats[number], bench.room, f"The net of the {net.name}", high=NET_HIGH, order=order, glue=glue
    )
    yield folding_figure(net, bench.room)


def _glued(net: Net) -> list[Outline]:
    """The flaps on whose print glue comes, on the flat."""
    left, foot = net.corner
    return [tuple(point.plus(-left, -foot) for point in net.by_name[flap].outline) for flap, _ in net.glued]


def _begun(box: BoxPlan, net: Net, number: int, bench: Bench) -> Iterator[str]:
    flat = box.flats[number]
    yield (
        f"Score {count_folds(flat.folds)} of the {net.name} on the printed side, from mark to mark, along a steel "
        f"rule, with a groove or a soft mat below. The fibres run {box.entry.fibres}."
    )
    yield f"Cut the {net.name} out along its lines, {sides(flat.size)} wide and high."
    cracks = " The film goes round every fold and was reckoned in." if bench.stock_of(flat).film else ""
    yield (
        f"Sharpen every crease once with the bone folder, folded away from the print.{cracks} Where print cracks at a "
        "fold, a felt pen of its colour hides it."
    )


def _folded(net: Net, glue: str) -> Iterator[str]:
    """The order of folding, with the drawings' numbers; glue where a flap meets its wall."""
    pasted = dict(net.glued)
    for order, (step, bent) in enumerate(net.creases, start=1):
        eased = [panel for panel in net.panels if panel.hinge and panel.hinge.eased and panel.hinge.eased[0] == step]
        now = [flap for flap, wall in pasted.items() if _met(net, flap, wall) == step]
        held = ""
        if now:
            flaps = as_list([f"the {flap}" for flap in now])
            yield from spray_caution(glue)
            yield f"Spread {glue} in a thin film on {flaps}."
            walls = as_list([f"the {_called(wall)}" for wall in dict.fromkeys(pasted[flap] for flap in now)])
            held = (
                f" {walls.capitalize()} {'is' if ' and ' not in walls else 'are'} held on {flaps} until the glue grips."
            )
        yield f"Fold {order}: {_bent(net, bent)}{_eased(eased)}.{held}"


def _called(panel: str) -> str:
    """A panel as it is spoken of: the left is the left side."""
    return f"{panel} side" if panel in ("left", "right") else panel


def _bent(net: Net, panels: Sequence[NetPanel]) -> str:
    names = as_list([f"the {_called(panel.name)}" for panel in panels])
    over = any(map(net.turns_over, panels))
    return f"{names} right over" if over else f"{names} away from the print"


def _eased(panels: Sequence[NetPanel]) -> str:
    if not panels:
        return ""
    return f", leading {as_list([f'the {panel.name}' for panel in panels])} in behind the front as you close it"


def _met(net: Net, flap: str, wall: str) -> int:
    """The step in which a flap and a wall come together: the last of those that move one of them and not the other."""
    by_name = net.by_name

    def moved_with(name: str) -> Iterator[NetPanel]:
        panel = by_name[name]
        yield panel
        if panel.hinge:
            yield from moved_with(panel.hinge.to)

    apart = set(moved_with(flap)) ^ set(moved_with(wall))
    return max(panel.hinge.step for panel in apart if panel.hinge)


def _closed(box: BoxPlan) -> Iterator[str]:
    room, outside = box.room, box.outside
    yield (
        f"Let it dry for an hour. The room inside is {_sides(room)} long, wide and high; closed it is "
        f"{_sides(outside)} outside."
    )


def _sides(room: Room) -> str:
    return f"{' × '.join(figure(side, 1) for side in room)} {unit()}"
