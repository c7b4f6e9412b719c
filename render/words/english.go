package words

var english = Catalogue{
	Language: "en",
	Name:     "English",
	Sheet: Sheet{
		Card:     "card %s",
		Revision: "rev %s",
		Seen:     "seen %s",
		Mirrored: "mirror image",
		Asked:    "order %s, not the file’s own",

		DoneBy:       "Done by",
		WrenchNumber: "Wrench no.",
		Date:         "Date",
		CheckedBy:    "Checked by",
		SignOnLast:   "Sign on the last page of this card.",

		ManualFirst: "The maker’s manual, local codes and licensed practice come first.",
	},
}
