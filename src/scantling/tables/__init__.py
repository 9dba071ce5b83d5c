"""Standards as text: one CSV a table in ``data/``, their origin in ``SOURCES.toml``, a look-up module a subject."""
