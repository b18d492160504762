scoop = scoop
    .label = scoop
    .text = La note commence un peu trop bas et est amenée à sa hauteur.
    .how = Anches : détendre la mâchoire pour l’attaque, puis l’affermir ; flûte : tourner vers soi et revenir ; cuivres : partir sous la note. Aucun doigt ne bouge.
    .when = Sur une note qui en a le temps : longues notes, sommets, débuts de phrase ; rarement deux fois par phrase.
    .fault = Chaque longue note est prise par en dessous.
    .cure = S’en permettre un toutes les quatre mesures, et le choisir d’avance.

fall = fall
    .label = fall
    .text = À la fin, la note tombe vers le bas, sans but.
    .how = Lâcher ensemble l’air et les doigts, en s’éteignant pendant la chute.
    .when = Avant un silence, ou sur une longue note en fin de phrase.
    .fault = Elle reste forte jusqu’au bout et atterrit sur une note.
    .cure = S’éteindre tout à fait avant que le dernier doigt bouge.

doit = doit
    .label = doit
    .text = À la fin, la note s’élance vers le haut.
    .how = Serrer l’embouchure et jeter les doigts vers le haut, d’un seul geste vif.
    .when = Avant un silence ou sur une longue note en fin de phrase, de préférence après une montée.
    .fault = Il est aussi long que la note.
    .cure = Tenir la note toute sa valeur et n’utiliser que le dernier instant.

ghost-note = ghost note
    .label = ghost
    .text = Une note à demi avalée : plus sentie qu’entendue.
    .how = La langue arrête presque la note (anches : elle touche l’anche) et l’air continue.
    .when = Sur une note brève à contretemps qui mène droit à la suivante.
    .fault = La note disparaît tout à fait, ou sa hauteur est fausse.
    .cure = La jouer pleine, puis rapprocher la langue peu à peu.

vibrato = vibrato vers la fin
    .label = vib.
    .text = La longue note commence droite et se met à osciller vers la fin.
    .how = Saxophone et cuivres : un petit mouvement de la mâchoire, environ cinq par seconde ; flûte et hautbois : le souffle. Commencer après la moitié de la note.
    .when = Sur les notes d’une seconde environ ou plus, surtout dans les fins.
    .fault = Il commence avec l’attaque et ne varie jamais.
    .cure = Compter la note : droite la première moitié, vibrato la seconde.

scoop-why = C’est { $role ->
    [peak] une note plus haute que ses voisines
    [last] une dernière note plus haute que la précédente
    [start] le début d’une phrase
    [leap] une note atteinte par un saut vers le haut
    [long] une longue note
   *[time] une note qui en a le temps
} : on peut y glisser par en dessous.
fall-why = { $end ->
    [rest] Un silence suit cette note
    [last] C’est la dernière note
   *[phrase] La phrase finit sur cette note
} : elle peut tomber vers le bas.
doit-why = { $end ->
    [rest] Un silence suit cette note
    [last] C’est la dernière note
   *[phrase] La phrase finit sur cette note
}{ $rises ->
    [yes] , et la mélodie y est montée
   *[no] {""}
} : elle peut s’élancer vers le haut.
ghost-note-why = Un { $pitch } bref à contretemps, en route vers { $next } : on peut l’avaler à moitié.
vibrato-why = { $end ->
    [last] La mélodie finit sur { $pitch }
    [phrase] La phrase finit sur { $pitch }
   *[long] La mélodie reste sur { $pitch } pendant { $count ->
        [one] { $count } noire
       *[other] { $count } noires
    }
} : la note peut commencer droite et se réchauffer vers la fin.
