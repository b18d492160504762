plugin-left-out = Le greffon { $plugin } est laissé de côté : { $problem }.
plugin-not-loaded = impossible de le charger ({ $error })
plugin-no-module = { $given } n’est pas un module : indiquez le module seul
