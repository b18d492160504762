delay-why = { $count ->
    [one] La nota empieza tarde y dura
   *[other] Estas { $count } notas empiezan tarde y duran
} la mitad, para que la llegada en el siguiente tiempo fuerte esté en su sitio.
suspension-why = La melodía baja por grado a una nota del acorde: la nota anterior, ajena al acorde, se mantiene y baja con retraso.
retardation-why = La melodía sube por grado a una nota del acorde: la nota anterior, ajena al acorde, se mantiene y sube con retraso.
