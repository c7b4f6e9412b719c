package sheet

import (
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Request says on which paper and in which language a sheet is wanted.
type Request struct {
	Paper Paper
	Words *words.Catalogue
}

// Document binds the pages of a plan's sheet, and counts them.
func Document(p plan.Plan, ask Request, pages []scene.Page) scene.Document {
	Count(pages)
	return scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language, Pages: pages}
}
