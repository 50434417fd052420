"""What can change at a plant: one catalogue of causes, each a small edit."""
