# Ce que dit le serveur de la page.

served-at = Fioritura est à l’adresse { $address } (arrêter avec Ctrl-C). Votre étagère : { $shelf }
served-token =
    Seul cet ordinateur peut l’atteindre, et seulement avec le mot de passe : { $token }
served-beyond =
    Le serveur écoute au-delà de cet ordinateur. Quiconque peut l’atteindre et connaît le mot de passe ci-dessous peut voir,
    modifier et retirer tout ce qui est sur votre étagère. Rien de ce qui passe par le réseau n’est chiffré, pas même le mot
    de passe : ne le faites que dans un réseau de confiance. Les prises ne s’enregistrent que sur cet ordinateur, car les
    navigateurs ne prêtent pas le microphone à une page non chiffrée.
    Mot de passe : { $token }
no-listening-address = « { $given } » n’est pas une adresse d’écoute : donnez-en une en chiffres, comme 192.168.1.20, ou 0.0.0.0 pour toutes.
port-unusable = Le port { $port } de { $address } n’est pas disponible ({ $reason }) : prenez-en un autre.
no-page-language = La page ne parle pas « { $given } » : choisissez { LIST($known, "or") }.
token-too-short = Un mot de passe de { $count } caractères est trop court : il en faut au moins { $limit }.
token-first = Donnez d’abord le mot de passe : ouvrez { $address }, ou envoyez-le comme jeton « bearer ».
other-host = Ce serveur ne répond qu’à sa propre adresse : ouvrez celle qu’il a affichée au démarrage.
other-site = La requête vient d’un autre site : utilisez la page elle-même.
request-too-large = { $size } octets, c’est trop : { $limit } est la limite.
request-unfit =
    { $kind ->
        [missing] { $place } manque : indiquez-le.
        [greater_than_equal] { $place } est trop petit : { $limit } au moins.
        [less_than_equal] { $place } est trop grand : { $limit } au plus.
        [string_too_long] { $place } est trop long : { $limit } caractères au plus.
        [string_too_short] { $place } est trop court : { $limit } caractères au moins.
        [too_long] { $place } a trop d’entrées : { $limit } au plus.
        [too_short] { $place } a trop peu d’entrées : { $limit } au moins.
        [extra_forbidden] { $place } est inconnu ici : ne l’indiquez pas.
       *[other] { $place } est d’un genre qui n’est pas accepté ici : voir /api/openapi.json.
    }
no-such-address = Il n’y a rien à cette adresse.
address-refused = Ce n’est pas possible à cette adresse (HTTP { $status }).
upload-problem = { $file } : { $problem }
upload-empty = Le fichier est vide : exportez-le ou enregistrez-le de nouveau.
no-such-tune-in-book =
    { $count ->
        [one] Le recueil contient { $count } air, et pas d’air { $given } : choisissez-en un autre.
       *[other] Le recueil contient { $count } airs, et pas d’air { $given } : choisissez-en un autre.
    }
tune-facts-unfit = Ce qui est dit d’un air, ou de la façon de le lire, ne convient pas.
no-tune-yet = Il n’y a pas encore d’air : commencez par X:1 et terminez l’en-tête par K:.
chords-inferred = Le fichier n’a pas de chiffrage d’accords ; ceux entre parenthèses ont été déduits.
arrangement-first = premier
arrangement-copy = copie
staff-name =
    { $line ->
        [plain] simple
        [ornamented] orné
        [this] celui-ci
       *[other] autre
    }
no-figure-here = Il n’y a pas de figure « { $given } » ici : regardez l’arrangement de nouveau.
replace-needs-other = Pour remplacer une figure, indiquez aussi l’autre.
bend-needs-note = Pour hausser ou baisser une note, indiquez laquelle.
no-such-sound = Ce son n’existe plus : redemandez ce qu’il y a à entendre.
engraver-ended = La gravure a été interrompue, peut-être faute de mémoire : réessayez.
step-decided =
    { $kind ->
        [keep] garder « { $figure } »
        [release] libérer « { $figure } »
        [leave-out] laisser de côté « { $figure } »
        [replace] remplacer « { $figure } »
        [raise] hausser une note de « { $figure } »
       *[lower] baisser une note de « { $figure } »
    }
step-setting = modifier le réglage
too-many-jobs = { $waiting } travaux attendent déjà : réessayez quand quelques-uns seront finis.
no-such-job = Ce travail n’existe plus : relancez-le.
job-without-file = Le travail n’a pas produit de fichier : voyez où il en est.
job-files =
    { $count ->
        [one] { $count } fichier
       *[other] { $count } fichiers
    }
job-too-long =
    { $minutes ->
        [one] Le travail a duré plus de { $minutes } minute : demandez-en moins à la fois.
       *[other] Le travail a duré plus de { $minutes } minutes : demandez-en moins à la fois.
    }
job-failed = Le travail a échoué ({ $reason }) : l’affichage du serveur dit où.
job-died =
    { $how ->
        [signal] Le processus s’est arrêté avec le signal { $number }, peut-être faute de mémoire : réessayez, ou demandez-en moins à la fois.
       *[code] Le processus s’est arrêté avec le code { $number }, peut-être faute de mémoire : réessayez, ou demandez-en moins à la fois.
    }
plan-damaged =
    { $count ->
        [one] Le plan d’une leçon est abîmé ({ $count } défaut).
       *[other] Le plan d’une leçon est abîmé ({ $count } défauts).
    }
no-such-passage =
    { $count ->
        [one] La prise a { $count } passage, et pas de passage { $given }.
       *[other] La prise a { $count } passages, et pas de passage { $given }.
    }
report-damaged =
    { $count ->
        [one] Le compte rendu est abîmé ({ $count } défaut) : refaites la prise.
       *[other] Le compte rendu est abîmé ({ $count } défauts) : refaites la prise.
    }
take-facts-damaged =
    { $count ->
        [one] Les données d’une prise sont abîmées ({ $count } défaut).
       *[other] Les données d’une prise sont abîmées ({ $count } défauts).
    }
recording-gone = L’enregistrement n’est plus dans { $folder } : remettez-y { $name }, ou supprimez la prise.
beat-in-bar = mesure { $bar }, temps { NUMBER($beat, maximumFractionDigits: 2) }
sentence = { CAPITAL($words) }
