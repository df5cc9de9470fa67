"""A shelf for every key there is, found by walking the models: the key holds what nobody would write there."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Annotated, Any, NamedTuple, get_args, get_origin

from PIL import Image
from pydantic import BaseModel
from pydantic.fields import FieldInfo
from reportlab.pdfgen.canvas import Canvas

from bookmaker.shelf.entries import shelf_model
from bookmaker.things.box.forms.kinds import KINDS as FORMS
from bookmaker.things.families import all_families
from tests.kit.models import models_of

__all__ = ["ODD", "Place", "lay_key", "places"]

ODD: tuple[object, ...] = (
    *("", " ", "\u00ad", "\u0301", "\u200d\u202e", "\u2800", "\\", "-", "*", "#", "...", "\U0001f4d6", "א"),
    *("9" * 250, "-" + "9" * 250, "9" * 250 + " mm", "0." + "0" * 250 + "1 mm", "1e300 mm", "x" * 3000, "x " * 1500),
    *(0, -1, 1e300, True, None, [], {}, [""], [[]], {"": ""}, "nan", "inf mm", "0 mm", "1/0", "12 %", "2001-02-30"),
    *("a.md", "/", "..", "a/" * 300, "~", "from a.csv"),
)
"""Signs that show nothing, numbers without measure, values of other kinds, and paths that lead nowhere good."""

ENOUGH: dict[str, Any] = {
    "shelf": "Odd",
    "stocks": {name: {"caliper": "80 um", "grain": "long"} for name in ("page", "card", "cloth", "board")},
    "spaces": {"ledge": {"width": "300 mm", "height": "90 mm", "depth": "90 mm"}},
    "stock": "card",
    "boards": "board",
    "title": "Salt",
    "id": "thing",
    "file": "a.md",
    "folder": "plates",
    "picture": "a.png",
    "text": "Fog.",
    "sheets": 10,
    "caliper": "80 um",
    "width": "20 mm",
    "length": "20 mm",
    "height": "26 mm",
    "depth": "18 mm",
    "thickness": "6 mm",
    **dict.fromkeys(("inner", "outer", "top", "bottom"), "2 mm"),
    **dict.fromkeys(("rising", "falling"), "141.4 mm"),
    "size": {"height": "26 mm", "width": "20 mm"},
    "block": {"kind": "leaves", "stock": "page", "pages": 120},
    "cover": {"kind": "wrap", "stock": "card"},
    "books": ["Salt"],
    "count": 2,
    "pages": 120,
    "country": "Saltland",
    "inside": {"length": "20 mm", "width": "20 mm", "height": "20 mm"},
}
"""What is written for keys that must be there."""

NEEDED = (
    {"StockEntry": ("caliper",), "Invented": ("count",), "RoomSurfaceEntry": ("height",)}
    | dict.fromkeys(("Accordion", "Sections"), ("pages",))
    | {form.__name__: ("inside",) for form in FORMS}
)
"""Keys of which one of several must be there."""

BOOK = ("title", "size", "block", "cover")

KINDS = ("kind", "style", "pattern")
"""Keys that say which of several groups of keys it is."""


class Place(NamedTuple):
    """Where a key stands: a shelf, and the way to the key in it."""

    shelf: dict[str, Any]
    way: tuple[str | int, ...]

    @property
    def name(self) -> str:
        """The way as one word."""
        return ".".join(map(str, self.way))

    def holding(self, value: object) -> str:
        """The shelf file in which the key holds a value; what is JSON is YAML."""
        return json.dumps(_with(self.shelf, self.way, value), ensure_ascii=False)


def places() -> Iterator[Place]:
    """Every key of every group of keys, once."""
    whole = shelf_model(all_families())
    shelf = _least(whole) | {"spaces": ENOUGH["spaces"], "books": [{key: ENOUGH[key] for key in BOOK}]}
    waiting: list[tuple[type[BaseModel], dict[str, Any], tuple[str | int, ...]]] = [(whole, shelf, ())]
    seen: set[type[BaseModel]] = {whole}
    while waiting:
        model, shelf, way = waiting.pop()
        for key, field in _keys(model):
            yield Place(shelf, (*way, key))
            for below in models_of(field):
                if below not in seen:
                    seen.add(below)
                    held, further = _held(field, _least(below))
                    waiting.append((below, _with(shelf, (*way, key), held, beside=True), (*way, key, *further)))


def _keys(model: type[BaseModel]) -> Iterator[tuple[str, FieldInfo]]:
    """The keys of a group as they are written."""
    for name, field in model.model_fields.items():
        yield field.alias or name, field


def _least(model: type[BaseModel]) -> dict[str, Any]:
    """As little as a group of keys must have."""
    kinds = {key: field.default for key, field in _keys(model) if key in KINDS and isinstance(field.default, str)}
    needed = [key for key, field in _keys(model) if field.is_required()]
    return {**kinds, **{key: ENOUGH[key] for key in (*needed, *NEEDED.get(model.__name__, ())) if key in ENOUGH}}


def _held(field: FieldInfo, group: dict[str, Any]) -> tuple[Any, tuple[str | int, ...]]:
    """How a key holds a group of keys, and the way to it: by a name, in a list, or just so."""
    kind = field.annotation
    while get_origin(kind) is Annotated:
        kind = get_args(kind)[0]
    if get_origin(kind) is dict:
        return {"page": group}, ("page",)
    return ([group], (0,)) if get_origin(kind) is tuple else (group, ())


def _with(shelf: dict[str, Any], way: tuple[str | int, ...], value: object, *, beside: bool = False) -> dict[str, Any]:
    """A shelf in which one key holds something else, or beside what it holds."""
    changed = deepcopy(shelf)
    at: Any = changed
    for step in way[:-1]:
        at = at[step]
    at[way[-1]] = _over(at.get(way[-1]), value) if beside else value
    return changed


def _over(group: Any, other: Any) -> Any:
    """What is written last; of groups of one kind, and of lists of them, both."""
    if isinstance(group, dict) and isinstance(other, dict) and group.get("kind") == other.get("kind"):
        return {**group, **other}
    if isinstance(group, list) and isinstance(other, list) and len(group) == len(other) == 1:
        return [_over(group[0], other[0])]
    return other


def lay_key(number: int, folder: Path) -> None:
    """Lay a shelf in which one key is odd, and the files such shelves name: all keys in turn, then all with the next.

    So many numbers as there are keys walk all of them once, and as many times more as there are odd values try each
    with each.
    """
    all_of_them = _places()
    turn, place = divmod(number, len(all_of_them))
    text = all_of_them[place].holding(ODD[(place + turn) % len(ODD)])
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    (folder / "a.md").write_text("# Fog\n\nThe keeper trims the lamp.\n", encoding="utf-8")
    (folder / "plates").mkdir()
    for name in ("a.png", "plates/b.png"):
        Image.radial_gradient("L").resize((60, 90)).save(folder / name)
    canvas = Canvas(str(folder / "a.pdf"), invariant=1)
    canvas.drawString(60, 60, "Fog")
    canvas.save()


@cache
def _places() -> tuple[Place, ...]:
    return tuple(places())
