"""Folded papers for tests: their panels as slabs in space."""

from __future__ import annotations

from itertools import combinations

from bookmaker.sheets.flat import Role
from bookmaker.things.box.folding import Pose, folded
from bookmaker.things.papers.folding import FoldedSheet
from bookmaker.things.papers.net import net_of, panel_name
from tests.kit.slabs import Slab, slab_of

__all__ = ["joined", "poses_of", "slabs_of"]

LAST = 99
"""After all steps."""


def poses_of(sheet: FoldedSheet, step: int = LAST, share: float = 1.0) -> dict[str, Pose]:
    return dict(folded(net_of(sheet, "sheet"), step, share))


def slabs_of(sheet: FoldedSheet, step: int = LAST, share: float = 1.0) -> dict[str, Slab]:
    """The panels and the strips between them; as thick as they are."""
    poses = poses_of(sheet, step, share)
    return {panel.name: slab_of(panel, poses[panel.name], sheet.caliper) for panel in net_of(sheet, "sheet").panels}


def joined(sheet: FoldedSheet, step: int) -> set[frozenset[str]]:
    """What is one paper: panels and the strips they hang on, and strips that meet at a corner of a panel.

    Where the second folds are not made yet, what lies beside them does too: the net has less paper there.
    """
    net = net_of(sheet, "sheet")
    pairs = {frozenset((panel.name, panel.hinge.to)) for panel in net.panels if panel.hinge}
    parts = {panel_name(cell): {cell} for cell in sheet.cells}
    for panel in net.panels:
        if panel.role is Role.EDGE:
            parts[panel.name] = {cell for cell in sheet.cells if panel_name(cell) in ends(panel.name)}
    made = max(sheet.one.steps, default=0)
    open_folds = {fold for fold, own in enumerate(sheet.two.steps) if made + own > step}
    for one, other in combinations(parts, 2):
        places = {sheet.places(cell)[1] for cell in parts[one] | parts[other]}
        lies_beside = any({fold, fold + 1} <= places for fold in open_folds)
        at_corner = len(parts[one]) == len(parts[other]) == 2 and parts[one] & parts[other]
        if lies_beside or at_corner:
            pairs.add(frozenset((one, other)))
    return pairs


def ends(strip: str) -> list[str]:
    """The panels at both sides of a strip."""
    return [f"panel {number}" for number in strip.split()[2::2]]
