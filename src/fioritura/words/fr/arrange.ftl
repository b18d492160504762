why-by-hand = { $why } Au moins une note à la main.
