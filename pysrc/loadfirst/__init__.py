"""Loadfirst: what a pump's readings mean, computed from the load it meets.

The layers, left never importing right (a test holds the table):
errors, units, physics, plant, instruments, cases, door.
"""

__version__ = "0.1.0"
