"""The page for everyone: axe finds nothing serious in any state, width or scheme; no small print; all by keyboard."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Page, expect

from bookmaker.page.single_file import write_page
from tests.kit.shelves import ONE_BOOK
from tests.kit.shown import Running, running

AXE = (Path(__file__).parent / "axe" / "axe.min.js").read_text(encoding="utf-8")
DEMO = Path(__file__).parents[2] / "demo"
TABS = ["In the hand", "Change", "Pages", "Cover and parts", "Thickness", "Sheets", "Steps", "In the file"]

SMALL = """() => [...document.querySelectorAll('body *')]
  .filter(one => one.checkVisibility() && [...one.childNodes].some(node => node.nodeType === 3 && node.data.trim()))
  .filter(one => parseFloat(getComputedStyle(one).fontSize) < 12)
  .map(one => one.outerHTML.slice(0, 100))"""

WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """The demo, shown."""
    folder = shutil.copytree(DEMO, tmp_path_factory.mktemp("everyone") / "demo")
    with running(folder / "shelf.yaml") as found:
        yield found


def serious(page: Page) -> list[str]:
    """What axe finds that is serious or worse."""
    page.evaluate(AXE)
    found = page.evaluate("() => axe.run(document, {resultTypes: ['violations']})")
    return [
        f"{one['id']}: {node['html'][:160]} {node.get('failureSummary', '')[:200]}"
        for one in found["violations"]
        if one["impact"] in ("serious", "critical")
        for node in one["nodes"][:2]
    ]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_nothing_serious_is_found(page: Page, shown: Running, width: int, scheme: Literal["light", "dark"]) -> None:
    page.set_viewport_size({"width": width, "height": 760})
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    assert serious(page) == []
    assert page.evaluate(WIDER) <= 0
    page.get_by_role("button", name="1907").click()
    page.wait_for_selector(".stage")
    for tab in TABS if width == 360 else TABS[1:2]:
        page.get_by_role("tab", name=tab).click()
        expect(page.locator("#leaf > *").first).to_be_attached()
        assert serious(page) == [], tab
        assert page.evaluate(SMALL) == [], tab
        assert page.evaluate(WIDER) <= 0, tab


@pytest.mark.parametrize(("width", "scheme"), [(360, "light"), (1280, "dark")])
def test_what_is_folded_away_is_for_everyone(
    page: Page, shown: Running, width: int, scheme: Literal["light", "dark"]
) -> None:
    page.set_viewport_size({"width": width, "height": 760})
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    page.locator(".menu > summary").click()
    assert serious(page) == []
    page.keyboard.press("Escape")
    expect(page.locator(".folded-out")).to_be_hidden()
    for name in ("arrange the books", "fill the room left", "write out invented", "keep the looks"):
        more(page, name)
        page.get_by_role("button", name="show how it would be").click()
        expect(page.locator(".seen > *").last).not_to_have_text("It is being worked out …", timeout=60_000)
        assert serious(page) == [], name
        assert page.evaluate(SMALL) == [], name
        assert page.evaluate(WIDER) <= 0, name
        page.keyboard.press("Escape")
        expect(page.get_by_role("dialog")).to_have_count(0)


def test_every_button_is_in_sight_at_360_pixels(page: Page, shown: Running) -> None:
    page.set_viewport_size({"width": 360, "height": 760})
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    boxes = [one.bounding_box() for one in page.locator(".tools button:visible, .tools summary").all()]
    assert len(boxes) == 7
    assert all(box and box["x"] >= 0 and box["x"] + box["width"] <= 360 for box in boxes)
    assert page.locator(".tools").evaluate("one => one.scrollWidth <= one.clientWidth")


def test_the_manual_is_one_press_from_a_field(page: Page, shown: Running) -> None:
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    page.get_by_role("button", name="1907").click()
    page.get_by_role("tab", name="Change").click()
    asked: list[str] = []
    page.context.on("request", lambda request: asked.append(request.url))
    with page.context.expect_page() as opened:
        page.get_by_role("link", name="more about design: palette").click()
    manual = opened.value
    row = manual.locator(":target")
    expect(row).to_contain_text("palette")
    expect(row).to_be_in_viewport()
    manual.get_by_label("Search the manual").fill("clearance")
    expect(manual.locator("#none")).to_be_hidden()
    assert manual.locator("section.part.hidden").count() > 20
    assert asked and all(url.startswith((f"http://{shown.host}/", "data:")) for url in asked)
    assert serious(manual) == []


def test_a_first_shelf_is_for_everyone(page: Page, tmp_path: Path) -> None:
    with running(tmp_path / "shelf.yaml") as shown:
        page.set_viewport_size({"width": 360, "height": 760})
        page.goto(shown.address)
        page.wait_for_selector("form.first")
        assert serious(page) == []
        assert page.evaluate(SMALL) == []
        assert page.evaluate(WIDER) <= 0


def test_all_of_it_by_keyboard(page: Page, shown: Running) -> None:
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    for _ in range(30):
        page.keyboard.press("Tab")
        if page.evaluate("() => document.activeElement.matches('button.thing')"):
            break
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("button", name="Birds of the Gannow")).to_be_focused()
    page.keyboard.press("ArrowDown")
    assert page.evaluate("() => document.activeElement.closest('.space').dataset.space") == "upper shelf"
    page.keyboard.press("Enter")
    page.wait_for_selector(".stage")
    page.get_by_role("tab", name="In the hand").focus()
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("tab", name="Change")).to_be_focused()
    expect(page.get_by_role("tab", name="Change")).to_have_attribute("aria-selected", "true")


def more(page: Page, name: str) -> None:
    """Press what is folded away."""
    page.locator(".menu > summary").click()
    page.get_by_role("button", name=name).click()


def test_inches_and_true_size(page: Page, shown: Running) -> None:
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    more(page, "lengths in inches")
    expect(page.locator(".told").first).to_contain_text("in left of 2.638 in")
    more(page, "how large is this screen")
    page.get_by_label("width of the rectangle").fill("5")
    card = page.locator(".card").bounding_box()
    assert card and abs(card["width"] - 85.6 * 5) < 1 and abs(card["height"] - 53.98 * 5) < 1
    page.get_by_role("button", name="it fits").click()
    page.get_by_role("button", name="true size").click()
    book = page.get_by_role("button", name="1907").bounding_box()
    assert book and book["height"] == pytest.approx(23.8125 * 5, abs=0.5)
    page.get_by_label("how many times true size").fill("100")
    book = page.get_by_role("button", name="1907").bounding_box()
    assert book and book["height"] == pytest.approx(23.8125 * 5 * 8, abs=1)


def test_one_file_shows_the_same_without_a_server(page: Page, tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(ONE_BOOK, encoding="utf-8")
    write_page(tmp_path / "shelf.yaml", tmp_path / "shelf.html", None)
    write_page(tmp_path / "shelf.yaml", tmp_path / "shelf.html", None)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto((tmp_path / "shelf.html").as_uri())
    page.wait_for_selector("html[data-complete=yes]")
    page.get_by_role("button", name="Tide Tables").click()
    page.get_by_role("tab", name="Pages").click()
    page.get_by_role("button", name="leaf on").click()
    expect(page.get_by_text("opening 2 of")).to_be_visible()
    assert page.locator(".spread img").evaluate("one => one.decode().then(() => one.naturalWidth)") > 0
    assert page.get_by_role("tab", name="Change").count() == 0
    assert {url.partition(":")[0] for url in asked} <= {"file", "blob", "data"}
