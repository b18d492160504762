delay = Verspäten mit gedrängtem Anlauf
    .label = spät
    .text = Später beginnen und die Noten vor einem Ziel im halben Wert spielen: Das Ziel behält seinen Schlag.
    .how = Die Pause zählen, dann an die Zielnote denken; die kurzen Noten führen zu ihr.
    .when = Bei ein bis vier Noten, die zu einem schweren Schlag führen, in einem Tempo, das die halben Werte zulässt.
    .fault = Auch das Ziel kommt zu spät.
    .cure = Den Zielschlag klatschen und die kurzen Noten singen; dann zu einem Schlagzeug spielen.

suspension = Vorhalt von oben
    .label = Vorhalt
    .text = Die vorige Note wird über den Schlag gehalten und löst sich dann schrittweise abwärts in die Melodienote auf.
    .how = Binden; sich mit der Luft auf die gehaltene Note lehnen und in die Auflösung entspannen.
    .when = Wo die Melodie schrittweise auf eine lange Akkordnote auf dem Schlag fällt.
    .fault = Die Auflösung wird angestoßen und ist laut.
    .cure = Als Seufzer spielen: laut auf dem Schlag, danach leise.

retardation = Vorhalt von unten
    .label = Vorhalt auf
    .text = Die vorige Note wird über den Schlag gehalten und löst sich dann schrittweise aufwärts in die Melodienote auf.
    .how = Binden, mit einem kleinen Schwellen in die Auflösung.
    .when = Wo die Melodie schrittweise zu einer langen Akkordnote auf dem Schlag steigt, vor allem am Schluss.
    .fault = Er eilt.
    .cure = Den Schlag laut unterteilen und genau auf der Unterteilung auflösen.

delay-why = { $count ->
    [one] Die Note beginnt später und nimmt
   *[other] Diese { $count } Noten beginnen später und nehmen
} die halbe Zeit, damit das Ziel auf dem nächsten schweren Schlag an seinem Platz ist.
suspension-why = Die Melodie fällt schrittweise auf eine Akkordnote: Die vorige, dem Akkord fremde Note wird gehalten und fällt verspätet.
retardation-why = Die Melodie steigt schrittweise zu einer Akkordnote: Die vorige, dem Akkord fremde Note wird gehalten und steigt verspätet.
