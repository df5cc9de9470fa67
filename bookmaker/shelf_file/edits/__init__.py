"""Edits back into the text of shelf files and tables: each the smallest change, all other bytes as they were."""
