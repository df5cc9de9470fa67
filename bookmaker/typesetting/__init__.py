"""Text set in lines and columns; knows nothing of books."""
