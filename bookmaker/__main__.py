"""``python -m bookmaker`` does what ``bookmaker`` does."""

from .cli import main

main()
