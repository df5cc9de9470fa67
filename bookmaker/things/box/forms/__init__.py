"""The forms of boxes, one module each."""
