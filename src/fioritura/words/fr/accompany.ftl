no-bar-range = « { $given } » n’est pas une suite de mesures : écrivez la première et la dernière, comme 5-8.
bars-not-there = Il n’y a pas de mesures { $first } à { $last } : l’air va de { $low } à { $high }.
too-few-choruses = { $choruses } chorus avec { $bars } mesures de décompte, c’est impossible : au moins 1 et 0.
too-many-bars = { $bars } mesures, c’est trop ; { $limit } est la limite : prenez moins de chorus.
no-full-bar = « { $title } » n’a pas de mesure complète : il en faut au moins une à un orchestre.
feel-not-in-metre = { $feel } ne se joue pas à { $metre } : choisissez { LIST($fitting, "or") }.
