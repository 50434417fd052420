"""Stepping a plant through time."""
