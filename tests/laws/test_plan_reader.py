"""plan.json stands for itself: its schema describes it whole, and the reader in the manual checks all sheets."""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

import pypdfium2
import pytest
from jsonschema import Draft202012Validator

from bookmaker.writers.plan_schema import plan_schema
from tests.kit.random_shelves import RandomShelf, random_shelf
from tests.kit.shelves import made

MANUAL = Path(__file__).parents[2] / "bookmaker" / "manual" / "python.md"
DPI = 120


class Reader(NamedTuple):
    """What the reader in the manual offers."""

    main: Callable[[Path], list[str]]
    on_page: Callable[[Any, tuple[float, float], str], tuple[float, float]]
    corners: Callable[[Any], list[tuple[float, float]]]


@pytest.fixture(scope="module")
def reader() -> Reader:
    [text] = [t for t in re.findall(r"```python\n(.*?)```", MANUAL.read_text(encoding="utf-8"), re.S) if "main" in t]
    assert text.count("\n") < 150
    names: dict[str, Any] = {"__name__": "read_plan"}
    exec(compile(text, "read_plan.py", "exec"), names)
    return Reader(names["main"], names["on_page"], names["corners"])


def test_every_key_is_described() -> None:
    schema = plan_schema()
    Draft202012Validator.check_schema(schema)
    assert [where for where, one in properties(schema) if not one.get("description")] == []


def properties(schema: dict[str, Any], where: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every key of a schema, however deep."""
    for name, one in (schema.get("properties", {}) | schema.get("$defs", {})).items():
        yield f"{where}.{name}", one
        yield from properties(one, f"{where}.{name}")
    if isinstance(schema.get("items"), dict):
        yield from properties(schema["items"], f"{where}[]")


def test_a_stranger_can_redraw_and_check_every_sheet(shelf: RandomShelf, reader: Reader) -> None:
    """What is drawn lies where the PDF has ink: every ruled page of a book, on both sides."""
    _, plan, out = shelf
    errors = list(Draft202012Validator(plan_schema()).iter_errors(plan))
    assert errors == [], errors[0]
    assert reader.main(out) == []
    assert len(list(out.glob("*.svg"))) == sum(1 + (sheet["reverse_page"] is not None) for sheet in plan["sheets"])
    for sheet in plan["sheets"]:
        document = pypdfium2.PdfDocument(out / sheet["file"])
        for face, page in (("front", sheet["page"]), ("reverse", sheet["reverse_page"])):
            if page is not None:
                image = document[page - 1].render(scale=DPI / 72, grayscale=True).to_pil()
                assert image.size == pytest.approx([side / 25.4 * DPI for side in sheet["size_mm"]], abs=1.5)
                for piece in sheet["pieces"]:
                    for at in marks(piece):
                        x, y = reader.on_page(sheet, at, face)
                        near = (x - 0.4, sheet["size_mm"][1] - y - 0.4, x + 0.4, sheet["size_mm"][1] - y + 0.4)
                        ink = image.crop([round(side / 25.4 * DPI) for side in near]).getextrema()[0]
                        assert (ink < 200) is (face == "front"), (piece["id"], at)
        document.close()


def marks(piece: dict[str, Any]) -> Iterator[tuple[float, float]]:
    """The middle of the cut mark that goes on from the lower left corner of a piece to its left, as the piece lies."""
    xs, ys = zip(*piece["outline_mm"], strict=True)
    beyond = piece["bleed_mm"] + 0.3 + 0.85
    yield (min(xs), min(ys) - beyond) if piece["turned_deg"] else (min(xs) - beyond, min(ys))


def test_the_reader_tells_what_is_wrong(tmp_path: Path, reader: Reader) -> None:
    plan, out = made(random_shelf(0), tmp_path)
    damages = (("overlap", 3.0, "lies on"), ("panel", 400.0, "stands out of"), ("page", 999, "not every page"))
    for what, value, told in damages:
        wrong = copy.deepcopy(plan)
        pieces = next(sheet["pieces"] for sheet in wrong["sheets"] if len(sheet["pieces"]) > 1)
        paged = next(p for s in wrong["sheets"] for p in s["pieces"] if any(panel["page"] for panel in p["panels"]))
        if what == "overlap":
            pieces[0]["outline_mm"] = pieces[1]["outline_mm"]
        elif what == "panel":
            pieces[0]["panels"][0]["rect_mm"][0] = value
        else:
            next(panel for panel in paged["panels"] if panel["page"])["page"] = value
        (out / "plan.json").write_text(json.dumps(wrong), encoding="utf-8")
        assert any(told in fault for fault in reader.main(out)), what
