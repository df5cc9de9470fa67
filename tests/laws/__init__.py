"""Laws that hold for every shelf, over random ones."""
