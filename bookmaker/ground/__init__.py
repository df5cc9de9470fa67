"""What everything stands on: shapes, drawing, units, files, problems; knows nothing of paper."""
