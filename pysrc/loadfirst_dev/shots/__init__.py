"""Pictures of every view and state of the page, for looking at."""
