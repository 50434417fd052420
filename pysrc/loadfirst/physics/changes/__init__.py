"""What can become of a centrifugal pump: each module turns one pump curve into another.

All work on the maker's points at the test's speed; `physics.machine` then moves
them to the speed of the motor and to the liquid's density. `apply` does several
at once, in the order in which they happen to the liquid.
"""
