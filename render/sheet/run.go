package sheet

import (
	"strconv"

	"drawdown/render/scene"
	"drawdown/render/words"
)

// Run is the sequence of a sheet's pages under construction: the current page,
// and its free space. Every page has the same heading and foot.
type Run struct {
	Pen       *Pen
	Y, Bottom float64 // free space of the current page
	Close     bool    // less white in tables, if that saves a page

	paper   Paper
	words   *words.Catalogue
	heading Heading
	foot    Foot
	leaves  []*Pen
	top     float64 // of the free space of an empty page
}

// NewRun starts a run with its first page.
func NewRun(paper Paper, w *words.Catalogue, heading Heading, foot Foot) *Run {
	r := &Run{paper: paper, words: w, heading: heading, foot: foot}
	r.Turn()
	return r
}

// Turn starts a new page with the heading.
func (r *Run) Turn() {
	r.Pen = &Pen{Paper: r.paper, Words: r.words}
	r.leaves = append(r.leaves, r.Pen)
	r.top = r.heading.Draw(r.Pen) + 2
	r.Y = r.top
	r.Bottom = r.paper.Height - r.paper.Margin - r.foot.Height(r.paper) - 2
}

// Fresh reports that the current page has nothing but its heading.
func (r *Run) Fresh() bool { return r.Y == r.top }

// Room starts a new page if a height does not fit.
func (r *Run) Room(height float64) {
	if r.Bottom-r.Y < height {
		r.Turn()
	}
}

// Length is the number of pages started.
func (r *Run) Length() int { return len(r.leaves) }

// Scant reports that a run of several pages ends on a nearly empty one.
func (r *Run) Scant() bool {
	return len(r.leaves) > 1 && r.Y-r.top < 0.25*(r.Bottom-r.top)
}

// Sentence sets a running text over the full width, continuing on further pages
// if necessary.
func (r *Run) Sentence(words string) { r.Set(r.paper.Plain(), words) }

// Set does the same in a style.
func (r *Run) Set(s Style, words string) {
	for _, line := range s.Lines(words, r.Pen.Paper.Content()) {
		r.Room(s.Step)
		s.Set(r.Pen, r.Pen.Left(), r.Y+s.Step-1, []string{line})
		r.Y += s.Step
	}
}

// Pages ends the run: it draws the feet and returns the pages, named in file
// names after the sheet: tighten, tighten-2. A bookmark leads to the first.
// They do not have their page count yet, which depends on the document: see
// Count.
func (r *Run) Pages(name string) []scene.Page {
	var pages []scene.Page
	for k, p := range r.leaves {
		r.foot.draw(p, k == len(r.leaves)-1)
		page := scene.Page{Name: name, Width: r.paper.Width, Height: r.paper.Height, Margin: r.paper.Margin, Items: p.Items, Photos: p.Photos}
		if k > 0 {
			page.Name += "-" + strconv.Itoa(k+1)
		}
		pages = append(pages, page)
	}
	pages[0].Bookmarks = []scene.Bookmark{{Title: r.heading.bookmark(r.words)}}
	return pages
}
