"""The styles, one module each."""
