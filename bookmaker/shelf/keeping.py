"""Looks written into the shelf file: what was left to chance stays from then on, whatever is corrected."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from ..ground.problems import FieldPath, Place, Problem, ShelfFileError
from ..shelf_file.edits.edit import Edit, Remove, SetValue
from ..shelf_file.edits.files import EditedFile, edit_file, edited_data, read_maker_file
from ..shelf_file.edits.manner import manner_of
from ..shelf_file.edits.shelf import edit_shelf
from ..shelf_file.fields.keys import dotted_keys
from ..shelf_file.invented.wall import INVENTED, frozen
from ..shelf_file.reading import ShelfFile
from ..shelf_file.source_text import source_text
from ..shelf_file.volumes import is_volume
from ..shelf_file.yaml_tree import parse_tree
from ..things.book.entry import BookEntry
from .entries import ShelfSpec
from .plan import ShelfPlan

__all__ = ["edited", "freeze", "frozen_text", "looks_kept"]

LOOK = "look"


def looks_kept(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan, *, unlike: bool = False) -> Iterator[Edit]:
    """The edits that write the look of everything that has none written; `unlike`: first parted from its neighbours.

    Volumes that share an entry get one for all.
    """
    done: set[Place] = set()
    places = Counter(shelf.tree.place_of(field) for field in plan.register.fields.values())
    plans = list(plan.plans.values())
    for family in plan.register.families:
        for id, look in family.looks(plans, unlike=unlike).items():
            path: FieldPath = (*plan.register.fields[id], LOOK)
            place = shelf.tree.place_of(path[:-1])
            shared = is_volume(shelf.tree, path)
            if places[place] > 1 and not shared:
                continue  # what is invented has no place of its own: its look hangs on its title, which stays
            if shelf.tree.below(path) is None and not (shared and place in done):
                yield SetValue(path, str(look), of_set=shared)
            done.add(place)


def edited(shelf: ShelfFile[ShelfSpec], edits: Sequence[Edit]) -> Sequence[EditedFile] | Problem:
    """Make edits in the files of a shelf that was read, all of them or none."""
    return edit_shelf(shelf, edits, dotted_keys(BookEntry), manner_of(type(shelf.spec), BookEntry))


def freeze(shelf: ShelfFile[ShelfSpec]) -> int | Problem:
    """Write out the books that a shelf file invents, as rows of books of their own; how many there are.

    Raises:
        ShelfFileError: the file cannot be read.
    """
    edits, count = _written_out(shelf)
    if not edits:
        return 0
    done = edit_file(shelf.path, edits, dotted_keys(BookEntry), manner_of(type(shelf.spec), BookEntry))
    return done if isinstance(done, Problem) else count


def frozen_text(shelf: ShelfFile[ShelfSpec]) -> tuple[bytes, int]:
    """What the file would hold after `freeze`, and how many books would be written out; nothing is written.

    Raises:
        ShelfFileError: the file cannot be read, or not be changed so.
    """
    edits, count = _written_out(shelf)
    file = read_maker_file(shelf.path)
    data = edited_data(file, edits, dotted_keys(BookEntry), manner_of(type(shelf.spec), BookEntry))
    if isinstance(data, Problem):
        raise ShelfFileError((data,))
    return data, count


def _written_out(shelf: ShelfFile[ShelfSpec]) -> tuple[list[Edit], int]:
    edits: list[Edit] = []
    path, count = shelf.path, 0
    for number, items in frozen(parse_tree(source_text(path), path.name), shelf.counts):
        edits += [SetValue(("books", number, "row"), items), Remove(("books", number, INVENTED))]
        count += len(items)
    return edits, count
