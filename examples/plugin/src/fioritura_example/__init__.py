"""An example of a plugin: a technique and a player."""
