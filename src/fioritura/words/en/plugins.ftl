plugin-left-out = The plugin { $plugin } is left out: { $problem }.
plugin-not-loaded = it can't be loaded ({ $error })
plugin-no-module = { $given } is no module: name the module alone
