tempo-out-of-reach = Un tempo de { $given } noires à la minute est hors de portée : il va de { $low } à { $high }.
density-out-of-reach = Une densité de { $given } est hors de portée : elle va de { $low } à { $high } ; 1 est l’usage.
no-such-feel = Pas de feeling « { $given } » : choisissez { LIST($known, "or") }.
no-such-idiom = Pas de style « { $given } » : choisissez { LIST($known, "or") }.
