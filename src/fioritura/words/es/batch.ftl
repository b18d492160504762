cluster-not-installed = Un clúster necesita dask.distributed: pip install "fioritura[cluster]".
no-scheduler = Ningún planificador responde en { $address } ({ $reason }): inicie uno con «dask scheduler».
no-cluster-worker = El planificador en { $address } no tiene trabajadores: inicie algunos con «dask worker { $address }».
scheduler-gone = El planificador en { $address } ha desaparecido: vuelva a iniciarlo y repita la misma orden para continuar.
worker-lacks = A un trabajador le falta { $name }: instale Fioritura en todas las máquinas.
worker-other-version = Un trabajador tiene otra versión de Fioritura o de sus herramientas: instale la misma en todas las máquinas.
worker-other-soundfont = Un trabajador toca con otro banco de sonidos que { $name }: dé el mismo archivo a todas las máquinas.
batch-nothing-there = { $path } no existe: nombre una carpeta de melodías o un libro.
batch-no-tune = No hay ninguna melodía en { $path }: el archivo de una melodía termina en { LIST($known, "or") }.
batch-unwritable = { $path } no se puede escribir ({ $reason }): compruebe el espacio y los permisos y repita lo mismo.
batch-busy = Ya hay otro lote en marcha en { $path }: espere o nombre otra carpeta.
takes-no-folder = { $path } no es una carpeta de tomas: nombre la carpeta de las grabaciones.
takes-no-recording = No hay ninguna grabación en { $path }: una toma termina en { LIST($known, "or") }.
batch-kind = tarea
batch-format = formato
batch-audio = formato de audio
batch-section = parte de una carpeta
batch-level = nivel
batch-asked = nivel pedido a las tomas
batch-none-named = No se ha nombrado nada ({ $what }): elija entre { $known }.
batch-unknown = Desconocido ({ $what }): «{ $given }». Elija entre { $known }.
batch-over-time = se abandonó tras { $seconds } s: pruebe solo esta melodía o dé más tiempo
batch-fault = un fallo del programa ({ $kind }: { $reason }): comuníquelo junto con la melodía
batch-moved = { $octaves ->
    [-1] Bajado una octava para que todas las notas estén en el instrumento.
    [1] Subido una octava para que todas las notas estén en el instrumento.
   *[other] Movido { $octaves } octavas para que todas las notas estén en el instrumento.
}
