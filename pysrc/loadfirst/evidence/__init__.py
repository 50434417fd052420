"""Which cause explains the readings, how large it is, and which further check would tell."""
