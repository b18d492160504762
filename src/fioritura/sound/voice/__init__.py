"""Measured wind voices: a lead that is continuous in pitch, level and colour, made without any recording."""
