"""How much of something, as the guide says it."""

from __future__ import annotations

from ..things.making import Supply, Unit
from .materials import wet_glue_ml

__all__ = ["amount_of", "area_of"]

LEAST = 0.1
"""The least of a glue that is worth a number, in ml."""


def area_of(area: float) -> str:
    """An area in mm², said in cm².

    >>> area_of(62370.0)
    '623.7 cm²'
    """
    return f"{area / 100:.1f} cm²"


def amount_of(supply: Supply) -> str:
    """How much of a supply.

    >>> amount_of(Supply("thread", 1234.0, Unit.LENGTH)), amount_of(Supply("paste or PVA", 20000.0, Unit.AREA, 0.03))
    ('1.23 m', '200.0 cm², about 1.8 ml')
    """
    if supply.unit is Unit.LENGTH:
        return f"{supply.amount / 1000:.2f} m"
    wet = wet_glue_ml(supply)
    if wet is None:
        return area_of(supply.amount)
    return f"{area_of(supply.amount)}, {f'about {wet:.1f} ml' if wet >= LEAST else f'less than {LEAST} ml'}"
