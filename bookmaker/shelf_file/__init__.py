"""Text with places: YAML and tables read for their values, defaults, rows and messages."""
