hint-every-technique-refused = quite una de --without
