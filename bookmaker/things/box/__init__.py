"""Boxes, trays, sleeves, envelopes and folders: each folded from a scored net or two, around a room or its contents."""
