library-in-the-setting = „{ $name }“ wird jetzt nur einmal angegeben, in der Einstellung: { $example } übergeben.
library-no-setting = { $given } ist keine Einstellung: eine wie { $example } übergeben.
library-one-tempo = Viele Stücke können kein gemeinsames Tempo von { $given } Vierteln in der Minute haben: das Tempo in der Einstellung weglassen, dann hat jedes Stück sein eigenes.
library-no-workers = Mit { $given } Prozessen geht es nicht: 1 oder mehr angeben.
library-other-tune = Gespielt wurde nicht „{ $title }“: die Übereinstimmung beträgt { $likeness } %. Das Stück angeben, von dem es eine Fassung ist.
library-tolerance = Toleranzen von { $onset } Sekunden und { $pitch } Cent sind nicht möglich: 0 oder mehr angeben.
library-no-field = Die Noten haben kein Feld „{ $field }“: ein Array mit onset_sec und pitch angeben.
