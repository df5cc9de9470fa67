"""Scenes for picture covers, in a few flat inks."""
