"""What a cutting machine does to a sheet, one module a format."""
