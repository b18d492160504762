cluster-not-installed = Une grappe demande dask.distributed : pip install "fioritura[cluster]".
no-scheduler = Aucun ordonnanceur ne répond à { $address } ({ $reason }) : démarrez-en un avec « dask scheduler ».
no-cluster-worker = L’ordonnanceur à { $address } n’a pas d’ouvrier : démarrez-en avec « dask worker { $address } ».
scheduler-gone = L’ordonnanceur à { $address } a disparu : redémarrez-le et relancez la même commande pour continuer.
worker-lacks = Il manque { $name } à un ouvrier : installez Fioritura sur toutes les machines.
worker-other-version = Un ouvrier a une autre version de Fioritura ou de ses outils : installez la même sur toutes les machines.
worker-other-soundfont = Un ouvrier joue avec une autre banque de sons que { $name } : donnez le même fichier à toutes les machines.
batch-nothing-there = { $path } n’existe pas : nommez un dossier d’airs, ou un recueil.
batch-no-tune = Il n’y a pas d’air dans { $path } : un fichier d’air finit par { LIST($known, "or") }.
batch-unwritable = { $path } ne peut être écrit ({ $reason }) : vérifiez la place et les droits, puis relancez la même commande.
batch-busy = Un autre lot est en cours dans { $path } : attendez-le, ou nommez un autre dossier.
takes-no-folder = { $path } n’est pas un dossier de prises : nommez le dossier des enregistrements.
takes-no-recording = Il n’y a pas d’enregistrement dans { $path } : une prise finit par { LIST($known, "or") }.
batch-kind = chose à faire
batch-format = format
batch-audio = format audio
batch-section = partie d’un dossier
batch-level = niveau
batch-asked = niveau demandé aux prises
batch-none-named = Rien n’est nommé ({ $what }) : choisissez parmi { $known }.
batch-unknown = Inconnu ({ $what }) : « { $given } ». Choisissez parmi { $known }.
batch-over-time = abandonné après { $seconds } s : essayez-le seul, ou donnez-lui plus de temps
batch-fault = une faute du programme ({ $kind } : { $reason }) : signalez-la avec l’air
batch-moved = { $octaves ->
    [-1] Transposé une octave plus bas, pour que toutes les notes soient sur l’instrument.
    [1] Transposé une octave plus haut, pour que toutes les notes soient sur l’instrument.
   *[other] Transposé de { $octaves } octaves, pour que toutes les notes soient sur l’instrument.
}
