cli-note = remarque : { $text }
cli-error = fioritura : { $text }
cli-hint = { $text } ({ $hint })
cli-stopped = arrêté ; rien n’est resté à moitié écrit.
cli-chords-inferred = le fichier n’a pas de chiffrages ; ils ont été déduits. Donnez les vôtres avec --chords.
cli-ornamented = { $has_part ->
    [yes] { $title } (partie : { $part })
   *[no] { $title }
} : { $figures ->
    [one] une figure
   *[other] { $figures } figures
} ({ $rate } par mesure de quatre noires, { $most } au plus dans une phrase), { $kept } % de l’air conservés.
cli-practise-first = À travailler d’abord :
cli-written = Écrit dans { $folder } :
cli-writing = écriture
cli-writing-file = écriture de { $name }
cli-spots = { $spots ->
    [one] Un endroit
   *[other] { $spots } endroits
} pour { $techniques ->
    [one] une technique
   *[other] { $techniques } techniques
}.
cli-level = Niveau { $level }
cli-incomplete = « { $given } » est incomplet : écrivez comme dans { $usage }.
cli-no-time = Une limite de { $given } s ne laisse pas de temps : donnez à --limit plus de 0.
cli-takes-unasked = --takes nomme des enregistrements à commenter : demandez-les avec --make report.
cli-no-levels = --levels « { $given } » ne nomme aucun niveau : donnez-en de 1 à 5, comme 1,3,5 ou 1-5.
cli-no-workers = { $given } processus ne peuvent rien faire : donnez à --workers 1 ou plus.
cli-batch-done = { $tunes ->
    [one] Un air
   *[other] { $tunes } airs
}, { $made } fichiers et dossiers faits{ $before ->
    [0] {""}
   *[other] , { $before } déjà faits
} en { $time } : { $out }
cli-batch-failed = { $failed ->
    [one] Un air a échoué, en tout ou en partie :
   *[other] { $failed } airs ont échoué, en tout ou en partie :
}
cli-batch-reasons = Tous, avec leurs raisons : { $path }
cli-batch-progress = { $tunes } airs, { $failed } échecs
cli-batch-line = lot : { $share } %, { $counts }, reste { $left }
cli-no-tempo = --tempo { $given } : donnez des nombres, comme 90 ou 70,80,90.
cli-bad-ending = { $name } : terminez le nom par .mp3, .wav, .flac ou .mid.
cli-untitled = Sans titre
cli-all-muted = Toutes les parties sont muettes : laissez-en au moins une.
cli-part = { $name ->
    [melody] mélodie
    [bass] basse
    [chords] accords
    [drums] batterie
    [click] clic
   *[other] { $name }
}
cli-sound-made = { $title } : { $feel }, { $time }
cli-no-port = Le port { $given } n’existe pas : donnez 0 à 65535.
cli-page-lacks = La page a besoin du paquet « { $name } » : réinstallez Fioritura.
cli-soundfont = Banque     { $name } ({ $origin ->
    [set] choisie par vous
    [system] trouvée sur ce système
   *[fallback] vient avec un autre paquet ; petite, suffisante pour travailler
})
    {"           "}{ $path }
cli-licence = Licence    { $licence }
cli-synth-built-in = intégré
cli-synth-fluidsynth = fluidsynth ({ $path }), par --synth fluidsynth
cli-synths = Synthé     { $count ->
    [0] aucun : installez le programme fluidsynth
   *[other] { $synths }
}
cli-better-soundfont = 
    Une meilleure banque de sons : tout fichier .sf2 ou .sf3 pour General MIDI, par exemple FluidR3 (licence MIT), que Debian et Ubuntu
    ont dans le paquet fluid-soundfont-gm. Sans root, mettez le fichier dans ~/.local/share/soundfonts, où il est trouvé, ou nommez-le :
    {"  "}{ $variable }=/path/to/file.sf2 fioritura play ...
    {"  "}fioritura play ... --soundfont /path/to/file.sf2
