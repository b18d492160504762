anticipation = anticipation
    .label = en avance
    .text = La note vient plus tôt, d’une double croche (en swing d’une croche), et se prolonge sur son temps.
    .how = Articuler nettement la note avancée et la tenir ; sentir passer le temps sans rejouer.
    .when = Sur une note d’un ou deux temps qui commence sur le temps, surtout quand l’accord change avec elle.
    .fault = Tout ce qui suit arrive en avance aussi.
    .cure = Battre le temps du pied et dire le rythme avant de le jouer.

anticipation-why = Une note sur le temps qui peut venir { $value ->
    [eighth] une croche
   *[sixteenth] une double croche
} plus tôt { $brings ->
    [yes] et annoncer le nouvel accord
   *[no] et pousser la ligne en avant
}.
