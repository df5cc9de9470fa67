"""Cover designs: `design` says what every style answers, `kinds` is their table."""
