tempo-out-of-reach = A tempo of { $given } quarter notes a minute is out of reach: it goes from { $low } to { $high }.
density-out-of-reach = A density of { $given } is out of reach: it goes from { $low } to { $high }, 1 is usual.
no-such-feel = No feel “{ $given }”: choose { LIST($known, "or") }.
no-such-idiom = No idiom “{ $given }”: choose { LIST($known, "or") }.
