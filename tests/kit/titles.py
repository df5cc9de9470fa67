"""Titles of any letters."""

from __future__ import annotations

from hypothesis import strategies as st

__all__ = ["TITLES"]

LETTERS = st.characters(codec="utf-8", categories=("L", "M", "N", "P", "S"))
TITLES = st.lists(st.text(LETTERS, min_size=1, max_size=20), min_size=1, max_size=6).map(" ".join)
