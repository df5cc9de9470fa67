"""bookmaker: from a list of invented books to print-ready parts for a miniature library."""
