# Lo que entrega un profesor: ediciones de una melodía, versiones de estudio, la carpeta de la lección y su página sin conexión.

# Nombres que están en cada hoja.

tune-untitled = Sin título
line-plain = sencilla
line-ornamented = ornamentada
idiom-name =
    { $idiom ->
        [folk] folk
        [blues] blues
        [irish] irlandés
       *[jazz] jazz
    }
lesson-level = Nivel { $level }
bars-span = compases { $first }–{ $last }
bars-from-pickup = de la anacrusa al compás { $last }

# Ediciones y versiones de estudio.

edition-line = nivel { $level }, { idiom-name }
edition-comparison = sencilla y ornamentada, nivel { $level }, { idiom-name }
edition-plain-sound = { CAPITAL($instrument) }, melodía sencilla
chorus-head = tema
chorus-last-head = último tema
chorus-solo = solo { $number }

# El cuaderno.

handout-subtitle = Una lección de ornamentación · nivel { $level }, { idiom-name }
handout-contents = En esta lección
handout-plain = La melodía sencilla
handout-notes = De su profesor
handout-techniques = Las técnicas, una por una
handout-techniques-intro = Cada ejemplo toma una frase de la melodía: arriba sencilla, abajo ornamentada, la figura sobre fondo gris. Toque la frase sencilla hasta que cante, luego la ornamentada, despacio; después las dos alternadas.
handout-others = Lo que esta melodía ofrece además
handout-others-intro = La versión de concierto no los usa, pero la melodía tiene lugares para ellos: para más adelante, o para quien pida más.
handout-how = Cómo se toca
handout-when = Cuándo conviene
handout-fault = Un error frecuente
handout-cure = Cómo corregirlo
handout-summary = Todas las técnicas de un vistazo
handout-summary-intro = Lugares: cuántas notas de esta melodía admiten la técnica. Uso: los compases de la versión de concierto que la llevan.
handout-column-technique = Técnica
handout-column-label = En la partitura
handout-column-level = Nivel
handout-column-what = Qué es
handout-column-places = Lugares
handout-column-used = Uso
handout-performance = La versión de concierto
handout-plan = Plan de estudio
handout-plan-each = Cada sesión, unos veinticinco minutos
handout-step-tone = Notas largas y la escala de { FORM($key, "inline") }, ligada: cinco minutos.
handout-step-plain = La melodía sencilla una vez de memoria, con el acompañamiento: tres minutos.
handout-step-technique = Las técnicas de la sesión, cada una en su ejemplo: despacio, a tempo y en la melodía: diez minutos.
handout-step-place = Un pasaje difícil, véase más abajo: cuatro minutos. Pare antes si se cansa un dedo o el labio.
handout-step-play = La versión de concierto con el acompañamiento, al tempo de la sesión: tres minutos. Grábese y escúchese una vez.
handout-sessions = Sesión por sesión
handout-session-session = Sesión
handout-session-new = Nuevo
handout-session-again = Repaso
handout-session-tempo = Tempo
handout-session-done = Hecho
handout-again-all = todas
handout-hard = Los pasajes difíciles
handout-care = Precauciones

# Partes.

part-octave-lower =
    { $octaves ->
        [one] Se toca una octava por debajo de donde este instrumento suele leer un lead sheet, para que quede en su registro.
       *[other] Se toca { $octaves } octavas por debajo de donde este instrumento suele leer un lead sheet, para que quede en su registro.
    }
part-octave-higher =
    { $octaves ->
        [one] Se toca una octava por encima de donde este instrumento suele leer un lead sheet, para que quede en su registro.
       *[other] Se toca { $octaves } octavas por encima de donde este instrumento suele leer un lead sheet, para que quede en su registro.
    }
part-without-octave = ninguna octava de este instrumento abarca toda la línea

# Títulos de los archivos de sonido.

sound-backing = Acompañamiento
sound-performance = Versión de concierto
sound-plain = Melodía sencilla
sound-ladder = Versión de concierto a { $tempo } tiempos por minuto
sound-slow = { CAPITAL($technique) }, despacio
sound-level = { $title }, nivel { $level }

# Las hojas de ejercicios.

exercises-title = Ejercicios
exercises-intro = Cada pasaje difícil de la versión de concierto en una página propia: aislado, en ritmos, en todas las tonalidades y paso a paso hasta el tempo objetivo. Diez minutos en un pasaje bastan; toque después algo fácil.
exercises-drill-isolated = Aislado: ocho veces sin un fallo.
exercises-drill-even = Regular, ligado y luego picado.
exercises-drill-long-short = Larga, corta.
exercises-drill-short-long = Corta, larga.
exercises-drill-triplets = En tresillos.
exercises-drill-dotted = En grupos con puntillo.
exercises-keys = Por todas las tonalidades, en cuartas. Una al día basta; dígala antes de tocar.
exercises-tempos = Paso a paso hacia la meta: marque un tempo cuando haya salido limpio tres veces seguidas.
exercises-reading = Lectura a primera vista
exercises-reading-intro = La misma melodía con otros adornos. Repásela medio minuto con la vista, óigala por dentro y tóquela sin parar; no la estudie.
exercises-reading-variant = Variante { $number }
exercises-turn = Le toca a usted
exercises-turn-intro = Copie la frase en el pentagrama vacío y escriba el adorno. Toque lo que ha escrito y cámbielo hasta que le guste.
exercises-turn-task = { CAPITAL($bar) }, { $where }: { $technique }.
exercises-yours = su línea
exercises-answers = Soluciones propuestas
exercises-answers-intro = Una manera entre varias. Si la suya suena mejor en la melodía, quédese con la suya.

