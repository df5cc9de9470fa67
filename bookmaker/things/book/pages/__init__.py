"""What the pages of a book show: `part` says what every kind answers, `kinds` is their table."""
