cli-note = nota: { $text }
cli-error = fioritura: { $text }
cli-hint = { $text } ({ $hint })
cli-stopped = interrumpido; nada ha quedado a medio escribir.
cli-chords-inferred = el archivo no tiene cifrados; se han deducido. Dé los suyos con --chords.
cli-ornamented = { $has_part ->
    [yes] { $title } (parte: { $part })
   *[no] { $title }
}: { $figures ->
    [one] una figura
   *[other] { $figures } figuras
} ({ $rate } por compás de cuatro negras, { $most } como máximo en una frase), se conserva el { $kept } % de la melodía.
cli-practise-first = Practique primero:
cli-written = Escrito en { $folder }:
cli-writing = escribiendo
cli-writing-file = escribiendo { $name }
cli-spots = { $spots ->
    [one] Un lugar
   *[other] { $spots } lugares
} para { $techniques ->
    [one] una técnica
   *[other] { $techniques } técnicas
}.
cli-level = Nivel { $level }
cli-incomplete = «{ $given }» está incompleto: escríbalo como en { $usage }.
cli-no-time = Un límite de { $given } s no deja tiempo: dé a --limit más de 0.
cli-takes-unasked = --takes nombra grabaciones para informes: pídalos con --make report.
cli-no-levels = --levels «{ $given }» no nombra niveles: dé algunos del 1 al 5, como 1,3,5 o 1-5.
cli-no-workers = { $given } procesos no pueden trabajar: dé a --workers 1 o más.
cli-batch-done = { $tunes ->
    [one] Una melodía
   *[other] { $tunes } melodías
}, { $made } archivos y carpetas hechos{ $before ->
    [0] {""}
   *[other] , { $before } ya hechos antes
} en { $time }: { $out }
cli-batch-failed = { $failed ->
    [one] Una melodía ha fallado, en todo o en parte:
   *[other] { $failed } melodías han fallado, en todo o en parte:
}
cli-batch-reasons = Todas, con sus motivos: { $path }
cli-batch-progress = { $tunes } melodías, { $failed } fallos
cli-batch-line = lote: { $share } %, { $counts }, quedan { $left }
cli-no-tempo = --tempo { $given }: dé números, como 90 o 70,80,90.
cli-bad-ending = { $name }: termine el nombre en .mp3, .wav, .flac o .mid.
cli-untitled = Sin título
cli-all-muted = Todas las partes están silenciadas: deje al menos una.
cli-part = { $name ->
    [melody] melodía
    [bass] bajo
    [chords] acordes
    [drums] batería
    [click] claqueta
   *[other] { $name }
}
cli-sound-made = { $title }: { $feel }, { $time }
cli-no-port = El puerto { $given } no existe: dé de 0 a 65535.
cli-page-lacks = La página necesita el paquete «{ $name }»: vuelva a instalar Fioritura.
cli-soundfont = Banco      { $name } ({ $origin ->
    [set] elegido por usted
    [system] encontrado en este sistema
   *[fallback] viene con otro paquete; pequeño, suficiente para practicar
})
    {"           "}{ $path }
cli-licence = Licencia   { $licence }
cli-synth-built-in = incorporado
cli-synth-fluidsynth = fluidsynth ({ $path }), con --synth fluidsynth
cli-synths = Sinte      { $count ->
    [0] ninguno: instale el programa fluidsynth
   *[other] { $synths }
}
cli-better-soundfont = 
    Un banco mejor: cualquier archivo .sf2 o .sf3 de General MIDI, como FluidR3 (licencia MIT), que Debian y Ubuntu tienen en el paquete
    fluid-soundfont-gm. Sin root, ponga el archivo en ~/.local/share/soundfonts, donde se encuentra solo, o nómbrelo:
    {"  "}{ $variable }=/path/to/file.sf2 fioritura play ...
    {"  "}fioritura play ... --soundfont /path/to/file.sf2
