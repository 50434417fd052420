"""The tool that fetches, builds, serves and tests Loadfirst.

Run it as ``python3 pysrc/loadfirst_dev COMMAND``. It starts with the standard
library alone and makes what else it needs in ignored folders. One file in
`commands` is one command.
"""
