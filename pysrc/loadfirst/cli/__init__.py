"""The command line for authors and engineers: words and units for a terminal."""
