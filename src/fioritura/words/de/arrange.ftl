why-by-hand = { $why } Mindestens ein Ton von Hand.
