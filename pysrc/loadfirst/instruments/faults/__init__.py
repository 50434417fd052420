"""What may stand between the truth and the reader, one thing to a file, in the order of the way.

Tapping, root valve, leg, absolute, zero and span, damping, noise; then the
scale cuts; then the reader takes the numbers in a unit. Left out, each passes
on what it was given, to the last bit.
"""
