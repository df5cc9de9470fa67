"""The text as its author left it, told apart into passages."""
