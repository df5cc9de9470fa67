"""Covers: `cover` says what every kind answers, `kinds` is their table; a jacket goes around any of them."""
