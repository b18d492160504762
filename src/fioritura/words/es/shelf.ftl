no-shelf-archive = Esto no es el archivo de un estante: elija uno que haya dado la página del estante.
archive-version = El archivo tiene la versión { $given }; se puede leer la { $known }: actualice Fioritura.
archive-damaged = El archivo está dañado ({ $reason }): expórtelo de nuevo.
archive-no-steps = faltan pasos
archive-no-name = un alumno no tiene nombre
archive-no-arrangement = falta el arreglo de una toma
archive-named-twice = un archivo se nombra dos veces
archive-words-long = un texto es demasiado largo
archive-bad-content = El archivo contiene un arreglo, un informe o un plan dañado ({ $reason }): expórtelo de nuevo.
archive-too-large = El archivo contiene { $files } ficheros de { $size } bytes; el límite es { $limit }: exporte menos melodías.
archive-entry-too-large = { $name } en el archivo supera los { $limit } bytes: expórtelo de nuevo.
shelf-folder-unmade = { $path } no se puede crear ({ $reason }): nombre otra carpeta para el estante.
shelf-unopened = { $path } no se puede abrir ({ $reason }): apártelo o nombre otra carpeta.
shelf-unwritable = El estante { $path } no se puede escribir ({ $reason }): compruebe el espacio y los permisos.
not-on-shelf = { $kind ->
    [tune] No hay melodía { $number } en el estante: elija una de la lista.
    [arrangement] No hay arreglo { $number } en el estante: elija uno de la lista.
    [student] No hay alumno { $number } en el estante: elija uno de la lista.
    [take] No hay toma { $number } en el estante: elija una de la lista.
    [lesson] No hay lección { $number } en el estante: elija una de la lista.
   *[other] No hay nada con el número { $number } en el estante: elija de la lista.
}
shelf-full-of-lessons = El estante contiene { $limit } lecciones, que es el límite: quite antes algunas.
lesson-changed-elsewhere = La lección se ha cambiado en otro sitio (revisión { $stands }, no { $given }): vuelva a mirarla.
recording-unreadable = Esto no es una grabación legible ({ $reason }): guárdela como WAV, FLAC, MP3 u OGG.
recording-type = No se admite una grabación de tipo { $given }: guárdela como WAV, FLAC, MP3 u OGG.
recording-rate = Una frecuencia de { $given } Hz queda fuera de { $low } a { $high } Hz: guárdela a 44100 Hz.
recording-channels = { $given } canales son demasiados: guárdela en mono o en estéreo.
recording-too-short = La grabación dura { $seconds } segundos: grabe la melodía o una frase.
recording-too-long = La grabación dura más de { $limit } minutos: grabe una melodía cada vez.
shelf-version = El estante tiene la versión { $given }; se puede leer la { $known }: actualice Fioritura o nombre otra carpeta.
tune-needs-title = Una melodía necesita un título: póngale uno.
only-arrangement = Es el único arreglo de su melodía: quite la melodía o copie antes el arreglo.
nothing-to-undo = No hay nada que deshacer aquí.
nothing-to-redo = No hay nada que rehacer aquí.
arrangement-changed-elsewhere = El arreglo se ha cambiado en otro sitio (paso { $stands }, no { $given }): vuelva a mirarlo.
no-such-step = El arreglo { $arrangement } no tiene paso { $step }: vuelva a mirarlo.
too-many-tags = { $count } etiquetas son demasiadas: el límite es { $limit }.
tag-too-long = La etiqueta «{ $tag }…» tiene { $count } letras: el límite es { $limit }.
shelf-full-of-students = El estante tiene { $limit } alumnos, que es el límite: quite antes algunos.
student-needs-name = Un alumno necesita un nombre: basta el de pila o las iniciales.
name-too-long = El nombre tiene { $count } letras: el límite es { $limit }.
student-name-taken = Ya hay un alumno «{ $name }»: añada una inicial para distinguirlos.
take-gone = Esa toma ya no está en el estante: elija una de la lista.
