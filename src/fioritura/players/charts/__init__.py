"""Fingering charts as data: one file for each instrument family."""
