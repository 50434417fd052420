"""One file, one command: its `main(arguments)` does it, its docstring's first line tells what."""
