"""Two days of a plant compared: what was changed, what followed, what every instrument makes of it."""
