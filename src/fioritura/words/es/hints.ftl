hint-port-unusable = dé otro puerto con --port, o --port 0 para cualquiera que esté libre