cli-no-voice = --voice { $given }: indique measured, soundfont o un archivo cuyo nombre acabe en .sfz.
cli-voice = Melodía    voces de viento medidas, con --voice measured: según MTG Solo Saxophones (Music Technology Group,
    {"           "}Universitat Pompeu Fabra; CC BY 4.0) y University of Iowa Musical Instrument Samples (sin restricciones)
cli-sampled-voices =
    Muestras reales para la melodía: un instrumento en formato SFZ, con --voice /path/to/file.sfz. Los hay libres, que se
    descomprimen enteros en cualquier carpeta:
    {"  "}MTG Solo Saxophones (CC BY 4.0): soprano, alto, tenor, barítono; github.com/sfzinstruments/MTG.SoloSax
    {"  "}VSCO 2 Community Edition (CC0): flauta, oboe, clarinete, trompeta, trombón; github.com/sgossner/VSCO-2-CE
    Del formato se leen muestras, teclas, velocidades, bucles, ganancia y afinación; no envolventes, filtros, alternancias ni
    conmutadores de teclas.
cli-bad-key = --key { $given }: { $reason }
cli-no-key = «{ $given }» no es una tonalidad: escriba la tónica y el modo, como Bb, Am, F# minor o D-dorian.
cli-as-played = como se toca en { $name }
cli-transcribed = { $title }: { $notes } notas y { $graces } notas de adorno en { $bars } compases de { $metre }, { $transposes ->
    [yes] suena en { $key } (escrito en { $written })
   *[no] { $key }
}, { $tempo } tiempos por minuto{ $feel ->
    [swing] , corcheas con swing
   *[straight] {""}
}; afinación { $tuning } cents.
cli-other-reading = También se puede leer en { $metre }, a { $tempo } tiempos por minuto: --reading { $number }
cli-which-tune = ¿Qué melodía se tocó? Dé --tune con su archivo, o --asked con un arrangement.json.
cli-named = { $title }: { $figures ->
    [one] una figura
   *[other] { $figures } figuras
}, { $slips ->
    [one] un fallo
   *[other] { $slips } fallos
}.
cli-sounds = Suena { $where }.
cli-passage = Vuelta { $number } de { $count }
cli-else = { $name } (si no, { $other })
cli-slip = fallo
cli-hearing = escuchando { $name }
cli-reading = leyendo
cli-played =   tempo { $tempo }, { $drift } por ciento hasta el final; notas dentro de { $spread } ms; corcheas { $swing } a 1; afinación { $tuning } cents
cli-practise-next = Para practicar a continuación:
cli-status = { $status ->
    [done] logrado
    [missed] falta
   *[added] añadido
}
cli-no-part-for = no hay parte para { $player }: { $reason }
cli-pack-made = { $title }: { $techniques ->
    [one] una técnica
   *[other] { $techniques } técnicas
}, { $files } archivos, { $size } MB en { $out }
cli-pack-step = { $step ->
    [engraving] grabado
    [sound] sonido
    [pages] páginas
    [clips] clips
   *[other] { $step }
}
cli-no-curve = --curve { $given }: dé números, como 0.3,0.8,1.4.
cli-curve-count = --curve tiene { $given } densidades y --choruses es { $count }: dé una densidad para cada vuelta.
cli-sound-title = { $title } ({ $what ->
    [plain] sencilla
    [ornamented] adornada
    [in-turn] sencilla y adornada por turnos
   *[backing] acompañamiento
}), { $key }, { $tempo }{ $has_bars ->
    [yes] {", "}compases { $bars }
   *[no] {""}
}{ $has_parts ->
    [without] {", "}sin { LIST($parts) }
    [just] {", "}{ LIST($parts) }
   *[all] {""}
}
cli-no-part = No existe la parte «{ $given }»: elija { LIST($known, "or") }.
cli-mute-or-just = --mute y --just se contradicen: dé uno de los dos.
