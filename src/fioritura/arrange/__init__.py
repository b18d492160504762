"""Arranging: find every figure that fits, choose the best set, and lay it over the tune."""
