package lettered

import (
	"cmp"
	"fmt"
	"time"

	"drawdown/geometry"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// Seen is what was seen at a spot, in words.
type Seen struct {
	Spot
	What, By string
	At       time.Time
}

// Of gives findings and troubles their letters, in the order in which they come.
func Of(entries []run.Entry, c *words.Catalogue) []Seen {
	t := c.Page
	all := make([]Seen, len(entries))
	for i, e := range entries {
		what := t.Seen.Names[string(e.Found)]
		switch e.Act {
		case run.Report:
			what = t.Trouble.Names[string(e.Trouble)]
		case run.Unsure:
			what = t.Trouble.Names["unsure"]
		}
		photo := ""
		if e.Photo != "" {
			photo = fmt.Sprintf(c.Record.Photo, e.Photo[:min(8, len(e.Photo))])
		}
		all[i] = Seen{Spot: At(Letter(i), e.Place), What: words.Row(c.With(what, e.Note), photo), By: e.Who, At: e.Time}
	}
	return all
}

// Spots are the places of what was seen.
func Spots(seen []Seen) []Spot {
	all := make([]Spot, len(seen))
	for i, s := range seen {
		all[i] = s.Spot
	}
	return all
}

// List draws what was seen as a table under a heading, which may be empty; nothing where there is
// nothing. Times are printed in the zone.
func List(r *sheet.Run, title string, joint geometry.Joint, seen []Seen, c *words.Catalogue, zone *time.Location) {
	if len(seen) == 0 {
		return
	}
	columns := c.Page.Records.Columns
	t := sheet.Table{Columns: []sheet.Column{
		{Head: c.Record.Ref, Share: 0.9, Bold: true}, {Head: c.Record.Where, Share: 2}, {Head: c.Record.What, Share: 6}, {Head: columns["who"], Share: 1.2}, {Head: columns["when"], Share: 2.2},
	}}
	for _, s := range seen {
		t.Rows = append(t.Rows, sheet.Row{Words: []string{s.Letter, cmp.Or(s.Where(joint, c), c.Page.Seen.WholePart), s.What, s.By, s.At.In(zone).Format("2006-01-02\u00a015:04")}})
	}
	if title != "" {
		strong := r.Pen.Paper.Strong()
		r.Room(strong.Step + 6*r.Pen.Paper.Line) // a heading does not stand alone
		r.Set(strong, title)
		r.Y++
	}
	t.Draw(r)
}
