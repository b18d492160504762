plugin-left-out = El complemento { $plugin } se deja fuera: { $problem }.
plugin-not-loaded = no se puede cargar ({ $error })
plugin-no-module = { $given } no es un módulo: indique solo el módulo
