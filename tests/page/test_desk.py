"""The worker without a server: what it tells, what it drops, what it refuses."""

from __future__ import annotations

import json
import traceback
from pathlib import Path
from typing import Any

import pytest

from bookmaker.ground.problems import BookmakerError
from bookmaker.page.jobs import Asked, Change, Look, Manual, Overtaken, Painted, Tell, Told, Undo, Watch
from bookmaker.page.work.desk import Desk
from bookmaker.page.work.worker import answer_to
from bookmaker.shelf.plan import ShelfPlan
from bookmaker.workshop import Workshop
from tests.kit.shelves import ONE_BOOK


class Heard:
    """What a desk has said."""

    def __init__(self) -> None:
        self.said: list[object] = []

    def __call__(self, said: object, /) -> None:
        self.said.append(said)

    @property
    def states(self) -> list[dict[str, Any]]:
        """The states of the shelf that were told."""
        return [json.loads(one.body) for one in self.said if isinstance(one, Told) and one.event == "state"]

    @property
    def pictures(self) -> set[str]:
        """The names of all pictures that were sent."""
        return {name for one in self.said if isinstance(one, Painted) for name in one.pictures}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A shelf of one book."""
    path = tmp_path / "shelf.yaml"
    path.write_text(ONE_BOOK, encoding="utf-8")
    return path


def test_every_picture_that_is_named_was_sent(path: Path) -> None:
    heard = Heard()
    Desk(path, heard, lambda: False).do(Asked(1, Look()))
    *_, last = heard.states
    shown = {one["picture"] for space in last["spaces"] for one in space["shown"]}
    assert last["complete"]
    assert shown and shown <= heard.pictures
    assert any(isinstance(one, Watch) and path in one.paths for one in heard.said)


def test_a_look_that_is_overtaken_tells_no_more(path: Path) -> None:
    heard = Heard()
    with pytest.raises(Overtaken):
        Desk(path, heard, lambda: True).do(Asked(1, Look()))
    assert not any(state["complete"] for state in heard.states)


def test_a_broken_file_is_told_beside_the_last_good_picture(path: Path) -> None:
    heard = Heard()
    desk = Desk(path, heard, lambda: False)
    desk.do(Asked(1, Look()))
    path.write_text(ONE_BOOK + "\nnonsense: yes\n", encoding="utf-8")
    desk.do(Asked(2, Look()))
    *_, good, broken = heard.states
    assert broken["broken"] and broken["spaces"] == good["spaces"]
    assert "nonsense" in broken["problems"][0]["message"] and broken["problems"][0]["place"].startswith("shelf.yaml:")


def test_a_file_that_is_gone_for_a_moment_keeps_the_picture(path: Path) -> None:
    """Some editors take a file away when they save it; only where there never was one a first shelf is offered."""
    heard = Heard()
    desk = Desk(path, heard, lambda: False)
    path.unlink()
    desk.do(Asked(1, Look()))
    assert heard.states[-1]["missing"]
    path.write_text(ONE_BOOK, encoding="utf-8")
    desk.do(Asked(2, Look()))
    good = heard.states[-1]
    path.unlink()
    desk.do(Asked(3, Look()))
    gone = heard.states[-1]
    assert gone["broken"] and not gone["missing"] and gone["spaces"] == good["spaces"] != []


def test_a_change_is_checked_before_it_is_written(path: Path) -> None:
    desk = Desk(path, Heard(), lambda: False)
    desk.do(Asked(1, Look()))
    for wanted in (
        {"thing": "tide-tables", "set": {"block.pages": "7"}},
        {"thing": "tide-tables", "set": {"design.style": "velvet"}},
        {"thing": "tide-tables", "set": {"title": "New"}, "was": {"title": "Another"}},
        {"thing": "nobody", "remove": True},
        {"thing": "tide-tables", "path": "/etc/passwd"},
        [],
    ):
        with pytest.raises(BookmakerError):
            desk.do(Asked(2, Change(json.dumps(wanted).encode())))
        assert path.read_text(encoding="utf-8") == ONE_BOOK, wanted


def test_a_change_and_its_undoing(path: Path) -> None:
    desk = Desk(path, Heard(), lambda: False)
    desk.do(Asked(1, Look()))
    done = desk.do(Asked(2, Change(b'{"thing": "tide-tables", "set": {"title": "Ebb"}}')))
    assert json.loads(done.body) == {"thing": "ebb"}
    assert path.read_text(encoding="utf-8") == ONE_BOOK.replace("Tide Tables", "Ebb")
    undone = desk.do(Asked(3, Undo(done.changed)))
    assert path.read_text(encoding="utf-8") == ONE_BOOK
    desk.do(Asked(4, Undo(undone.changed)))
    path.write_text(ONE_BOOK.replace("Tide Tables", "Flood"), encoding="utf-8")
    with pytest.raises(BookmakerError, match="changed since"):
        desk.do(Asked(5, Undo(undone.changed)))


def test_what_others_changed_meanwhile_stays_when_a_change_is_taken_back(path: Path) -> None:
    desk = Desk(path, Heard(), lambda: False)
    desk.do(Asked(1, Look()))
    done = desk.do(Asked(2, Change(b'{"thing": "tide-tables", "set": {"title": "Ebb"}}')))
    path.write_text("# mine\n" + path.read_text(encoding="utf-8") + "# and mine\n", encoding="utf-8")
    undone = desk.do(Asked(3, Undo(done.changed)))
    assert path.read_text(encoding="utf-8") == f"# mine\n{ONE_BOOK}# and mine\n"
    redone = desk.do(Asked(4, Undo(undone.changed)))
    assert path.read_text(encoding="utf-8") == "# mine\n" + ONE_BOOK.replace("Tide Tables", "Ebb") + "# and mine\n"
    other = path.read_text(encoding="utf-8").replace("title: Ebb", "title: Neap")
    path.write_text(other, encoding="utf-8")
    with pytest.raises(BookmakerError, match="changed since"):
        desk.do(Asked(5, Undo(redone.changed)))
    assert path.read_text(encoding="utf-8") == other


def test_all_is_told_of_a_thing(path: Path) -> None:
    desk = Desk(path, Heard(), lambda: False)
    desk.do(Asked(1, Look()))
    told = json.loads(desk.do(Asked(2, Tell("tide-tables"))).body)
    assert {"front", "spine", "back"} <= told["faces"].keys()
    assert told["lines"]["text"].lstrip().startswith("- ") and told["openings"] > 2
    assert told["layers"][-1]["computed"] == pytest.approx(sum(one["total"] for one in told["layers"][-1]["layers"]))
    assert [making["heading"] for making in told["steps"]["makings"]]
    keys = {field["key"] for group in told["form"] for field in group["fields"]}
    assert {"title", "author", "block.pages", "design.style", "design.face"} <= keys
    parts = told["inside"]["parts"]
    assert len(parts) == 1 and parts[0]["kind"] in told["inside"]["kinds"]


def test_a_colour_that_is_written_stays_in_the_form(path: Path) -> None:
    path.write_text(ONE_BOOK + '    design: {style: cloth, colour: "#2f4f46"}\n', encoding="utf-8")
    desk = Desk(path, Heard(), lambda: False)
    desk.do(Asked(1, Look()))
    told = json.loads(desk.do(Asked(2, Tell("tide-tables"))).body)
    written = {field["key"]: field["written"] for group in told["form"] for field in group["fields"]}
    assert written["design.colour"] == "#2f4f46"
    assert {"design.palette", "design.second_colour", "design.ornament"} <= written.keys()


def test_every_field_and_message_leads_into_the_manual(path: Path) -> None:
    heard = Heard()
    desk = Desk(path, heard, lambda: False)
    desk.do(Asked(1, Look()))
    page = desk.do(Asked(2, Manual("manual"))).body.decode()
    told = json.loads(desk.do(Asked(3, Tell("tide-tables"))).body)
    fields = [field for group in (*told["form"], *told["inside"]["parts"]) for field in group["fields"]]
    assert len(fields) > 40
    assert [field["key"] for field in fields if f'id="{field["manual"]}"' not in page] == []
    path.write_text(ONE_BOOK.replace("space: ledge", "space: lege").replace("21 mm", "21"), encoding="utf-8")
    desk.do(Asked(4, Look()))
    problems = heard.states[-1]["problems"]
    assert problems and [one for one in problems if f'id="{one["manual"]}"' not in page] == []


def test_a_fault_of_our_own_ends_nothing_and_shows_no_stack(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What nobody foresaw is told in words, and the next job is done."""

    def planned(workshop: Workshop, shelf: Path) -> ShelfPlan:
        raise ZeroDivisionError(f"the inside of the house: {workshop} {shelf}")

    heard = Heard()
    desk = Desk(path, heard, lambda: False)
    monkeypatch.setattr(traceback, "print_exc", lambda: None)
    with monkeypatch.context() as fault:
        fault.setattr(Workshop, "planned", planned)
        said = answer_to(Asked(1, Look()), desk)
    assert said and said.refused and b"does not know" in said.body
    assert heard.states[-1]["broken"] and "inside of the house" not in str(heard.said)
    again = answer_to(Asked(2, Look()), desk)
    assert again and not again.refused and heard.states[-1]["complete"]
