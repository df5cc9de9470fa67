"""The room on paper: walls, desks and floors, and where on them everything stands, lies or hangs."""
