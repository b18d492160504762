lower-grace-semitone-why = El semitono inferior sube hacia { $note } y la hace hablar.
lower-grace-step-why = El grado inferior está aquí a un tono: levanta { $note } con más suavidad.
upper-grace-step-why = { $coming ->
    [repeated] Una nota repetida se separa de la anterior
    [below] La melodía viene de abajo, así que la nota se toca desde el otro lado
   *[above] La nota se apoya desde arriba
}: el grado superior cae sobre ella { $where }.
upper-grace-semitone-why = La melodía baja aquí un tono: el semitono intermedio llena el paso al bajar.
double-grace-lower-why = Dos grados de la escala suben hacia la nota { $where }.
double-grace-upper-lower-why = Grado superior, semitono inferior: { $note } queda rodeada por ambos lados.
