package words

var spanish = Catalogue{
	Language: "es",
	Name:     "Español",
	Sheet: Sheet{
		Card:         "ficha %s",
		Revision:     "rev. %s",
		Seen:         "vista: %s",
		Mirrored:     "imagen especular",
		Asked:        "orden %s, no el del archivo",
		DoneBy:       "Hecho por",
		WrenchNumber: "Llave n.º",
		Date:         "Fecha",
		CheckedBy:    "Comprobado por",
		SignOnLast:   "Firmar en la última página de esta ficha.",
		ManualFirst:  "El manual del fabricante, las normas locales y el oficio con licencia van primero.",
	},
}
