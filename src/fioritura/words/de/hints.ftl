hint-not-earlier-takes = --out nennt einen anderen Ordner
