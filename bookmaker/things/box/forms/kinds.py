"""The table of forms: one module a form, one row a form."""

from __future__ import annotations

from .drawer import DrawerBox
from .envelope import Envelope
from .folder import Folder
from .form import BoxEntry
from .hinged import HingedBox
from .lidded import LiddedBox
from .tray import Tray
from .tuck import TuckBox

__all__ = ["KINDS"]

KINDS: tuple[type[BoxEntry], ...] = (Tray, LiddedBox, HingedBox, TuckBox, DrawerBox, Envelope, Folder)
