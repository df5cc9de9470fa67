"""The manual, looked up and written as one page: `chapters` reads it, `keys` makes what it says of every key."""
