hint-port-unusable = donnez un autre port avec --port, ou --port 0 pour n’importe quel port libre
