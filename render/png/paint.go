package png

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"slices"

	"github.com/fogleman/gg"
	xfont "golang.org/x/image/font"

	"drawdown/render/scene"
)

const (
	// bandRows is the height of a band. It is fixed, so that the output does
	// not depend on the machine.
	bandRows = 128
	// padRows are painted above a band and dropped: the rasterizer in gg rounds
	// coordinates below zero the wrong way.
	padRows    = 2
	bandMargin = 2 // how far beyond the band a line is kept, in pixels, in addition to its width
)

// painter paints a page band by band.
type painter struct {
	page    scene.Page
	width   int
	height  int
	perMM   float64
	rows    []rows // of each item
	canvas  *image.RGBA
	dc      *gg.Context
	top     int // the page row at the top of the canvas, including padRows
	letters typesetter
	colour  mapper
	edges   []edge      // of the current shape, kept to reuse memory
	under   *image.Gray // a picture to paint over; nil for none
}

// rows are the pixel rows that an item may touch, from first up to but not
// including end.
type rows struct{ first, end int }

func newPainter(page scene.Page, width, height int, perMM float64) *painter {
	p := &painter{page: page, width: width, height: height, perMM: perMM}
	p.letters = typesetter{faces: map[cut]xfont.Face{}, stencils: map[scene.Text]*image.Alpha{}}
	p.canvas = image.NewRGBA(image.Rect(0, 0, width, bandRows+padRows))
	p.dc = gg.NewContextForRGBA(p.canvas)
	p.dc.SetLineCapRound()
	p.dc.SetLineJoinRound()
	p.rows = make([]rows, len(page.Items))
	for i, it := range page.Items {
		p.rows[i] = p.extent(it)
	}
	return p
}

// paint paints the page rows from first to end, at most bandRows, and writes a
// palette index for each pixel, row by row with a filter byte in front.
func (p *painter) paint(first, end int, out []byte) {
	p.top = first - padRows
	p.blank()
	if p.under != nil {
		p.lay()
	}
	for i, it := range p.page.Items {
		if p.rows[i].end <= p.top || p.rows[i].first >= end {
			continue
		}
		switch it := it.(type) {
		case scene.Shape:
			p.shape(it)
		case scene.Text:
			p.text(it)
		}
	}
	p.colour.rows(out[:(end-first)*(p.width+1)], p.canvas.Pix[padRows*p.canvas.Stride:], p.width)
}

func (p *painter) shape(s scene.Shape) {
	path := outlines(s.Path, p.place)
	if s.Fill != scene.None {
		p.fill(path, rgba(s.Fill))
	}
	if s.Stroke != scene.None {
		p.stroke(path, rgba(s.Stroke), s.Width*p.perMM, s.Dash*p.perMM)
	}
}

func (p *painter) fill(path []outline, ink color.RGBA) {
	p.trace(path, bandMargin)
	p.edges = edges(p.edges[:0], path)
	for _, c := range cores(p.edges, p.canvas.Rect) {
		draw.Draw(p.canvas, c.Rectangle, image.NewUniform(ink), image.Point{}, draw.Src)
		p.cutOut(c)
	}
	p.dc.SetColor(ink)
	p.dc.Fill()
}

func (p *painter) stroke(path []outline, ink color.RGBA, width, dash float64) {
	margin := bandMargin + width
	p.dc.SetDash()
	if dash > 0 {
		p.dc.SetDash(dash, dash)
		margin = math.Inf(1) // the dashes depend on the whole line
	}
	p.dc.SetColor(ink)
	p.dc.SetLineWidth(width)
	// gg caps a closed line at its start, and where the caps overlap the line
	// its edge is painted twice. So a closed line starts in the middle of its
	// first piece, with butt ends that meet there.
	p.dc.SetLineCapButt()
	for _, o := range path {
		if o.closed && dash == 0 {
			p.loop(o.seen(-margin, bandRows+padRows+margin))
		}
	}
	p.dc.Stroke()
	p.dc.SetLineCapRound()
	p.trace(slices.DeleteFunc(slices.Clone(path), func(o outline) bool { return o.closed && dash == 0 }), margin)
	p.dc.Stroke()
}

