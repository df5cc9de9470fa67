"""Writers: one module a format. They place and draw; they compute no sizes."""
