"""Pages of pictures, and pages of PDF files."""
