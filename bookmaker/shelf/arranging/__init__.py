"""Where each thing stands: which order pleases most, and on which space."""
