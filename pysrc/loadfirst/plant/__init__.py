"""The rig as data, the network built from it, its load and its answer."""
