"""What the edges of a dummy book show: `strip` says what every kind is given, `kinds` is their table."""