func (p *painter) loop(run []scene.Point) {
	last := len(run) - 1
	if last > 0 && run[last] == run[0] {
		run = run[:last]
	}
	if len(run) < 2 {
		return
	}
	middle := scene.Point{X: (run[0].X + run[1].X) / 2, Y: (run[0].Y + run[1].Y) / 2}
	p.dc.MoveTo(middle.X, middle.Y)
	for i := range run {
		q := run[(i+1)%len(run)]
		p.dc.LineTo(q.X, q.Y)
	}
	p.dc.LineTo(middle.X, middle.Y)
}

func (p *painter) trace(path []outline, margin float64) {
	for _, o := range path {
		for i, q := range o.seen(-margin, bandRows+padRows+margin) {
			if i == 0 {
				p.dc.MoveTo(q.X, q.Y)
			} else {
				p.dc.LineTo(q.X, q.Y)
			}
		}
		if o.closed {
			p.dc.ClosePath()
		}
	}
}

// cutOut winds the path back around a core once, so that it is outside. Where
// the path winds around it twice, gg paints it again.
func (p *painter) cutOut(c core) {
	x1, y1, x2, y2 := float64(c.Min.X), float64(c.Min.Y), float64(c.Max.X), float64(c.Max.Y)
	if c.winding > 0 {
		y1, y2 = y2, y1
	}
	p.dc.MoveTo(x1, y1)
	p.dc.LineTo(x1, y2)
	p.dc.LineTo(x2, y2)
	p.dc.LineTo(x2, y1)
	p.dc.ClosePath()
}

func (p *painter) blank() {
	pix := p.canvas.Pix
	for i := range p.canvas.Stride {
		pix[i] = 255
	}
	for n := p.canvas.Stride; n < len(pix); n += p.canvas.Stride {
		copy(pix[n:], pix[:p.canvas.Stride])
	}
}

func (p *painter) place(q scene.Point) scene.Point {
	return scene.Point{X: q.X * p.perMM, Y: q.Y*p.perMM - float64(p.top)}
}

func (p *painter) text(t scene.Text) {
	if t.Ink == scene.None {
		return
	}
	ink := image.NewUniform(rgba(t.Ink))
	if !t.Upward {
		p.letters.line(p.canvas, ink, t, p.perMM, p.top)
		return
	}
	stencil := p.letters.stencil(t, p.perMM)
	at := stencil.Rect.Sub(image.Pt(0, p.top))
	draw.DrawMask(p.canvas, at, ink, image.Point{}, stencil, stencil.Rect.Min, draw.Over)
}

// highest and lowest are the extent of the letters above and below the
// baseline, in em (from the bounding box in the font's head table).
const highest, lowest = 1.13, 0.28

// extent limits the rows of an item, with a pixel or two to spare.
func (p *painter) extent(it scene.Item) rows {
	low, high := math.Inf(1), math.Inf(-1)
	switch it := it.(type) {
	case scene.Shape:
		for _, seg := range it.Path {
			for _, q := range seg.Points() {
				low, high = min(low, q.Y), max(high, q.Y)
			}
		}
		if it.Stroke != scene.None {
			low, high = low-it.Width/2, high+it.Width/2
		}
	case scene.Text:
		low, high = it.At.Y-it.Size*highest, it.At.Y+it.Size*lowest
		if it.Upward {
			low, high = it.At.Y-it.Width-it.Size, it.At.Y+it.Width+it.Size
		}
	}
	if low > high {
		return rows{}
	}
	return rows{int(math.Floor(low*p.perMM)) - 2, int(math.Ceil(high*p.perMM)) + 2}
}

func rgba(k scene.Ink) color.RGBA {
	r, g, b := k.RGB()
	return color.RGBA{R: r, G: g, B: b, A: 255}
}
