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
	pictureGap   = 6.0
	pictureWidth = 56.0 // least width
	leastPicture = 42.0 // the height, if that saves a page
	mostPicture  = 48.0

	// A part is drawn larger and then reduced, so that its marks are in
	// proportion; it has no words that could become too small.
	reduction = 0.45
)

func (b *binder) overview(run *sheet.Run, _ found) {
	sentence(run, b.w.OverviewSays)
	across := max(1, int((run.Pen.Paper.Content()+pictureGap)/(pictureWidth+pictureGap)))
	width := (run.Pen.Paper.Content() - pictureGap*float64(across-1)) / float64(across)
	joints := b.o.Joints()
	height := pictureHeight(run.Bottom-run.Y, (len(joints)+across-1)/across)
	for k, j := range joints {
		if k%across == 0 {
			if k > 0 {
				run.Y += height + pictureGap
			}
			run.Room(height)
		}
		at := scene.Box{Left: run.Pen.Left() + float64(k%across)*(width+pictureGap), Top: run.Y}
		at.Right, at.Bottom = at.Left+width, at.Top+height
		b.picture(run.Pen, j, at)
	}
	run.Y += height
}

// pictureHeight is the height of a picture in a number of rows: lower if that
// saves a page.
func pictureHeight(page float64, rows int) float64 {
	on := func(height float64) int { return max(1, int((page+pictureGap)/(height+pictureGap))) }
	if least := on(leastPicture); (rows+least-1)/least < (rows+on(mostPicture)-1)/on(mostPicture) {
		return (page+pictureGap)/float64(least) - pictureGap - 0.01 // against rounding
	}
	return mostPicture
}

// picture is one joint in a frame: number, title, fasteners, and the part.
func (b *binder) picture(p *sheet.Pen, j overhaul.Joint, at scene.Box) {
	p.Panel(at.Left, at.Top, at.Width(), at.Height(), 1.5, scene.White, 0.4)
	p.Head(at.Left+3, at.Top+6, font.Fit(name(j), scene.Bold, p.Paper.HeadEm, at.Width()-6))
	p.Text(at.Left+3, at.Top+11, font.Fit(b.holds(j), scene.Regular, p.Paper.TextEm, at.Width()-6))
	p.Add(thumbnail(j, scene.Box{Left: at.Left + 3, Top: at.Top + 13, Right: at.Right - 3, Bottom: at.Bottom - 3})...)
}

func thumbnail(j overhaul.Joint, box scene.Box) []scene.Item {
	large := scene.Box{Left: box.Left / reduction, Top: box.Top / reduction, Right: box.Right / reduction, Bottom: box.Bottom / reduction}
	drawing := diagram.Draw(diagram.Part{Plan: j.Bare(), Show: diagram.Blank, Box: large})
	return scene.Scaled(scene.Page{Items: drawing.Items}, 0, 0, reduction).Items
}

// holds lists the fasteners of a joint: 14 fasteners: M10×1.5, M8.
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
