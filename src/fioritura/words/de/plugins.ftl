plugin-left-out = Das Plugin { $plugin } wird ausgelassen: { $problem }.
plugin-not-loaded = es lässt sich nicht laden ({ $error })
plugin-no-module = { $given } ist kein Modul: nur das Modul angeben
