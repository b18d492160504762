hint-every-technique-refused = retirez-en une de --without
