"""How the parts of a book are made: one module for each kind of block and cover."""
