hint-not-earlier-takes = --out names another folder
