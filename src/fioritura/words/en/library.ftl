library-in-the-setting = “{ $name }” is given once now, in the setting: pass { $example }.
library-no-setting = { $given } is no setting: pass one such as { $example }.
library-one-tempo = Many tunes can’t share a tempo of { $given } quarter notes a minute: leave the tempo out of the setting, and each tune has its own.
library-no-workers = { $given } workers can’t do it: give 1 or more.
library-other-tune = What was played is not “{ $title }”: they agree to { $likeness } %. Give the tune that it is a version of.
library-tolerance = Tolerances of { $onset } seconds and { $pitch } cents make no sense: give 0 or more.
library-no-field = The notes have no field “{ $field }”: give an array with onset_sec and pitch.
