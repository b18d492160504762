hint-not-earlier-takes = --out indique un autre dossier
