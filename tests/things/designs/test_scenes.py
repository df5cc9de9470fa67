"""Group landscapes and ideas: many, each the same each time, running on across spines, leaving the words their room."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from pathlib import Path as FilePath
from random import Random

import pypdfium2
import pytest
from PIL import Image, ImageChops, ImageStat

from bookmaker.ground.art import Group
from bookmaker.ground.drawing import Colour, contrast
from bookmaker.ground.geometry import Rect, Size
from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.book.designs.design import InSet, Words
from bookmaker.things.book.designs.palettes import BONE, PALETTES, Material
from bookmaker.things.book.designs.scenes.manners import MANNERS, in_fashion, manners_for
from bookmaker.things.book.designs.scenes.paperback_ideas import IDEAS, Field
from bookmaker.things.book.designs.scenes.scenes import SCENES as MOTIFS
from bookmaker.things.book.designs.scenes.scenes import choose_plate, inks_of
from bookmaker.things.book.designs.scenes.stage import Stage
from bookmaker.things.book.designs.styles.paperback import Paperback
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.things.book.designs.styles.poster import LOWEST, rise_of
from bookmaker.writers.pdf import PdfFile
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, Stroked, ink_box, record
from tests.kit.styles import dressed

SCENES = [motif.draw for motif in MOTIFS.values()]
TITLES = ("Salt", "Rope", "Bees", "Moths", "Clocks", "Rain", "North", "Small Hours", "Ten Doors", "Weather", "Ice")
DOTS = 50
"""Pixels of a rendered millimetre."""

every_scene = pytest.mark.parametrize("scene", SCENES, ids=lambda scene: scene.__name__)


def pixels(
    flat: Flat, words: Words, folder: FilePath, *, model: type = PictureCover, dots: float = DOTS, **keys: str
) -> Image.Image:
    path = folder / "cover.pdf"
    with PdfFile(path, title="cover") as pdf, pdf.page(Size(*flat.size)) as canvas:
        dressed(model, flat, words, **keys).art.draw(canvas)
    with pypdfium2.PdfDocument(path) as document:
        return document[0].render(scale=dots * 25.4 / 72).to_pil().convert("RGB")


def column(image: Image.Image, flat: Flat, x: float) -> list[tuple[int, ...]]:
    """The lower part of the spine, where the landscape is, dot by dot at an x in mm."""
    high = flat.size.height * DOTS
    return [image.getpixel((int(x * DOTS), y)) for y in range(int(high * 0.55), int(high * 0.97))]  # type: ignore[misc]


@pytest.mark.parametrize("scene", ["balloons", "bridge", "castle", "hills", "oak", "windmill", "works"])
def test_a_drawn_landscape_runs_across_the_spines_of_a_set(scene: str, tmp_path: FilePath) -> None:
    ends: list[list[tuple[int, ...]]] = []
    flat = flat_of(3.6)
    spine = panel(flat, Role.SPINE)
    for volume, begins in (("I", 0.0), ("II", spine.width)):
        words = Words("Annals", "B. Fell", volume, in_set=InSet(0, begins, spine.width * 2))
        image = pixels(
            flat, words, tmp_path, palette="harbour", wear="none", colour="#b59a68", scene=scene, manner="flat"
        )
        ends += [column(image, flat, spine.x + 0.02), column(image, flat, spine.right - 0.02)]
    first_left, first_right, second_left, _ = ends
    assert unlike(first_right, second_left) < 0.2
    assert min(unlike(first_left, second_left), unlike(first_left, first_right)) > 0.3


@pytest.mark.parametrize("scene", ["balloons", "bridge", "castle", "hills", "oak", "windmill", "works"])
def test_books_of_unlike_heights_stand_on_one_landscape(scene: str, tmp_path: FilePath) -> None:
    """Where the spines meet it is as high over the tail on the low as on the high one; in front of the sky, too."""
    low, high = flat_of(3.6, height=21), flat_of(3.6, height=27)
    wide = panel(low, Role.SPINE).width
    first = Words("Annals", "B. Fell", "I", in_set=InSet(0, 0.0, wide * 2, (), 6.0, 0.0, 1.0))
    second = Words("Annals", "B. Fell", "II", in_set=InSet(0, wide, wide * 2, (), 0.0, 6.0, 21 / 27))
    keys = {"palette": "harbour", "wear": "none", "colour": "#b59a68", "scene": scene, "manner": "flat"}
    ends = []
    for flat, words, x in ((low, first, wide - 0.02), (high, second, 0.02)):
        image = pixels(flat, words, tmp_path, **keys)
        at = int((panel(flat, Role.SPINE).x + x) * DOTS)
        ends.append([image.getpixel((at, image.height - 1 - y)) for y in range(int(0.5 * DOTS), int(9.4 * DOTS))])
    assert unlike(*ends) < 0.2  # type: ignore[arg-type]
    assert len(set(ends[0])) > 3


def unlike(one: list[tuple[int, ...]], other: list[tuple[int, ...]]) -> float:
    """The share of dots that differ plainly."""
    apart = [max(abs(a - b) for a, b in zip(x, y, strict=True)) for x, y in zip(one, other, strict=True)]
    return sum(step > 24 for step in apart) / len(apart)


def test_scenes_and_manners_are_many_by_day_and_by_night() -> None:
    day, night = Colour.from_hex("#b59a68"), Colour.from_hex("#1f2c40")
    everything = set()
    for ground in (day, night):
        chosen = [choose_plate("auto", "auto", ground, None, seed) for seed in range(900)]
        assert len({plate.scene for plate in chosen}) >= 28
        assert len({plate.manner for plate in chosen}) >= 8
        everything |= {plate.scene for plate in chosen}
    assert everything == set(MOTIFS)
    assert len(MOTIFS) >= 30
    assert len(MANNERS) >= 10


@pytest.mark.parametrize("year", [1820, 1870, 1905, 1935, 1955, 1975, 2010])
def test_a_book_shows_nothing_of_a_later_age_in_a_manner_of_its_own(year: int) -> None:
    for seed in range(200):
        ground = Colour.from_hex(("#b59a68", "#1f2c40")[seed % 2])
        scene, manner = choose_plate("auto", "auto", ground, year, seed)
        assert MOTIFS[scene].since <= year
        assert manner == "flat" or in_fashion(manner, year)


def test_what_the_maker_names_is_shown() -> None:
    assert choose_plate("train", "woodcut", BONE, 1700, 3) == ("train", "woodcut")


@every_scene
def test_a_scene_inks_its_whole_area_and_leaves_the_upper_sky_plain(scene) -> None:  # type: ignore[no-untyped-def]
    sky = Colour.from_hex("#24483a")
    inks = inks_of(sky, None, "library", Random(3))
    area = Rect(-2, -2, 40, 26)
    art = Group(tuple(scene(Stage(area, 0.0, 22.0, 26.0, 15.0, 5), inks)))
    fills = [mark for mark in record(art).marks if isinstance(mark, Filled)]
    assert Rect.around(fills[0].path.points()) == pytest.approx(area)
    high = [Rect.around(mark.path.points()) for mark in fills[1:]]
    assert all(rect.top <= 22.0 * 0.62 for rect in high)


@pytest.mark.parametrize("manner", MANNERS)
@pytest.mark.parametrize(("part", "ground"), list(enumerate(["#b59a68", "#1f2c40", "#4f6d73"])))
def test_every_manner_leaves_the_upper_sky_plain_and_its_own_colour(manner: str, part: int, ground: str) -> None:
    """Every scene in every manner under one of three skies."""
    sky = Colour.from_hex(ground)
    inks = inks_of(sky, None, "harbour", Random(3))
    stage = Stage(Rect(-2, -2, 40, 26), 0.0, 22.0, 26.0, 15.0, 5)
    for motif in [*MOTIFS.values()][part::3]:
        marks = tuple(motif.draw(stage, inks))
        first, *rest = record(Group(tuple(MANNERS[manner].draw(stage, marks, inks)))).marks  # type: ignore[index]
        assert isinstance(first, Filled)
        assert first.colour == sky
        for mark in rest:
            lowest = min([Rect.around(clip.points()).top for clip in mark.clips] or [99.0])
            assert min(Rect.around(mark.path.points()).top, lowest) <= 22.0 * 0.64  # type: ignore[union-attr]


def test_manners_differ_at_a_glance(tmp_path: FilePath) -> None:
    """One scene in every manner for a pale sky: each pair differs by at least 1 % of black over the whole cover."""
    keys = {"scene": "harbour", "colour": "#b59a68", "front_title": "no", "spine_title": "none", "wear": "none"}
    seen = [
        pixels(flat_of(), Words("Salt"), tmp_path, dots=4.0, manner=name, **keys)
        for name in manners_for(Colour.from_hex("#b59a68"), None)
    ]
    for one, other in combinations(seen, 2):
        assert sum(ImageStat.Stat(ImageChops.difference(one, other)).mean) / 3 > 0.01 * 255


def test_a_scene_runs_round_the_spine_without_a_step(tmp_path: FilePath) -> None:
    """Just before and just behind a fold the same inks stand at the same height, whatever light has done to books."""
    flat = flat_of(4.0)
    spine = panel(flat, Role.SPINE)
    for title in TITLES:
        image = pixels(flat, Words(title), tmp_path, wear="none", spine_title="none", scene="hills", manner="flat")
        for x in (spine.x, spine.right):
            before, behind = (column(image, flat, x + away) for away in (-0.03, 0.03))
            assert unlike(before, behind) < 0.08


@every_scene
def test_what_stands_on_a_stage_does_not_depend_on_how_much_of_it_is_drawn(scene) -> None:  # type: ignore[no-untyped-def]
    """So a spine, drawn alone, shows the same trees as the cover it is part of."""
    inks = inks_of(Colour.from_hex("#24483a"), None, "library", Random(3))
    seen = []
    for area in (Rect(-2, -2, 40, 26), Rect(14, -2, 6, 26)):
        art = Group(tuple(scene(Stage(area, 0.0, 22.0, 26.0, 15.0, 5), inks)))
        seen.append({
            tuple(round(value, 2) for value in command[1:])
            for mark in record(art).marks
            for command in mark.path.commands  # type: ignore[union-attr]
            if command[0] == "C" and all(15 < float(x) < 19 for x in command[1::2])
        })  # fmt: skip
    assert seen[1] <= seen[0]


@pytest.mark.parametrize("palette", PALETTES)
def test_the_light_of_a_scene_is_seen_on_its_sky(palette: str) -> None:
    for ground in PALETTES[palette].grounds[Material.CLOTH]:  # type: ignore[index]
        inks = inks_of(ground, None, palette, Random(1))  # type: ignore[arg-type]
        assert contrast(inks.light, inks.near) >= 2
        assert inks.sky == ground


@pytest.mark.parametrize("model", [PictureCover, Paperback])
def test_books_of_one_style_and_colour_look_unlike_at_a_glance(model: type, tmp_path: FilePath) -> None:
    """Without a word on them, and seen as small as two dots a mm: hardly a pair differs by less than 3 %."""
    seen = [
        pixels(flat_of(), Words(title), tmp_path, model=model, dots=2.0, colour="#34507f", front_title="no",
               spine_title="none", wear="none")
        for title in TITLES
    ]  # fmt: skip
    pairs = [ImageStat.Stat(ImageChops.difference(one, other)).mean for one, other in combinations(seen, 2)]
    alike = [pair for pair in pairs if sum(pair) / 3 < 0.03 * 255]
    assert len(alike) <= 2


@pytest.mark.parametrize("idea", IDEAS, ids=lambda idea: idea.__name__)
def test_an_idea_leaves_the_words_of_a_spine_their_room(idea) -> None:  # type: ignore[no-untyped-def]
    spine = Rect(15, 0, 4, 22)
    field = Field(Rect(-2, -2, 38, 26), spine, 7.0, Rect(19, 0, 15, 22), spine, 11)
    inks = [Colour.from_hex("#b23a2e"), BONE, Colour.from_hex("#46734a"), Colour.from_hex("#26354a")]
    for seed in range(8):
        for mark in record(Group(tuple(idea(replace(field, seed=seed), inks)))).marks:
            assert isinstance(mark, (Filled, Stroked))
            assert Rect.around(mark.path.points()).top <= 7.0 + 0.25


def test_round_a_narrow_spine_a_landscape_lies_lower_and_the_words_above_it_are_larger() -> None:
    """The words keep clear of it, and grow with the sky they have; a set shares one height."""
    spines = {width: Rect(0, 0, width, 20) for width in (1.5, 3.0, 4.0, 5.0)}
    rises = [rise_of(spine, Words("Fog")) for spine in spines.values()]
    assert rises == sorted(rises)
    assert (rises[0], rises[-1]) == (LOWEST, 1.0)
    assert rise_of(spines[1.5], Words("Fog", in_set=InSet(0.0, 0.0, 9.0))) == 1.0


@pytest.mark.parametrize("look", range(1, 9))
def test_words_along_a_narrow_spine_stay_above_the_smoke_of_works(look: int) -> None:
    flat = flat_of(2.0, 14.0, 20.0)
    dress = dressed(PictureCover, flat, Words("The Glass Lighthouse", "Ida Marrow", look=look), scene="works")
    spine = panel(flat, Role.SPINE)
    boxes = [ink_box(text) for text in record(dress.art).texts]
    lowest = min(box.y for box in boxes if spine.contains(box))
    stage = Stage(spine, spine.y, spine.height * LOWEST, spine.x + 40, spine.x, look)
    inks = inks_of(Colour.from_hex("#7a4a22"), None, "library", Random(look))
    tops = [mark.bounds.top for mark in MOTIFS["works"].draw(stage, inks) if mark.path.commands]
    assert lowest > max(top for top in tops if top < spine.top)  # but for the sky itself
