no-bar-range = „{ $given }“ ist kein Taktbereich: ersten und letzten Takt schreiben, wie 5-8.
bars-not-there = Die Takte { $first } bis { $last } gibt es nicht: das Stück hat { $low } bis { $high }.
too-few-choruses = { $choruses } Chorusse mit { $bars } Takten Einzähler gehen nicht: mindestens 1 und 0.
too-many-bars = { $bars } Takte sind zu viele, { $limit } sind möglich: weniger Chorusse nehmen.
no-full-bar = „{ $title }“ hat keinen vollen Takt: eine Band braucht mindestens einen.
feel-not-in-metre = { $feel } spielt man nicht im { $metre }-Takt: möglich ist { LIST($fitting, "or") }.
