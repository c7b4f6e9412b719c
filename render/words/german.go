package words

var german = Catalogue{
	Language: "de",
	Name:     "Deutsch",
	Sheet: Sheet{
		Card:         "Karte %s",
		Revision:     "Rev. %s",
		Seen:         "Ansicht: %s",
		Mirrored:     "Spiegelbild",
		Asked:        "Reihenfolge %s, nicht die der Datei",
		DoneBy:       "Ausgeführt",
		WrenchNumber: "Schlüssel Nr.",
		Date:         "Datum",
		CheckedBy:    "Geprüft",
		SignOnLast:   "Unterschrift auf der letzten Seite dieser Karte.",
		ManualFirst:  "Herstellerhandbuch, örtliche Vorschriften und Fachbetrieb gehen vor.",
	},
}
