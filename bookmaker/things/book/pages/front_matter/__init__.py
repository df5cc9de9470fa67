"""What stands before and after the text."""
