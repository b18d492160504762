hint-port-unusable = mit --port einen anderen angeben, mit --port 0 irgendeinen freien
