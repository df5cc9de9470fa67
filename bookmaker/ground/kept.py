"""What is kept of work that was done: results under keys that hold everything they depend on.

So nothing ever goes out of date, and nothing has to be forgotten for the sake of truth: what was made of the same
is the same. What was asked for longest ago goes when all that is kept weighs too much.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

__all__ = ["Kept", "digest"]

Value = TypeVar("Value")


def digest(*parts: object) -> str:
    """What stands for some plain values in a key: for numbers, texts, and tuples and frozen values of such.

    >>> digest("fog", 2.2) == digest("fog", 2.2), digest("fog", 2.2) == digest("fog", 2)
    (True, False)
    """
    return hashlib.blake2b(repr(parts).encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()


class Kept(Generic[Value]):
    """Results by their keys, which all together weigh no more than `most`; `weight` tells what one does.

    >>> squares = Kept[int](most=2)
    >>> [squares.get(number, lambda: number * number) for number in (1, 2, 3)], len(squares)
    ([1, 4, 9], 2)
    """

    def __init__(self, most: float, weight: Callable[[Value], float] = lambda _: 1.0) -> None:
        self._most = most
        self._weight = weight
        self._values: dict[Hashable, Value] = {}
        self._weighs = 0.0
        self._lock = Lock()

    def __len__(self) -> int:
        return len(self._values)

    def get(self, key: Hashable, make: Callable[[], Value]) -> Value:
        """The result under a key, made if it is not there; `make` must depend on nothing that the key leaves out."""
        with self._lock:
            if key in self._values:
                # taken out and put back it is the youngest
                value = self._values[key] = self._values.pop(key)
                return value
        value = make()
        self.put(key, value)
        return value

    def put(self, key: Hashable, value: Value) -> None:
        """Keep a result that was made elsewhere; what is too heavy to be kept beside it goes."""
        with self._lock:
            if key not in self._values:
                self._values[key] = value
                self._weighs += self._weight(value)
            while self._weighs > self._most and len(self._values) > 1:
                self._weighs -= self._weight(self._values.pop(next(iter(self._values))))
