"""How results look on a terminal: tables, coloured where it is one, plain where not."""
