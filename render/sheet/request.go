package sheet

import "drawdown/render/words"

// Request says on which paper and in which language a sheet is wanted.
type Request struct {
	Paper Paper
	Words *words.Catalogue
}
