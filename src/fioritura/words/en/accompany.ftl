no-bar-range = “{ $given }” is not a range of bars: write the first and the last one, as in 5-8.
bars-not-there = There are no bars { $first } to { $last }: the tune has { $low } to { $high }.
too-few-choruses = { $choruses } choruses with a count-in of { $bars } bars can’t be played: give at least 1 and 0.
too-many-bars = { $bars } bars are too many; { $limit } is the limit: take fewer choruses.
no-full-bar = “{ $title }” has no full bar: a band needs at least one.
feel-not-in-metre = { $feel } is not played in { $metre }: choose { LIST($fitting, "or") }.
