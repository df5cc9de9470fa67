"""What is made: one folder a family."""
