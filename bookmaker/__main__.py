"""``python -m bookmaker`` does what ``bookmaker`` does."""

from .cli.commands import main

main()
