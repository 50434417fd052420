"""The one door between the page and Python: text in, text out, always an answer."""
