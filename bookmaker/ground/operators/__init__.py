"""What pages of PDF files draw with, as it is written in their streams."""
