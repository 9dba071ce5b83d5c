"""One command a file; each reads its arguments, makes one call of the api and shows the answer."""
