"""Players: instruments with their transpositions and ranges, and what fingers, tongue and breath can do."""
