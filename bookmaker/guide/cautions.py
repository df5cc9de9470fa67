"""What to beware of: knives, saws, glue and spray, small parts, old papers, rights."""

from __future__ import annotations

from ..ground.told import in_units
from ..things.making import CAUTION

__all__ = ["IN_SHORT", "cautions"]

_BEFORE = (
    "Knife: a fresh blade, a steel rule and a cutting mat. Cut away from your hand, in several light strokes. Put "
    "the blade away before you pick up the glue. Needles and wire have sharp ends. "
    "Children leave knife, saw and spray to a grown-up.",
    "Saw and sanding: clamp what you saw, keep the free hand behind the blade. Wood dust is not for lungs: wear a "
    "mask, and wipe up damp.",
    "Spray adhesive and varnish are flammable, and their mist is not for lungs. Use them outdoors or with strong "
    "ventilation, away from flames and sparks; follow the label and your local rules, and wear a suitable "
    "respirator where the label says so.",
)

_AFTER = (
    "Old or lent books and papers: scan them, do not cut them.",
    "Rights: a shrunken cover of a living author's book is for your own shelf; the rights stay with their owners.",
)


def cautions() -> tuple[str, ...]:
    """All of them, with lengths in the unit told."""
    small = in_units("19.5 × 13 mm", "3/4 × 1/2 in")
    parts = (
        f"Small parts: a finished book of {small} fits the test cylinder for small parts (16 CFR 1501.4). It is a "
        "choking hazard and not for children under three."
    )
    return (*_BEFORE, parts, *_AFTER)


IN_SHORT = f"{CAUTION}take a fresh blade, and cut away from your hand. Keep small parts from small children."
