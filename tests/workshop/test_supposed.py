"""A shelf as it would be: read and drawn from bytes that no file holds; and files are looked at anew."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.files import supposing
from bookmaker.ground.problems import ShelfFileError
from bookmaker.workshop import Workshop
from tests.kit.shelves import ONE_BOOK


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A shelf of one book."""
    path = tmp_path / "shelf.yaml"
    path.write_text(ONE_BOOK, encoding="utf-8")
    return path


def test_what_is_supposed_is_planned_and_nothing_is_written(path: Path) -> None:
    workshop = Workshop()
    before = workshop.check(path)
    with supposing({path: ONE_BOOK.replace("Tide Tables", "Ebb").encode()}):
        plan = workshop.planned(path)
        assert [*plan.plans] == ["ebb"]
        assert workshop.drawn(path, plan, "ebb").faces.keys() == before.drafts["tide-tables"].faces.keys()
    with supposing({path: b"books: ["}), pytest.raises(ShelfFileError):
        workshop.planned(path)
    assert path.read_text(encoding="utf-8") == ONE_BOOK
    assert [*workshop.planned(path).plans] == ["tide-tables"]


def test_what_was_drawn_is_found_by_the_check(path: Path) -> None:
    workshop = Workshop()
    plan = workshop.planned(path)
    draft = workshop.drawn(path, plan, "tide-tables")
    assert workshop.check(path).drafts["tide-tables"] is draft


def test_answers_hang_on_the_files_that_were_looked_at(path: Path) -> None:
    workshop = Workshop()
    workshop.check(path)
    assert {one.path for one in workshop.looked(path)} == {path}
    path.write_text(ONE_BOOK.replace("Tide Tables", "Flood"), encoding="utf-8")
    assert [*workshop.planned(path).plans] == ["flood"]
