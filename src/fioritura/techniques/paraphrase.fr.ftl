back-phrasing = phrasé en arrière du temps
    .label = en arrière
    .text = Un groupe de notes part en retard et se resserre, si bien que la note où il mène arrive à sa place. S’il n’y a pas de silence avant lui, la note précédente est tenue pendant ce temps.
    .how = Tenir la note précédente comme si le temps ne comptait pas, puis dire les paroles de la phrase vers l’arrivée ; la pulsation continue dans le pied.
    .when = Dans les ballades et le swing médium, sur deux à huit notes qui mènent à un premier temps ou à une note plus longue sur le temps.
    .fault = Le tempo ralentit avec la phrase.
    .cure = Répéter la mesure en boucle sur une ligne de basse : chanter la phrase d’abord en place, puis en retard, en frappant chaque fois l’arrivée.

phrase-ahead = phrase avancée
    .label = avancée
    .text = Un groupe de notes vient une croche ou une double croche plus tôt, et la note plus longue qui le termine est tenue dès cet instant.
    .how = Respirer un temps plus tôt, accentuer légèrement la première note avancée et garder les valeurs telles que la mélodie les écrit.
    .when = Où deux à huit notes mènent d’un temps à une note plus longue et que la note précédente a du temps de reste.
    .fault = Le groupe est en avance, et pressé de surcroît.
    .cure = Frapper deux et quatre en jouant ; les notes avancées se placent exactement entre les temps.

octave-phrase = phrase à une autre octave
    .label = octave
    .text = Un geste qui répète ce que l’on vient d’entendre, ou lui répond, se joue une octave plus haut ou plus bas, note pour note.
    .how = Entendre la première note de la nouvelle octave avant de la jouer, et garder un son aussi rond qu’à l’octave précédente.
    .when = Sur une répétition, une marche ou une réponse qui reste dans la tessiture confortable et qu’une octave au plus sépare de ce qui l’entoure.
    .fault = La première note craque.
    .cure = Jouer seul le saut d’octave qui y mène, lié et doux, dix fois, puis le geste.

back-phrasing-why = Les { $count } notes qui mènent à la note { $where } partent { $late ->
    [eighth] une croche
   *[quarter] une noire
} plus tard et arrivent à temps{ $held ->
    [true] { " : la note précédente est tenue pendant ce temps" }
   *[false] {""}
}.
phrase-ahead-why = Les { $count } notes jusqu’à celle { $where } viennent { $value ->
    [eighth] une croche
   *[sixteenth] une double croche
} plus tôt, et cette note plus longue est tenue dès cet instant.
octave-phrase-why = { $kind ->
    [repeat] Ce que l’on a entendu { FORM($bar, "at") } revient
    [sequence] Le geste entendu { FORM($bar, "at") } revient sur d’autres notes
   *[answer] Le même rythme répond à ce que l’on a entendu { FORM($bar, "at") }
} : une octave plus { $direction ->
    [up] haut
   *[down] bas
}, c’est du neuf.
