"""How signs stand in lines that run down the page: upright, or on their side (Unicode, UAX #50).

The ranges are those of the property Vertical_Orientation in Unicode 14.0: U and Tu stand upright, Tr does if the
typeface has a form of its own for it, and all others, R, lie on their side.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from enum import Enum

__all__ = ["Stance", "stances"]

UPRIGHT = """
a7 a9 ae b1 bc-be d7 f7 2ea-2eb 1100-11ff 1401-167f 18b0-18ff 2016 2020-2021 2030-2031 203b-203c 2042 2047-2049 2051
2065 20dd-20e0 20e2-20e4 2100-2101 2103-2109 210f 2113-2114 2116-2117 211e-2123 2125 2127 2129 212e 2135-213f 2145-214a
214c-214d 214f-2189 218c-218f 221e 2234-2235 2300-2307 230c-231f 2324-2328 232b 237d-239a 23be-23cd 23cf 23d1-23db
23e2-2422 2424-24ff 25a0-2619 2620-2767 2776-2793 2b12-2b2f 2b50-2b59 2b97 2bb8-2bd1 2bd3-2beb 2bf0-2bff 2e50-2e51
2e80-3007 3012-3013 3020-302f 3031-309f 30a1-30fb 30fd-a4cf a960-a97f ac00-d7ff e000-faff fe10-fe1f fe30-fe48 fe50-fe57
fe5f-fe62 fe67-fe6f ff01-ff07 ff0a-ff0c ff0e-ff19 ff1f-ff3a ff3c ff3e ff40-ff5a ffe0-ffe2 ffe4-ffe7 fff0-fff8 fffc-fffd
10980-1099f 11580-115ff 11a00-11abf 13000-1343f 14400-1467f 16fe0-18d7f 1aff0-1b2ff 1cf00-1cfcf 1d000-1d1ff 1d2e0-1d37f
1d800-1daaf 1f000-1f7ff 1f900-1faff 20000-2fffd 30000-3fffd f0000-ffffd 100000-10fffd
"""
TRANSFORMED = "2329-232a 3008-3011 3014-301f 3030 30a0 30fc fe59-fe5e ff08-ff09 ff1a-ff1b ff3b ff3d ff3f ff5b-ff60 ffe3"


def _class(ranges: str) -> re.Pattern[str]:
    ends = ([chr(int(end, 16)) for end in one.split("-")] for one in ranges.split())
    return re.compile("[" + "".join("-".join(map(re.escape, end)) for end in ends) + "]")


IS_UPRIGHT, IS_TRANSFORMED = _class(UPRIGHT), _class(TRANSFORMED)

FEW_FIGURES = re.compile(r"(?<![\x21-\x7e])[0-9]{1,2}(?![\x21-\x7e])")
"""Figures that stand upright, two side by side, as no letters or signs of their kind go with them (JLREQ, 3.2.5)."""

JOINING = frozenset({"Mn", "Me", "Mc", "Cf"})


class Stance(Enum):
    """How a stretch of signs stands; figures stand upright in one square."""

    UPRIGHT = "upright"
    SIDEWAYS = "sideways"
    FIGURES = "figures"


def stances(text: str, has_own_form: Callable[[str], bool]) -> list[tuple[Stance, str]]:
    """A text in stretches; `has_own_form` tells of a sign whether there is a form of it for lines that run down.

    >>> [(stance.value, signs) for stance, signs in stances("第12章ー, Fog", lambda sign: False)]
    [('upright', '第'), ('figures', '12'), ('upright', '章'), ('sideways', 'ー, Fog')]
    """
    figures = {at for found in FEW_FIGURES.finditer(text) for at in range(*found.span())}
    found: list[tuple[Stance, str]] = []
    for at, sign in enumerate(text):
        if found and unicodedata.category(sign) in JOINING:
            stance = found[-1][0]
        elif at in figures:
            stance = Stance.FIGURES
        else:
            stands = IS_UPRIGHT.match(sign) or (IS_TRANSFORMED.match(sign) and has_own_form(sign))
            stance = Stance.UPRIGHT if stands else Stance.SIDEWAYS
        if found and found[-1][0] is stance:
            found[-1] = stance, found[-1][1] + sign
        else:
            found.append((stance, sign))
    return found
