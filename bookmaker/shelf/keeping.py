"""Looks written into the shelf file: what was left to chance stays from then on, whatever is corrected."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..ground.problems import FieldPath, Place, Problem
from ..shelf_file.edits.edit import Edit, SetValue
from ..shelf_file.edits.files import EditedFile
from ..shelf_file.edits.manner import manner_of
from ..shelf_file.edits.shelf import edit_shelf
from ..shelf_file.fields.keys import dotted_keys
from ..shelf_file.reading import ShelfFile
from ..shelf_file.volumes import is_volume
from ..things.book.entry import BookEntry
from .entries import ShelfSpec
from .plan import ShelfPlan

__all__ = ["edited", "looks_kept"]

LOOK = "look"


def looks_kept(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan, *, unlike: bool = False) -> Iterator[Edit]:
    """The edits that write the look of everything that has none written; `unlike`: first parted from its neighbours.

    Volumes that share an entry get one for all.
    """
    done: set[Place] = set()
    plans = list(plan.plans.values())
    for family in plan.register.families:
        for id, look in family.looks(plans, unlike=unlike).items():
            path: FieldPath = (*plan.register.fields[id], LOOK)
            place = shelf.tree.place_of(path[:-1])
            shared = is_volume(shelf.tree, path)
            if shelf.tree.below(path) is None and not (shared and place in done):
                yield SetValue(path, str(look), of_set=shared)
            done.add(place)


def edited(shelf: ShelfFile[ShelfSpec], edits: Sequence[Edit]) -> Sequence[EditedFile] | Problem:
    """Make edits in the files of a shelf that was read, all of them or none."""
    return edit_shelf(shelf, edits, dotted_keys(BookEntry), manner_of(type(shelf.spec), BookEntry))
