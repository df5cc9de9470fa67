"""What was made last time, given again for as long as it is made of the same.

Results go by names, such as that of a thing and what is done with it, and are kept with all they were made of: values,
which are compared, files, whose digests are, and the units that lengths were told in. So nothing is ever out of
date, and no more is kept than was asked for last time.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass
from typing import Generic, Protocol, TypeVar

from ..demands import Demand, demand, demanded, exhausted
from ..files import Looked, look_again, looking
from ..told import Units, units_told

__all__ = ["AFRESH", "Keeper", "LastTime"]

Value = TypeVar("Value")


class Keeper(Protocol):
    """Who may have kept what is asked for."""

    def value(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:
        """What is made of some values and of nothing else."""

    def reading(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:
        """What is made of some values and of the files that are read for it."""


class _Afresh:
    """Keeps nothing."""

    def value(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:  # noqa: ARG002 (it keeps nothing)
        """Made anew."""
        return make()

    reading = value


AFRESH: Keeper = _Afresh()


@dataclass(frozen=True, slots=True)
class _Made(Generic[Value]):
    of: tuple[object, ...]
    told: Units
    looked: tuple[Looked, ...]
    demands: tuple[Demand, ...]
    value: Value


class LastTime:
    """Keeps what was asked for since the last but one time that it was told to forget.

    >>> kept = LastTime()
    >>> kept.value("sum", (1, 2), lambda: 3), kept.value("sum", (1, 2), lambda: 4), kept.value("sum", (2, 2), lambda: 4)
    (3, 3, 4)
    """

    def __init__(self) -> None:
        self._made: dict[Hashable, _Made[object]] = {}
        self._asked: set[Hashable] = set()
        self._seen: dict[Looked, bool] = {}

    def __len__(self) -> int:
        return len(self._made)

    @property
    def looked(self) -> frozenset[Looked]:
        """Everything on the disk that was looked at for what is kept."""
        return frozenset(looked for made in self._made.values() for looked in made.looked)

    def value(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:
        """What is made of some values and of nothing else."""
        return self._get(name, of, make)

    def reading(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:
        """What is made of some values and of the files that are read for it."""
        return self._get(name, of, make)

    def forget(self) -> None:
        """Let go of everything that was not asked for since this was told last, and look at all files anew."""
        self._made = {name: made for name, made in self._made.items() if name in self._asked}
        self._asked = set()
        self.look_anew()

    def look_anew(self) -> None:
        """Look at all files anew: what was found of them until now is no longer trusted."""
        self._seen = {}

    def _get(self, name: Hashable, of: tuple[object, ...], make: Callable[[], Value]) -> Value:
        self._asked.add(name)
        made = self._made.get(name)
        told = units_told()
        if made is not None and made.of == of and made.told is told and all(map(self._unchanged, made.looked)):
            for one in made.demands:  # what was read last time counts as if it were read now
                demand(*one)
            return made.value  # type: ignore[return-value] # who asks under a name always asks for the same kind
        self._made.pop(name, None)
        with looking() as looked, demanded() as demands:
            value = make()
        if not exhausted():
            self._made[name] = _Made(of, told, tuple(dict.fromkeys(looked)), tuple(demands), value)
        return value

    def _unchanged(self, looked: Looked) -> bool:
        if looked not in self._seen:
            self._seen[looked] = look_again(looked)
        return self._seen[looked]
