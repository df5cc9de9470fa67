"""What was printed, remembered from one run to the next, and compared with what would be printed now."""
