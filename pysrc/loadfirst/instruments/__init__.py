"""From the true state to what a dial shows."""
