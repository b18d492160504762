tempo-out-of-reach = Un tempo de { $given } negras por minuto está fuera de alcance: va de { $low } a { $high }.
density-out-of-reach = Una densidad de { $given } está fuera de alcance: va de { $low } a { $high }; lo usual es 1.
no-such-feel = No hay ningún ritmo «{ $given }»: elija { LIST($known, "or") }.
no-such-idiom = No hay ningún estilo «{ $given }»: elija { LIST($known, "or") }.
