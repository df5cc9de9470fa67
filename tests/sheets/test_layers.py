"""Layers of the sheets: a viewer that hides one hides just that, and art and lines can be written apart."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pikepdf
import pypdfium2
import pytest

from bookmaker import make
from bookmaker.ground.geometry import Size
from bookmaker.sheets.layers import Layers
from bookmaker.workshop import Wishes
from bookmaker.writers.pdf import PdfFile

SHELF = """\
shelf: Layers
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um, film: 50 um, grain: long}
books:
  - title: Volume One
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: 24}
    cover: {kind: wrap, stock: cover, turn_in: 4 mm}
    inside: {kind: ruled, ink: "#ff0000"}
    design: {colour: "#223344"}
"""

LAYERS = ["art", "cuts", "folds", "notes"]
DPI = 150


def made(folder: Path, layers: Layers = Layers.ALL) -> Path:
    path = folder / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    make(path, folder / str(layers), wishes=Wishes(layers=layers))
    return folder / str(layers)


def with_hidden(file: Path, hidden: list[str]) -> bytes:
    """The file after a viewer has hidden layers and saved that."""
    with pikepdf.open(file) as pdf:
        layers = pdf.Root.OCProperties
        layers.D.ON = pikepdf.Array(group for group in layers.OCGs if str(group.Name) not in hidden)
        layers.D.OFF = pikepdf.Array(group for group in layers.OCGs if str(group.Name) in hidden)
        out = io.BytesIO()
        pdf.save(out)
    return out.getvalue()


def ink(data: bytes) -> np.ndarray:
    """What PDFium shows of the first page."""
    shown: np.ndarray = pypdfium2.PdfDocument(data)[0].render(scale=DPI / 72).to_numpy().astype(int)
    return shown


@pytest.mark.parametrize("name", ["page.pdf", "cover.pdf"])
def test_viewers_list_four_layers_all_shown(tmp_path: Path, name: str) -> None:
    with pikepdf.open(made(tmp_path) / name) as pdf:
        usual = pdf.Root.OCProperties.D
        for listed in (pdf.Root.OCProperties.OCGs, usual.ON, usual.Order):
            assert [str(group.Name) for group in listed] == LAYERS
        assert all(group.Type == "/OCG" for group in pdf.Root.OCProperties.OCGs)
        assert not pdf.check_pdf_syntax()


@pytest.mark.parametrize("name", ["page.pdf", "cover.pdf"])
def test_hiding_a_layer_hides_that_and_nothing_else(tmp_path: Path, name: str) -> None:
    """Every mark belongs to just one layer: what all layers add to the white sheet is the whole."""
    file = made(tmp_path) / name
    white = ink(with_hidden(file, LAYERS))
    assert (white == 255).all()
    alone = {title: ink(with_hidden(file, [other for other in LAYERS if other != title])) for title in LAYERS}
    for title, shown in alone.items():
        assert (shown != white).any(), title
    rest = ink(with_hidden(file, ["art"]))
    without_art = np.minimum.reduce([alone[title] for title in LAYERS if title != "art"])
    assert np.mean(np.abs(rest - without_art) > 100) < 1e-5  # edges that lie on one another blend
    assert (alone["art"] != rest).any()


@pytest.mark.parametrize("name", ["page.pdf", "cover.pdf"])
def test_parts_are_the_whole_with_the_other_layers_hidden(tmp_path: Path, name: str) -> None:
    whole = made(tmp_path) / name
    art, lines = made(tmp_path, Layers.ART) / name, made(tmp_path, Layers.LINES) / name
    assert (ink(art.read_bytes()) == ink(with_hidden(whole, LAYERS[1:]))).all()
    assert (ink(lines.read_bytes()) == ink(with_hidden(whole, LAYERS[:1]))).all()
    for file, titles in ((art, LAYERS[:1]), (lines, LAYERS[1:])):
        with pikepdf.open(file) as pdf:
            assert [str(group.Name) for group in pdf.Root.OCProperties.OCGs] == titles


def test_a_file_without_layers_names_none(tmp_path: Path) -> None:
    with PdfFile(tmp_path / "plain.pdf", title="Plain") as pdf, pdf.page(Size(50, 50)):
        pass
    with pikepdf.open(tmp_path / "plain.pdf") as opened:
        assert "/OCProperties" not in opened.Root
        assert "/Properties" not in opened.pages[0].Resources
