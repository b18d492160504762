why-by-hand = { $why } Al menos una nota a mano.
