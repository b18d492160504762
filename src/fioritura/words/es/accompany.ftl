no-bar-range = «{ $given }» no es un pasaje de compases: escriba el primero y el último, como 5-8.
bars-not-there = No hay compases { $first } a { $last }: la melodía va del { $low } al { $high }.
too-few-choruses = { $choruses } vueltas con { $bars } compases de cuenta no se pueden tocar: al menos 1 y 0.
too-many-bars = { $bars } compases son demasiados; el límite es { $limit }: tome menos vueltas.
no-full-bar = «{ $title }» no tiene ningún compás completo: una banda necesita al menos uno.
feel-not-in-metre = { $feel } no se toca en { $metre }: elija { LIST($fitting, "or") }.
