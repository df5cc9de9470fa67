"""What a cover is made of, and what time did to it."""
