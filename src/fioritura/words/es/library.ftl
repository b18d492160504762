library-in-the-setting = «{ $name }» se da ahora una sola vez, en el ajuste: pase { $example }.
library-no-setting = { $given } no es un ajuste: pase uno como { $example }.
library-one-tempo = Varias piezas no pueden compartir un tempo de { $given } negras por minuto: quite el tempo del ajuste y cada pieza tendrá el suyo.
library-no-workers = No es posible con { $given } procesos: dé 1 o más.
library-other-tune = Lo que se tocó no es «{ $title }»: el parecido es del { $likeness } %. Dé la pieza de la que es una versión.
library-tolerance = Tolerancias de { $onset } segundos y { $pitch } cents no tienen sentido: dé 0 o más.
library-no-field = Las notas no tienen el campo «{ $field }»: dé un array con onset_sec y pitch.
