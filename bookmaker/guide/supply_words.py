"""How much of something, as the guide says it."""

from __future__ import annotations

from ..ground.quantities import counted
from ..ground.told import MM_PER_INCH, Units, in_units, print_area, print_volume, units_told
from ..things.making import Supply, Unit
from .materials import PACKS, packs_needed, wet_glue_ml

__all__ = ["amount_of", "bought"]

LEAST, LEAST_OF_OUNCES = 0.1, 0.3
"""The least of a glue that is worth a number, in ml: a tenth of one, or a hundredth of an ounce."""


def bought(supply: Supply) -> str:
    """How a supply stands on a shopping list: in cans or sticks, if it is sold so.

    >>> bought(Supply("spray adhesive", 150000.0, Unit.AREA, 0.015))
    '1 can, for 1500.0 cm²'
    """
    packs = packs_needed(supply)
    return amount_of(supply) if packs is None else f"{counted(packs, PACKS[supply.film].noun)}, for {amount_of(supply)}"


def amount_of(supply: Supply) -> str:
    """How much of a supply.

    >>> amount_of(Supply("thread", 1234.0, Unit.LENGTH)), amount_of(Supply("paste or PVA", 20000.0, Unit.AREA, 0.03))
    ('1.23 m', '200.0 cm², about 1.8 ml')
    """
    if supply.unit is Unit.LENGTH:
        return in_units(f"{supply.amount / 1000:.2f} m", f"{supply.amount / MM_PER_INCH:.0f} in")
    wet = wet_glue_ml(supply)
    least = LEAST_OF_OUNCES if units_told() is Units.INCHES else LEAST
    if wet is None:
        return print_area(supply.amount)
    return f"{print_area(supply.amount)}, {'about' if wet >= least else 'less than'} {print_volume(max(wet, least))}"
