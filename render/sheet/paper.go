// Package sheet has what all sheets share: the sizes of paper and type, the
// heading, the foot, and the sequence of pages. Each folder below it lays out
// one kind of sheet: it decides what goes where, measures and wraps all type,
// and returns scenes that any backend can paint. It may import plan, words,
// scene and font.
package sheet

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Paper is a size of paper, in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
	Margin        float64
	Type
}

// Papers are the supported sizes. A sizes: ISO 216; Letter: ANSI/ASME Y14.1
// size A (8.5 × 11 in).
var Papers = []Paper{
	{"a3", 297, 420, 12, wallType},
	{"a4", 210, 297, 12, wallType},
	{"a5", 148, 210, 10, handType},
	{"letter", 215.9, 279.4, 12, wallType},
}

// FindPaper returns the paper with a name. The error lists the available ones.
func FindPaper(name string) (Paper, error) {
	i := slices.IndexFunc(Papers, func(p Paper) bool { return strings.EqualFold(p.Name, name) })
	if i < 0 {
		return Paper{}, fmt.Errorf("paper %q is not known; allowed: %s", name, strings.Join(PaperNames(), ", "))
	}
	return Papers[i], nil
}

// PaperNames lists the names of the papers.
func PaperNames() []string {
	names := make([]string, len(Papers))
	for i, p := range Papers {
		names[i] = p.Name
	}
	return names
}

// Landscape is the paper in landscape format.
func (p Paper) Landscape() Paper {
	p.Width, p.Height = max(p.Width, p.Height), min(p.Width, p.Height)
	return p
}

// Content is the width between the margins.
func (p Paper) Content() float64 { return p.Width - 2*p.Margin }

// Wide reports that the paper is in landscape format.
func (p Paper) Wide() bool { return p.Width > p.Height }

// Low reports that the paper is low as well, like landscape A5.
func (p Paper) Low() bool { return p.Height < 160 }

// Narrow reports that lines of words need a second line, as on A5.
func (p Paper) Narrow() bool { return p.Content() < 150 }

// Request is the paper and the language of a sheet.
type Request struct {
	Paper Paper
	Words *words.Catalogue
	// Missing records what does not fit; nil: not recorded.
	Missing *Missing
}

// Document combines the pages of a plan's sheet, and numbers them.
func Document(p plan.Plan, ask Request, pages []scene.Page) scene.Document {
	Count(pages)
	return scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language, Pages: pages}
}
