// Package target lays out the sheet that a part is photographed on: a dark band
// with room for the part inside, by which a trace finds the scale, the perspective
// and the lens. It may import the sizes of the band, scene, words and what sheets
// share.
package target

import (
	"fmt"

	"drawdown/geometry/trace/photo"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
)

const (
	firstLine = 8.0 // from the band to the line below it: no sign may look like its edge
	barAbove  = 1.0 // of the bar above the line beside it
	nextLine  = 5.5 // from there to the next
)

// Document lays out the sheet, in landscape format.
func Document(ask sheet.Request) scene.Document {
	name := ask.Paper.Name
	p := &sheet.Pen{Paper: ask.Paper.Landscape(), Words: ask.Words}
	w := ask.Words.Target
	width, height := photo.TargetSize(p.Paper.Width, p.Paper.Height)
	left, top, bottom := photo.MarginMm, photo.MarginMm, photo.MarginMm+height
	band(p, left, top, width, height)
	y := bottom + firstLine
	mm := func(v float64) string { return ask.Words.Figure(fmt.Sprintf("%.4g", v)) }
	bar := left + width - tile.BarMm
	p.Head(left, y, font.Fit(w.Title, scene.Bold, p.Paper.HeadEm, bar-left-20))
	p.Add(tile.Bar(bar, y-barAbove, 1, 0, tile.BarMm))
	p.Write(bar-2, y, p.Paper.TextEm, scene.Regular, scene.End, scene.Black, fmt.Sprintf("%.0f mm", tile.BarMm))
	y += nextLine
	for _, words := range []string{fmt.Sprintf(w.Print, tile.BarMm, mm(width), mm(height)), w.Lay, fmt.Sprintf(w.Trace, name)} {
		y = p.Lines(left, y, p.Paper.BreakText(words, width))
	}
	page := scene.Page{Name: name, Width: p.Paper.Width, Height: p.Paper.Height, Margin: p.Paper.Margin, Items: p.Items}
	return scene.Document{Title: w.Title, Language: ask.Words.Language, Pages: []scene.Page{page}}
}

// band draws the dark frame.
func band(p *sheet.Pen, left, top, width, height float64) {
	const side = photo.BandMm
	p.Panel(left, top, width, height, 0, scene.Black, 0)
	p.Panel(left+side, top+side, width-2*side, height-2*side, 0, scene.White, 0)
}
