"""What is often mistyped in YAML, found on the line where it stands and told with what to write."""
