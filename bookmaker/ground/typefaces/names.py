"""The names of the typefaces that come with bookmaker, here and among their makers."""

from __future__ import annotations

import re

from ..problems import near_match

__all__ = ["BUNDLED", "family_of", "meant_face", "style_of"]

BUNDLED = {
    "text": "noto-serif/NotoSerif_400Regular.ttf",
    "text italic": "noto-serif/NotoSerif_400Regular_Italic.ttf",
    "text bold": "noto-serif/NotoSerif_700Bold.ttf",
    "text bold italic": "noto-serif/NotoSerif_700Bold_Italic.ttf",
    "sans": "open-sans/OpenSans_400Regular.ttf",
    "sans bold": "open-sans/OpenSans_700Bold.ttf",
    "old style": "eb-garamond/EBGaramond_400Regular.ttf",
    "old style italic": "eb-garamond/EBGaramond_400Regular_Italic.ttf",
    "typewriter": "courier-prime/CourierPrime_400Regular.ttf",
    "blackletter": "unifraktur-maguntia/UnifrakturMaguntia_400Regular.ttf",
    "script": "dancing-script/DancingScript_400Regular.ttf",
    "caslon": "libre-caslon-text/LibreCaslonText_400Regular.ttf",
    "caslon italic": "libre-caslon-text/LibreCaslonText_400Regular_Italic.ttf",
    "didone": "libre-bodoni/LibreBodoni_500Medium.ttf",
    "clarendon": "besley/Besley_500Medium.ttf",
    "clarendon bold": "besley/Besley_700Bold.ttf",
    "inscriptional": "cinzel/Cinzel_600SemiBold.ttf",
    "humanist": "cabin/Cabin_400Regular.ttf",
    "humanist bold": "cabin/Cabin_700Bold.ttf",
    "geometric": "jost/Jost_500Medium.ttf",
    "geometric bold": "jost/Jost_700Bold.ttf",
}
"""The typefaces that come with bookmaker: what each is used for, and its file under ``fonts/``."""

FAMILIES = {
    "noto-serif": "Noto Serif",
    "open-sans": "Open Sans",
    "eb-garamond": "EB Garamond",
    "courier-prime": "Courier Prime",
    "unifraktur-maguntia": "UnifrakturMaguntia",
    "dancing-script": "Dancing Script",
    "libre-caslon-text": "Libre Caslon Text",
    "libre-bodoni": "Libre Bodoni",
    "besley": "Besley",
    "cinzel": "Cinzel",
    "cabin": "Cabin",
    "jost": "Jost",
}
"""What their makers call the family in each folder."""


def meant_face(name: str) -> str:
    """What to write in place of a name that no typeface has: the name here of the family it may mean, or all."""
    families = {face: family_of(face) for face in BUNDLED}
    spoken = " ".join(re.split(r"[-_\s]+", name.casefold())).strip()
    styled = {f"{family.casefold()} {style_of(face)}".strip(): face for face, family in families.items()}
    within = (key for key in styled if spoken and f" {spoken} " in f" {key} ")
    meant = next(within, "") or near_match(spoken, styled)
    if meant:
        face = styled[meant]
        return f"did you mean {face!r}, which is {families[face]}?"
    near = near_match(name, BUNDLED)
    if near:
        return f"did you mean {near!r}?"
    listed = ", ".join(f"{face} ({family})" for face, family in families.items() if not style_of(face))
    return f"write one of {listed}, or the path of a TTF or OTF file"


def family_of(name: str) -> str:
    """The family of a bundled typeface as people call it.

    >>> family_of("text bold italic")
    'Noto Serif'
    """
    return FAMILIES[BUNDLED[name].partition("/")[0]]


def style_of(name: str) -> str:
    """How a bundled typeface differs from the first of its family.

    >>> style_of("text bold italic"), style_of("old style")
    ('bold italic', '')
    """
    return " ".join(word for word in name.split() if word in {"bold", "italic"})
