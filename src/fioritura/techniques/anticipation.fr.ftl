anticipation-why = Une note sur le temps qui peut venir { $value ->
    [eighth] une croche
   *[sixteenth] une double croche
} plus tôt { $brings ->
    [yes] et annoncer le nouvel accord
   *[no] et pousser la ligne en avant
}.
