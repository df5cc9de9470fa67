"""Text blocks: `block` says what every kind answers, `kinds` is their table."""
