"""What the server asks of the worker, and what the worker says: values that go from one process to the other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

__all__ = [
    "JSON",
    "Accept",
    "Answer",
    "Asked",
    "Change",
    "Changed",
    "FirstShelf",
    "Job",
    "Look",
    "Looks",
    "Make",
    "Manual",
    "Open",
    "Overtaken",
    "Painted",
    "Propose",
    "ReadTitles",
    "Sheet",
    "Tell",
    "Told",
    "Undo",
    "Watch",
]

JSON = "application/json"


@dataclass(frozen=True, slots=True)
class Look:
    """Look at the files anew; a later one overtakes it."""


@dataclass(frozen=True, slots=True)
class Tell:
    """Everything there is to know of a thing, by its id."""

    thing: str


@dataclass(frozen=True, slots=True)
class Open:
    """What is seen where a book is opened, from 0."""

    thing: str
    opening: int


@dataclass(frozen=True, slots=True)
class Change:
    """A change as the page sent it."""

    wanted: bytes


@dataclass(frozen=True, slots=True)
class Looks:
    """One thing as it would look after each of some changes, as the page sent them."""

    wanted: bytes


@dataclass(frozen=True, slots=True)
class Changed:
    """A file that was changed: its bytes now with their digest, and what it held before."""

    path: Path
    digest: str
    before: bytes
    after: bytes


@dataclass(frozen=True, slots=True)
class Undo:
    """Files given back what they held before a change."""

    changed: tuple[Changed, ...]


@dataclass(frozen=True, slots=True)
class Make:
    """The sheets written into the usual folder."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page of a file that was made, from 0, as a picture."""

    file: str
    page: int


@dataclass(frozen=True, slots=True)
class FirstShelf:
    """A first shelf written, as the form of the page has it."""

    wanted: bytes


@dataclass(frozen=True, slots=True)
class ReadTitles:
    """Titles out of a table or a spreadsheet that was sent."""

    data: bytes


@dataclass(frozen=True, slots=True)
class Propose:
    """A change of the whole shelf, as the page asked for it, to be seen before it is written."""

    wanted: bytes


@dataclass(frozen=True, slots=True)
class Accept:
    """The proposal of a key written into the files, unless they were changed since."""

    key: str


@dataclass(frozen=True, slots=True)
class Manual:
    """A file of the manual as a page."""

    name: str


Job = Look | Tell | Open | Change | Looks | Undo | Make | Sheet | FirstShelf | ReadTitles | Propose | Accept | Manual


@dataclass(frozen=True, slots=True)
class Asked:
    """A job with the number that its answer will have."""

    number: int
    job: Job


@dataclass(frozen=True, slots=True)
class Answer:
    """What a job came to: a body of a media type, or why not, and the files it changed."""

    number: int
    body: bytes
    kind: str = JSON
    refused: bool = False
    changed: tuple[Changed, ...] = ()


@dataclass(frozen=True, slots=True)
class Told:
    """News of a kind for all who look at the page."""

    event: str
    body: bytes


@dataclass(frozen=True, slots=True)
class Painted:
    """Pictures by their names; those of the shelf are kept as long as it shows them."""

    pictures: Mapping[str, bytes]


@dataclass(frozen=True, slots=True)
class Watch:
    """The files and folders that what is shown hangs on."""

    paths: frozenset[Path]


class Overtaken(Exception):  # noqa: N818 - it is no error
    """What is being done has become needless: something changed meanwhile."""
