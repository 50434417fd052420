"""Entry: checks Python's age, then hands over. Must stay readable for an old Python."""

import os
import sys

LEAST = (3, 11)

if sys.version_info < LEAST:
    found = ".".join(str(part) for part in sys.version_info[:3])
    sys.exit("This needs Python %d.%d or newer, but %s is %s." % (LEAST + (sys.executable, found)))  # noqa: UP031

# Started as a folder, Python puts the folder itself on the path; the package stands one level up.
sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from loadfirst_dev.dispatch import main  # noqa: E402

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
