"""Engraved music, and the pages that hold it."""
