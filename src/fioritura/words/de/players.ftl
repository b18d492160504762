tempo-out-of-reach = Ein Tempo von { $given } Vierteln in der Minute geht nicht: möglich sind { $low } bis { $high }.
density-out-of-reach = Eine Dichte von { $given } geht nicht: möglich sind { $low } bis { $high }, üblich ist 1.
no-such-feel = Ein Feeling „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-idiom = Einen Stil „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
