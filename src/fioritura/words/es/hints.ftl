hint-not-earlier-takes = --out indica otra carpeta
