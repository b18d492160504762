list-comma = { $first }, { $last }
list-and = { $first } und { $last }
list-or = { $first } oder { $last }
list-semicolon = { $first }; { $rest }
no-such-language = Eine Sprache „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.

# Warnungen, an einer Stelle für jedes Blatt und jeden Bildschirm.

care-hearing = Gehör: Die Lautstärke niedrig einstellen, bevor die Wiedergabe beginnt, vor allem mit Kopfhörern. Eine Stunde lautes Spiel in einem kleinen Raum verlangt Gehörschutz und eine Pause.
    .short = Die Lautstärke vor der Wiedergabe niedrig einstellen, vor allem mit Kopfhörern; dann lauter drehen.
care-pain = Schmerz: Verzierungen sind klein, schnell und wiederholt. Nach zehn Minuten an derselben Figur ruhen, Hände ausschütteln, den Kiefer lockern und aufhören, wenn es wehtut; bleibender Schmerz gehört in ärztliche Hände.
    .short = Nach zehn Minuten an derselben Figur ruhen und aufhören, wenn es wehtut.
care-rights = Rechte: Die Bearbeitung einer geschützten Melodie darf nur mit Erlaubnis entstehen und geteilt werden. Es gilt das Recht vor Ort; vor dem Kopieren oder Veröffentlichen fragen.
    .short = Die Bearbeitung einer geschützten Melodie darf nur mit Erlaubnis geteilt werden: Es gilt das Recht vor Ort.
