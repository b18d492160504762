list-comma = { $first }, { $last }
list-and = { $first } y { $last }
list-or = { $first } o { $last }
list-semicolon = { $first }; { $rest }
no-such-language = No hay ningún idioma «{ $given }»: elija { LIST($known, "or") }.

# Advertencias, en un solo lugar para cada hoja y cada pantalla.

care-hearing = Oído: baje el volumen antes de reproducir, sobre todo con auriculares. Una hora tocando fuerte en una sala pequeña pide protección auditiva y una pausa.
    .short = Baje el volumen antes de reproducir, sobre todo con auriculares; súbalo después.
care-pain = Dolor: los adornos son pequeños, rápidos y repetidos. Descanse tras diez minutos con la misma figura, sacuda las manos, suelte la mandíbula y pare cuando duela; un dolor que no cede es asunto del médico.
    .short = Descanse tras diez minutos con la misma figura y pare cuando duela.
care-rights = Derechos: arreglar una melodía protegida y compartir el arreglo requiere permiso. Decide la ley del lugar; pregunte antes de copiarlo o publicarlo.
    .short = El arreglo de una melodía protegida solo se comparte con permiso: decide la ley del lugar.
