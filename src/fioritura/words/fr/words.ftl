list-comma = { $first }, { $last }
list-and = { $first } et { $last }
list-or = { $first } ou { $last }
list-semicolon = { $first } ; { $rest }
no-such-language = Pas de langue « { $given } » : choisissez { LIST($known, "or") }.

# Mises en garde, en un seul lieu pour chaque feuille et chaque écran.

care-hearing = Ouïe : réglez le volume bas avant de lancer la lecture, surtout au casque. Une heure de jeu fort dans une petite pièce demande des protections auditives et une pause.
    .short = Réglez le volume bas avant de lancer la lecture, surtout au casque ; montez-le ensuite.
care-pain = Douleur : les ornements sont petits, rapides et répétés. Reposez-vous après dix minutes sur la même figure, secouez les mains, relâchez la mâchoire et arrêtez quand cela fait mal ; une douleur qui persiste est l’affaire du médecin.
    .short = Reposez-vous après dix minutes sur la même figure, et arrêtez quand cela fait mal.
care-rights = Droits : arranger une mélodie protégée et partager l’arrangement demande une autorisation. La loi du lieu décide ; demandez avant de copier ou de publier.
    .short = L’arrangement d’une mélodie protégée ne se partage qu’avec une autorisation : la loi du lieu décide.