cli-no-voice = --voice { $given } : indiquez measured, soundfont ou un fichier dont le nom finit par .sfz.
cli-voice = Mélodie    voix de vents mesurées, par --voice measured : d’après MTG Solo Saxophones (Music Technology Group,
    {"           "}Universitat Pompeu Fabra ; CC BY 4.0) et University of Iowa Musical Instrument Samples (sans restriction)
cli-sampled-voices =
    De vrais échantillons pour la mélodie : un instrument au format SFZ, par --voice /path/to/file.sfz. En voici de libres, à
    décompresser en entier dans un dossier quelconque :
    {"  "}MTG Solo Saxophones (CC BY 4.0) : soprano, alto, ténor, baryton ; github.com/sfzinstruments/MTG.SoloSax
    {"  "}VSCO 2 Community Edition (CC0) : flûte, hautbois, clarinette, trompette, trombone ; github.com/sgossner/VSCO-2-CE
    Du format, on lit échantillons, touches, vélocités, boucles, gain et accord ; ni enveloppes, ni filtres, ni alternances, ni
    commutateurs de touches.
cli-bad-key = --key { $given } : { $reason }
cli-no-key = « { $given } » n’est pas une tonalité : écrivez la tonique et le mode, comme Bb, Am, F# minor ou D-dorian.
cli-as-played = comme joué dans { $name }
cli-transcribed = { $title } : { $notes } notes et { $graces } petites notes en { $bars } mesures à { $metre }, { $transposes ->
    [yes] { $key } réel (écrit { $written })
   *[no] { $key }
}, { $tempo } temps à la minute{ $feel ->
    [swing] , croches swinguées
   *[straight] {""}
} ; accord { $tuning } cents.
cli-other-reading = Se lit aussi à { $metre }, à { $tempo } temps à la minute : --reading { $number }
cli-which-tune = Quel air a été joué ? Donnez --tune avec son fichier, ou --asked avec un arrangement.json.
cli-named = { $title } : { $figures ->
    [one] une figure
   *[other] { $figures } figures
}, { $slips ->
    [one] une faute
   *[other] { $slips } fautes
}.
cli-sounds = Cela sonne { $where }.
cli-passage = Passage { $number } sur { $count }
cli-else = { $name } (sinon { $other })
cli-slip = faute
cli-hearing = écoute de { $name }
cli-reading = lecture
cli-played =   tempo { $tempo }, { $drift } pour cent jusqu’à la fin ; notes à { $spread } ms près ; croches { $swing } pour 1 ; accord { $tuning } cents
cli-practise-next = À travailler ensuite :
cli-status = { $status ->
    [done] réussi
    [missed] manque
   *[added] ajouté
}
cli-no-part-for = pas de partie pour { $player } : { $reason }
cli-pack-made = { $title } : { $techniques ->
    [one] une technique
   *[other] { $techniques } techniques
}, { $files } fichiers, { $size } Mo dans { $out }
cli-pack-step = { $step ->
    [engraving] gravure
    [sound] son
    [pages] pages
    [clips] clips
   *[other] { $step }
}
cli-no-curve = --curve { $given } : donnez des nombres, comme 0.3,0.8,1.4.
cli-curve-count = --curve a { $given } densités et --choruses vaut { $count } : donnez une densité pour chaque chorus.
cli-sound-title = { $title } ({ $what ->
    [plain] simple
    [ornamented] orné
    [in-turn] simple et orné en alternance
   *[backing] accompagnement
}), { $key }, { $tempo }{ $has_bars ->
    [yes] {", "}mesures { $bars }
   *[no] {""}
}{ $has_parts ->
    [without] {", "}sans { LIST($parts) }
    [just] {", "}{ LIST($parts) }
   *[all] {""}
}
cli-no-part = Il n’y a pas de partie « { $given } » : choisissez { LIST($known, "or") }.
cli-mute-or-just = --mute et --just se contredisent : donnez l’un des deux.
