why-by-hand = { $why } One pitch or more by hand.
