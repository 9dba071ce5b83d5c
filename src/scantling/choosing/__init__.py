"""Choose: the cheapest sound build, proven. Knows tables, demands and offers, and no engineering."""
