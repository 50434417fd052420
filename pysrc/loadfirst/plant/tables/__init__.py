"""The tables of a plant file, one thing each: `plant.Plant` puts them together."""
