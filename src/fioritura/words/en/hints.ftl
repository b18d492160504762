hint-port-unusable = another --port, or --port 0 for any that is free
