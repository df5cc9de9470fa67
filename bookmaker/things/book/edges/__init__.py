"""What the edges of a solid book show: `strip` says what every kind is given, `kinds` is their table."""
