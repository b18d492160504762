irish-cut = cut
    .label = cut
    .text = Un roce de una nota más aguda antes de la nota, tan breve que apenas tiene altura: separa y acentúa, como en otras músicas la lengua.
    .how = En la flauta y el whistle, levantar un dedo de la mano superior, el tercero para las notas de la mano inferior, el primero para la y si, y volver a ponerlo enseguida; la lengua no interviene.
    .when = En una nota repetida, sobre todo si después baja por grado, y en notas del tiempo a las que se llega desde abajo.
    .fault = El cut suena como una nota de la melodía.
    .cure = Decir la nota dos veces con el cut en medio y contar uno, no dos: el dedo solo rebota.

irish-strike = strike
    .label = strike
    .text = Un toque de una nota más grave antes de la nota: un dedo golpea su agujero y vuelve a saltar.
    .how = Golpear con el dedo recto el primer agujero abierto de abajo y dejarlo rebotar; el aire sigue.
    .when = Para separar una nota de otra igual, o para posarse tras un salto descendente.
    .fault = El dedo se queda en el agujero y habla la nota grave.
    .cure = Golpear la mesa con el dedo: tiene que haberse ido antes de que se oiga.

irish-short-roll = roll corto
    .label = roll corto
    .text = Una negra que empieza con un cut y que un strike separa en dos: nota cortada, nota golpeada.
    .how = El cut justo al principio, el strike en la mitad, un solo aire y sin lengua entre ambos.
    .when = En negras de jigs y reels, cuando hay un dedo libre debajo.
    .fault = Cut y strike se precipitan al principio.
    .cure = Tocar dos corcheas de la misma nota y separarlas después con los dedos en vez de la lengua.

irish-long-roll = roll largo
    .label = roll
    .text = Una negra con puntillo separada en tres: la nota, la nota cortada, la nota golpeada. Su signo es ~.
    .how = Mantener la nota una corchea, cut, strike, todo en el pulso igual de la jig; solo se mueven dos dedos.
    .when = En negras con puntillo, y donde la melodía rodea una nota durante tres corcheas.
    .fault = Las tres notas son desiguales: el roll se amontona al final.
    .cure = Articular primero tres corcheas iguales, luego dejar la lengua y que cut y strike separen en los mismos lugares.

irish-cran = cran
    .label = cran
    .text = Un roll en el re grave, donde no queda dedo para golpear: la nota se separa con cuts de dos dedos distintos.
    .how = Cortar con el primer dedo y luego con el segundo de la mano inferior; nunca dos veces con el mismo.
    .when = En los re graves largos, y en el re de arriba, que se digita casi igual.
    .fault = La octava se rompe bajo los cuts.
    .cure = Soplar suavemente en un re grave lleno; cortar despacio, un dedo tras otro, y acelerar cuando hablen los dos cuts.

irish-triplet = tresillo
    .label = tresillo
    .text = Tres notas rápidas e iguales en el tiempo de una negra: se llena una tercera, o se rodea una nota.
    .how = Ligarlas, o articular solo la primera; el tiempo cae en la primera.
    .when = En reels y hornpipes, entre notas a distancia de tercera y antes de una cuarta; casi nunca en jigs.
    .fault = Salen dos semicorcheas y una corchea.
    .cure = Dar palmas en el tiempo y decir «tre-si-llo»; después tocarlo en una sola nota.

irish-treble = treble
    .label = treble
    .text = Una negra dicha tres veces como tresillo igual.
    .how = Articular «te-ke-te», o articular solo la primera y separar las demás con un cut y un strike.
    .when = En una negra sobre el tiempo en reels y hornpipes, para dar impulso; una o dos veces por pieza.
    .fault = Pesa más que las notas de alrededor.
    .cure = Tocarlo más suave que lo anterior; solo la primera puede oírse.

irish-divided-note = nota dividida
    .label = dividida
    .text = Una negra se vuelve dos corcheas: ella misma, y una nota del acorde o una vecina que lleva adelante.
    .how = La primera queda como estaba; la segunda es ligera.
    .when = Cuando una frase vuelve y sus notas largas pueden moverse.
    .fault = La nota nueva suena más fuerte que la melodía.
    .cure = Tocar la negra dos veces y cambiar después solo los dedos de la segunda.

irish-held-note = nota mantenida
    .label = mantenida
    .text = Dos corcheas se vuelven una negra: la nota de paso se omite y la melodía respira.
    .how = Mantener la primera hasta el final, o dejarla pronto y respirar.
    .when = Cuando una frase vuelve, en corcheas seguidas; el lugar donde los flautistas respiran.
    .fault = El tiempo se arrastra porque nada se mueve.
    .cure = Marcar con el pie la corchea que se omite.

irish-cut-why = { $coming ->
    [repeated] Una nota repetida se separa de la anterior con un cut { $where }
    [below] La melodía sube a la nota { $where }: un cut le da peso
    [above] La melodía baja a la nota { $where }: un cut la destaca
   *[first] Un cut destaca la primera nota
}.
irish-strike-why = { $coming ->
    [repeated] La nota se repite: un strike desde abajo separa las dos.
   *[above] La melodía salta hacia abajo: un strike la hace posarse.
}
irish-short-roll-why = La nota dura como dos notas corridas, con un dedo libre debajo: cut y strike la separan en dos.
irish-long-roll-why = { $form ->
    [held] La nota dura como tres notas corridas: un roll mantiene en ella el pulso.
    [said-again] La melodía dice la nota durante tres notas corridas: un roll las une en una.
   *[circled] La melodía rodea la nota en tres notas corridas: el roll hace lo mismo con dos dedos.
}
irish-cran-why = { $form ->
    [held] Una nota larga y ningún dedo para golpear: solo cuts la separan.
    [said-again] La melodía dice la nota durante tres notas corridas y no queda dedo para golpear: un cran las une en una.
   *[circled] La melodía rodea la nota en tres notas corridas y no queda dedo para golpear: un cran se queda en ella.
}
irish-triplet-why = { $form ->
    [third] Las dos notas están a una tercera: la de en medio las vuelve tresillo.
    [fourth] Una nota larga como dos corridas antes de una cuarta: las dos notas intermedias siguen en tresillo.
   *[neighbour] Una nota larga como dos corridas antes de un grado o una tercera descendente: gira una vez, como tresillo.
}
irish-treble-why = Una nota sobre el tiempo, larga como dos corridas: dicha tres veces, empuja hacia adelante.
irish-divided-note-why = { $side ->
    [above] Una nota larga como dos corridas puede moverse: la nota de arriba lleva adelante.
   *[below] Una nota larga como dos corridas puede moverse: la nota de abajo lleva adelante.
}
irish-held-note-why = { $heard ->
    [before] La frase ya se ha oído: la nota de paso puede irse, y la línea respira.
   *[first] La nota intermedia solo pasa: sin ella, la línea respira.
}
