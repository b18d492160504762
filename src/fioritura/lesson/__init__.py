"""Work: what a teacher gives out, from one rendition in all its files to the whole lesson pack."""