# El plan de las semanas.

course-title = Plan del curso
course-intro = Una melodía, cinco niveles, { $weeks } semanas. Cada nivel es una hoja y una grabación en la carpeta «{ $folder }»; siga cuando haya alcanzado la meta, no cuando termine la semana.
course-column-week = Semana
course-column-level = Nivel
course-column-new = Nuevo
course-column-tempo = Tempo
course-column-files = Archivos
course-column-done = Hecho
course-again = nada nuevo: todo otra vez, de memoria
course-goals = Metas
course-goal = Meta
course-goal-1 = La melodía de memoria, con unas pocas notas de adorno que llegan a tiempo y dejan cantar la nota principal.
course-goal-2 = Un segundo color: bordaduras, notas de paso e inflexiones que siguen la línea sin apresurarla.
course-goal-3 = Grupetos, aproximaciones y escalas rápidas breves de ritmo igual; quien escucha sigue tarareando la melodía.
course-goal-4 = Figuras más largas por encima de la barra de compás, fraseadas de un solo aliento, fuerte y suave.
course-goal-5 = Una versión propia: elija mientras toca entre todas las figuras y cuente la melodía cada vez de otra manera.
course-check = ¿Listo para el nivel siguiente?
course-check-1 = Toco este nivel al tempo objetivo con el acompañamiento, sin parar.
course-check-2 = Sé cantar cada adorno antes de tocarlo.
course-check-3 = Quien escucha reconoce la melodía enseguida.
course-check-4 = Nada duele: manos, labio y hombros están libres.

# El guion de una lección en vídeo.

order-title = { $title }: guion
order-intro = Tempo objetivo: { $tempo }. Los tiempos cuentan un habla tranquila y cada ejemplo tocado despacio y a tempo.
order-quiet = Comprobar el sonido: altavoces bajos, auriculares fuera, teléfono en silencio.
order-play = Reproducir { $file }.
order-technique = { CAPITAL($technique) } ({ $clock }, unos { $seconds } s)
order-say = Decir: { $text }
order-listen = Reproducir: { $files }
order-show = Mostrar: { $files }
order-warn = Advertir: { $text }
order-end = Para terminar ({ $clock })
order-homework = Dar la tarea: la primera sesión del plan de estudio.

# La página sin conexión.

offline-skip = Ir a la música
offline-desk = Tempo y sonido
offline-tempo = Tempo
offline-loop = Bucle
offline-volume = Volumen
offline-stop = Parar
offline-plain = Sencilla
offline-ornamented = Ornamentada
offline-both = Las dos alternadas
offline-play = { $what }: { $score }
offline-playing = Suena: { $what }, { $score }
offline-stopped = Parado.
offline-score = { CAPITAL($technique) }, { $place }
offline-system = { $score }, sistema { $number }
offline-intro = Elija arriba un tempo y escuche la frase sencilla, la ornamentada o las dos alternadas; la marca muestra por dónde va la música. Un compás de clics da la entrada. La tecla Escape detiene la música.

# Lo que puede estar mal.

no-such-naming = No hay nombres de notas «{ $given }»: elija { LIST($known, "or") }.
no-such-section = No hay ninguna sección «{ $given }» en una carpeta de lección: elija entre { $known }.
no-such-audio = No hay archivos de sonido «{ $given }»: elija { LIST($known, "or") }.
no-such-format = No hay ningún formato «{ $given }»: elija entre { $known }.
no-such-phrase = «{ $given }» no es una frase: dé sus números a partir de 0.
no-such-override = No hay ningún texto «{ $given }» que sustituir: elija entre { $known }.
override-too-long = «{ $name }» tiene { $letters } letras; { $limit } es el límite: acórtelo.
override-bad-line = Línea { $line } de sus textos, «{ $text }»: escriba «nombre: texto» con uno de los nombres { $known }.
override-not-text = { $file } no es texto en UTF-8: guárdelo como texto sin formato en UTF-8.
lesson-plan-damaged = Esto no es el plan de una lección: hágalo de nuevo.
lesson-without-figures = Ninguna figura de las técnicas elegidas está en las frases elegidas: elija otra técnica u otra frase.
manifest-damaged = { $file } no es el manifiesto de una carpeta de lección: indique el archivo { $name } de una carpeta.
manifest-other-file = { $file } no es el archivo del que se hizo la carpeta: restáurelo, o indique la melodía misma.
times-out-of-reach = Tocarlo { $given } veces está fuera de alcance: dé de { $low } a { $high }.
key-outside-instrument = En { FORM($key, "inline") } la línea queda fuera del instrumento en todas las octavas ({ $instrument }): elija otra tonalidad, otro instrumento o un nivel más fácil.
clips-need-library = Los vídeos necesitan el paquete { $package } ({ $error }): instálelo, o haga la carpeta sin vídeos.
clip-not-encoded = El vídeo { $file } no se pudo codificar ({ $error }): haga la carpeta sin vídeos.
worker-ended = Un proceso de trabajo fue interrumpido, quizá por falta de memoria: inténtelo otra vez con menos procesos a la vez.
