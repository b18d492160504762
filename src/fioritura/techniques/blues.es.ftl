blue-third = tercera blue
    .label = tercera blue
    .text = La tercera menor antes de la mayor, estirada o ligada hacia ella: la nota entre las dos es la que canta el blues.
    .how = Digitar la tercera menor con la mandíbula suelta y ligar; la inflexión toma su tiempo de la nota, no del pulso.
    .when = En la tercera del acorde de tónica, sobre todo cuando es larga o empieza una frase.
    .fault = Salen dos notas limpias, como un ejercicio de dedos.
    .cure = Cantar la inflexión en una sílaba y tocarla tan despacio como se cantó.

flat-fifth = quinta disminuida de paso
    .label = quinta disminuida
    .text = El semitono entre la quinta y la cuarta, rozado de paso.
    .how = Ligarla a la nota siguiente y apoyarse en la quinta anterior.
    .when = Donde la melodía va de la quinta a la cuarta o a la tercera blue, más bajando que subiendo.
    .fault = La quinta disminuida se mantiene o cae en un tiempo y suena a nota falsa.
    .cure = Contar el contratiempo en voz alta y tocarla solo ahí.

blue-drop = tercera blue sobre la tónica
    .label = caída blue
    .text = La tercera menor de la tonalidad, lanzada desde arriba antes de la tónica.
    .how = Articular la nota blue fuerte y corta, y dejar caer.
    .when = En la tónica sobre un tiempo, al final de una llamada o de su respuesta.
    .fault = La caída es perezosa y la tónica llega tarde.
    .cure = Poner la tónica en el tiempo; lanzar antes la nota blue.

blue-third-why = La tercera { $where } se estira desde la tercera blue.
flat-fifth-why = { $way ->
    [down] De la quinta hacia abajo: la quinta disminuida pasa en medio.
   *[up] De la cuarta a la quinta: la quinta disminuida pasa en medio.
}
blue-drop-why = La tónica en un tiempo: la tercera blue cae sobre ella.
