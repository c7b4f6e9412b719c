package book

import (
	"fmt"
	"strings"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/overhaul"
)

const (
	pictureGap    = 6.0
	pictureWidth  = 56.0 // at the least
	pictureHeight = 48.0

	// A part is drawn larger and then reduced, so that its marks are in
	// proportion; it has no words that could become too small.
	reduction = 0.45
)

func (b *binder) overview(run *sheet.Run, _ found) {
	sentence(run, b.w.OverviewSays)
	across := max(1, int((run.Pen.Paper.Content()+pictureGap)/(pictureWidth+pictureGap)))
	width := (run.Pen.Paper.Content() - pictureGap*float64(across-1)) / float64(across)
	for k, j := range b.o.Joints() {
		if k%across == 0 {
			if k > 0 {
				run.Y += pictureHeight + pictureGap
			}
			run.Room(pictureHeight)
		}
		b.picture(run.Pen, j, run.Pen.Left()+float64(k%across)*(width+pictureGap), run.Y, width)
	}
	run.Y += pictureHeight
}

// picture is one joint in a frame: number, title, what holds it, the part.
func (b *binder) picture(p *sheet.Pen, j overhaul.Joint, x, y, width float64) {
	p.Panel(x, y, width, pictureHeight, 1.5, scene.White, 0.4)
	p.Head(x+3, y+6, font.Fit(name(j), scene.Bold, p.Paper.HeadEm, width-6))
	p.Text(x+3, y+11, font.Fit(b.holds(j), scene.Regular, p.Paper.TextEm, width-6))
	p.Add(thumbnail(j, scene.Box{Left: x + 3, Top: y + 13, Right: x + width - 3, Bottom: y + pictureHeight - 3})...)
}

func thumbnail(j overhaul.Joint, box scene.Box) []scene.Item {
	large := scene.Box{Left: box.Left / reduction, Top: box.Top / reduction, Right: box.Right / reduction, Bottom: box.Bottom / reduction}
	drawing := diagram.Draw(diagram.Part{Plan: j.Bare(), Show: diagram.Blank, Box: large})
	return scene.Scaled(scene.Page{Items: drawing.Items}, 0, 0, reduction).Items
}

// holds says what holds a joint: 14 fasteners: M10×1.5, M8.
func (b *binder) holds(j overhaul.Joint) string {
	count := b.w.Fasteners.Of(len(j.Joint.Fasteners))
	var threads []string
	for _, k := range j.Kinds {
		if k.Thread != nil {
			threads = append(threads, b.ask.Words.Figure(k.ThreadName()))
		}
	}
	if len(threads) == 0 {
		return count
	}
	return fmt.Sprintf(b.ask.Words.Sheet.Named, count, strings.Join(threads, ", "))
}
