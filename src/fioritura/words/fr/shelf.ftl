no-shelf-archive = Ce n’est pas l’archive d’une étagère : choisissez-en une que la page de l’étagère a donnée.
archive-version = L’archive a la version { $given } ; { $known } peut être lue : mettez Fioritura à jour.
archive-damaged = L’archive est abîmée ({ $reason }) : exportez-la de nouveau.
archive-no-steps = il manque des étapes
archive-no-name = un élève n’a pas de nom
archive-no-arrangement = il manque l’arrangement d’une prise
archive-named-twice = un fichier est nommé deux fois
archive-words-long = un texte est trop long
archive-bad-content = L’archive contient un arrangement, un compte rendu ou un plan abîmé ({ $reason }) : exportez-la de nouveau.
archive-too-large = L’archive contient { $files } fichiers de { $size } octets ; { $limit } est la limite : exportez moins d’airs.
archive-entry-too-large = { $name } dans l’archive dépasse { $limit } octets : exportez-la de nouveau.
shelf-folder-unmade = { $path } ne peut être créé ({ $reason }) : nommez un autre dossier pour l’étagère.
shelf-unopened = { $path } ne peut être ouvert ({ $reason }) : déplacez-le ou nommez un autre dossier.
shelf-unwritable = L’étagère { $path } ne peut être écrite ({ $reason }) : vérifiez la place et les droits.
not-on-shelf = { $kind ->
    [tune] Il n’y a pas d’air { $number } sur l’étagère : choisissez dans la liste.
    [arrangement] Il n’y a pas d’arrangement { $number } sur l’étagère : choisissez dans la liste.
    [student] Il n’y a pas d’élève { $number } sur l’étagère : choisissez dans la liste.
    [take] Il n’y a pas de prise { $number } sur l’étagère : choisissez dans la liste.
    [lesson] Il n’y a pas de leçon { $number } sur l’étagère : choisissez dans la liste.
   *[other] Il n’y a rien de numéro { $number } sur l’étagère : choisissez dans la liste.
}
shelf-full-of-lessons = L’étagère contient { $limit } leçons, c’est la limite : retirez-en d’abord.
lesson-changed-elsewhere = La leçon a été modifiée ailleurs (révision { $stands }, non { $given }) : regardez-la de nouveau.
recording-unreadable = Ce n’est pas un enregistrement lisible ({ $reason }) : enregistrez-le en WAV, FLAC, MP3 ou OGG.
recording-type = Un enregistrement de type { $given } n’est pas pris : enregistrez-le en WAV, FLAC, MP3 ou OGG.
recording-rate = Une fréquence de { $given } Hz est hors de { $low } à { $high } Hz : enregistrez à 44100 Hz.
recording-channels = { $given } canaux, c’est trop : enregistrez en mono ou en stéréo.
recording-too-short = L’enregistrement dure { $seconds } secondes : enregistrez l’air, ou une phrase.
recording-too-long = L’enregistrement dépasse { $limit } minutes : enregistrez un air à la fois.
shelf-version = L’étagère a la version { $given } ; { $known } peut être lue : mettez Fioritura à jour, ou nommez un autre dossier.
tune-needs-title = Un air a besoin d’un titre : donnez-lui-en un.
only-arrangement = C’est le seul arrangement de cet air : retirez l’air, ou copiez l’arrangement d’abord.
nothing-to-undo = Il n’y a rien à annuler ici.
nothing-to-redo = Il n’y a rien à rétablir ici.
arrangement-changed-elsewhere = L’arrangement a été modifié ailleurs (étape { $stands }, non { $given }) : regardez-le de nouveau.
no-such-step = L’arrangement { $arrangement } n’a pas d’étape { $step } : regardez-le de nouveau.
too-many-tags = { $count } étiquettes, c’est trop : { $limit } est la limite.
tag-too-long = L’étiquette « { $tag }… » a { $count } lettres : { $limit } est la limite.
shelf-full-of-students = L’étagère compte { $limit } élèves, c’est la limite : retirez-en d’abord.
student-needs-name = Un élève a besoin d’un nom : un prénom ou des initiales suffisent.
name-too-long = Le nom a { $count } lettres : { $limit } est la limite.
student-name-taken = Il y a déjà un élève « { $name } » : ajoutez une initiale pour les distinguer.
take-gone = Cette prise n’est plus sur l’étagère : choisissez dans la liste.
