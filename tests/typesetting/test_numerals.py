"""Old-style, lining and tabular figures, read off the outlines of the glyphs that a text is set in."""

from __future__ import annotations

from pathlib import Path

import pytest
import uharfbuzz as hb

from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.figures import Figures, lacking_figures, with_figures
from tests.kit.text_pages import inside, lines


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path


YEARS = "In 1849, 1867 and 1930 the lamp was trimmed 4567 times. " * 3


def glyphs(face: str, **features: bool) -> list[int]:
    """What HarfBuzz itself makes of the figures."""
    buffer = hb.Buffer()
    buffer.add_str("0123456789")
    buffer.guess_segment_properties()
    hb.shape(hb.Font(hb.Face(hb.Blob(bundled(face).data))), buffer, features)
    return [info.codepoint for info in buffer.glyph_infos]


@pytest.mark.parametrize(
    ("figures", "features"),
    [
        (Figures.AS_DRAWN, {}),
        (Figures.OLD_STYLE, {"onum": True}),
        (Figures.LINING, {"lnum": True}),
        (Figures.TABULAR, {"tnum": True}),
        (Figures.OLD_STYLE_TABULAR, {"onum": True, "tnum": True}),
    ],
)
@pytest.mark.parametrize("face", ["text", "old style", "caslon"])
def test_figures_are_the_glyphs_of_their_features(face: str, figures: Figures, features: dict[str, bool]) -> None:
    run = with_figures(bundled(face), figures).shape("0123456789")
    assert [glyph.gid for glyph in run.glyphs] == glyphs(face, **features)


def test_a_text_and_its_page_numbers_have_them(folder: Path) -> None:
    plain, old = (inside(folder, YEARS, numbers="yes", **more) for more in ({}, {"figures": "old style"}))
    for page, lowest in ((plain.pages[0], -0.02), (old.pages[0], -0.1)):
        feet = [
            run.typeface.shape(glyph.text).bottom
            for line in lines(page)
            for _, run in line.line.runs
            for glyph in run.glyphs
            if glyph.text in set("34579")
        ]
        assert feet
        assert (max(feet) < lowest) == (lowest == -0.1)
    number = lines(old.pages[0])[-1].line
    assert (number.text, number.runs[0][1].typeface) == ("1", with_figures(bundled("text"), Figures.OLD_STYLE))


def test_what_a_face_lacks_is_told_if_the_text_has_figures(folder: Path) -> None:
    found = inside(folder, YEARS, face="didone", figures="old style tabular")
    assert [str(problem) for problem in found.problems if "figures" in problem.field] == [
        "Libre Bodoni Medium has no old-style figures here and keeps its own; choose a face with old-style figures, "
        "such as text, or leave figures out",
        "Libre Bodoni Medium has no tabular figures here and keeps its own; choose a face with tabular figures, such "
        "as text, or leave figures out",
    ]
    words = inside(folder, "No lamp, no log.", face="didone", figures="old style")
    assert not [problem for problem in words.problems if "figures" in problem.field]


def test_faces_are_judged_by_what_they_draw() -> None:
    # it promises nothing, but all its figures are as high as capitals, and equally wide
    assert not list(lacking_figures(bundled("typewriter"), Figures.LINING_TABULAR))
    assert [problem.field for problem in lacking_figures(bundled("typewriter"), Figures.OLD_STYLE)] == [("figures",)]
