hint-every-technique-refused = eine aus --without weglassen
