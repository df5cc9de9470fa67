"""Sheets, stocks and printers: formats, weights, calipers, and thickness layer by layer."""
