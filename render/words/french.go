package words

var french = Catalogue{
	Language: "fr",
	Name:     "Français",
	Sheet: Sheet{
		Card:         "fiche %s",
		Revision:     "rév. %s",
		Seen:         "vue : %s",
		Mirrored:     "image miroir",
		Asked:        "ordre %s, pas celui du fichier",
		DoneBy:       "Fait par",
		WrenchNumber: "Clé n°",
		Date:         "Date",
		CheckedBy:    "Contrôlé par",
		SignOnLast:   "Signer à la dernière page de cette fiche.",
		ManualFirst:  "Le manuel du constructeur, les règles locales et les pratiques agréées priment.",
	},
}
