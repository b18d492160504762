blue-third = Blue Third
    .label = Blue Third
    .text = Die kleine Terz vor der großen, in sie hinaufgezogen oder gebunden: Der Ton zwischen beiden ist es, den der Blues singt.
    .how = Die kleine Terz mit lockerem Kiefer greifen, dann binden; das Ziehen nimmt seine Zeit vom Ton, nicht vom Schlag.
    .when = Auf der Terz des Grundakkords, vor allem, wo sie lang ist oder eine Phrase beginnt.
    .fault = Es werden zwei saubere Töne daraus, wie eine Fingerübung.
    .cure = Das Ziehen auf einer Silbe singen, dann so langsam spielen, wie es gesungen war.

flat-fifth = verminderte Quinte im Durchgang
    .label = verminderte Quinte
    .text = Der Halbton zwischen Quinte und Quarte, unterwegs berührt.
    .how = In den Ton danach binden und sich auf die Quinte davor stützen.
    .when = Wo die Melodie von der Quinte zur Quarte oder zur Blue Third geht, eher abwärts als aufwärts.
    .fault = Die verminderte Quinte wird gehalten oder fällt auf einen Schlag und klingt falsch.
    .cure = Das Und laut zählen und sie nur dort spielen.

blue-drop = Blue Third über dem Grundton
    .label = Blue Drop
    .text = Die kleine Terz der Tonart, von oben vor den Grundton geschnippt.
    .how = Die Blue Note hart und kurz stoßen und fallen lassen.
    .when = Auf dem Grundton auf einem Schlag, am Ende eines Rufs oder seiner Antwort.
    .fault = Der Fall ist träge und der Grundton zu spät.
    .cure = Den Grundton auf den Schlag setzen; die Blue Note davor hinwerfen.

blue-third-why = Die Terz { $where } wird von der Blue Third aus hinaufgezogen.
flat-fifth-why = { $way ->
    [down] Von der Quinte abwärts: Die verminderte Quinte geht dazwischen durch.
   *[up] Von der Quarte zur Quinte hinauf: Die verminderte Quinte geht dazwischen durch.
}
blue-drop-why = Der Grundton auf einem Schlag: Die Blue Third fällt auf ihn.
