"""Measurements of the built site and of the solver, each beside its aim.

`loop` and `compare` run natively and in the browser's Python alike; the rest
drives Chromium and needs the whole environment.
"""
