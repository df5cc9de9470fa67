"""The case, from its keys to its parts."""
