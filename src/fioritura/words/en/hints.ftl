hint-every-technique-refused = leave one out of --without
