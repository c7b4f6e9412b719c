package trace

import (
	"image"
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace/photo"
	"drawdown/geometry/unit"
)

// onPaper looks for the sheet, or the printed target, that the part lies on. It
// gives the frame of the camera, and hides what lies beyond the paper. Named
// corners that no edge runs between are taken as they are.
func (s Scale) onPaper(picture *image.Gray) (start, error) {
	w, h := s.WidthMm, s.HeightMm
	if !(w > 0 && h > 0) {
		return start{}, finding.Failed(NoRectangle, nil)
	}
	sheet, seen := s.sheet(picture)
	switch {
	case !seen && !s.cornersNamed():
		return start{}, finding.Failed(NoSheet, finding.Values{"of": s.lies()})
	case !seen:
		sheet = photo.Sheet{Corners: s.Corners}
	case !s.cornersNamed() && upright(sheet.Corners) != (h > w):
		w, h = h, w
	}
	frame, err := FromRectangle(sheet.Corners, w, h)
	if err != nil {
		return start{}, err
	}
	frame.lens = sheet.Lens
	if err := frame.check(picture.Rect.Size()); err != nil {
		return start{}, err
	}
	rim := paperShare * max(w, h)
	if s.Target {
		rim = photo.BandMm + clearMm
	}
	values := finding.Values{"width": unit.Length(w), "height": unit.Length(h)}
	if !seen {
		if plainAlong(picture, frame, w, h, rim) {
			picture = onSheet(picture, frame, w, h, rim)
		}
		off := lensShare * max(w, h)
		return start{picture: picture, frame: frame, from: finding.Noted(ScaleFromCorners, values), doubts: []finding.Finding{finding.Warned(Lens, finding.Values{"off": unit.Length(off)})}}, nil
	}
	values["barrel"], values["of"] = math.Abs(sheet.Lens.Barrel()), s.lies()
	made := start{picture: onSheet(picture, frame, w, h, rim), frame: frame, from: finding.Noted(ScaleFromSheet, values)}
	size := picture.Rect.Size()
	if off := sheet.OffPixels * frame.pixelMm(float64(size.X)/2, float64(size.Y)/2); off > crookedMm {
		made.doubts = append(made.doubts, finding.Warned(SheetCrooked, finding.Values{"off": unit.Length(off)}))
	}
	return made, nil
}

const (
	// lensShare of the sheet's length is how far a lens with 2 % of barrel moves a
	// place, where the sheet fills the photo (pinned from painted photos).
	lensShare  = 1.0 / 297
	paperShare = 0.0075 // of the sheet's length, along its rim, that is not looked at
	clearMm    = 1.5    // inside the band of a target
	crookedMm  = 0.15   // that the sides of a sheet may be off straight
)

// lies names what the part lies on.
func (s Scale) lies() string {
	if s.Target {
		return "target"
	}
	return "paper"
}

func (s Scale) cornersNamed() bool { return s.Corners != [4]geometry.Point{} }

func (s Scale) sheet(picture *image.Gray) (photo.Sheet, bool) {
	edge := photo.Paper
	if s.Target {
		edge = photo.Band
	}
	if !s.cornersNamed() {
		return photo.Find(picture, edge)
	}
	if !turnsRight(s.Corners) {
		return photo.Sheet{}, false
	}
	return photo.Near(picture, s.Corners, edge)
}

// upright reports whether a rectangle is higher than wide in the picture.
func upright(c [4]geometry.Point) bool {
	return c[0].Distance(c[3])+c[1].Distance(c[2]) > c[0].Distance(c[1])+c[3].Distance(c[2])
}

// onSheet returns a photo in which the paper under the part runs on to the rim of
// the picture, so that the bench round it is not taken for the part.
func onSheet(picture *image.Gray, frame Frame, width, height, rim float64) *image.Gray {
	out := image.NewGray(picture.Rect)
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			p := geometry.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}
			mm := frame.Mm(p.X, p.Y)
			in := geometry.Point{X: min(max(mm.X, rim), width-rim), Y: min(max(mm.Y, rim), height-rim)}
			if in != mm {
				p = frame.Pixel(in)
			}
			out.Pix[y*out.Stride+x] = levelNear(picture, p)
		}
	}
	return out
}

const (
	mostJump    = 24  // grey levels between places near to each other on plain paper
	alongSheet  = 400 // places looked at along each side
	patchPixels = 2   // on either side that one look takes in
)

// plainAlong reports whether no edge crosses the rim of the paper.
func plainAlong(picture *image.Gray, frame Frame, width, height, rim float64) bool {
	line := []geometry.Point{{X: rim, Y: height - rim}, {X: width - rim, Y: height - rim}, {X: width - rim, Y: rim}, {X: rim, Y: rim}}
	var last float64
	for i, a := range line {
		b := line[(i+1)%len(line)]
		for k := range alongSheet {
			p := frame.Pixel(a.Add(b.Sub(a).Scale(float64(k) / alongSheet)))
			level := 0.0
			for dy := -patchPixels; dy <= patchPixels; dy++ {
				for dx := -patchPixels; dx <= patchPixels; dx++ {
					level += float64(levelNear(picture, p.Add(geometry.Point{X: float64(dx), Y: float64(dy)})))
				}
			}
			level /= (2*patchPixels + 1) * (2*patchPixels + 1)
			if (i > 0 || k > 0) && math.Abs(level-last) > mostJump {
				return false
			}
			last = level
		}
	}
	return true
}

func levelNear(picture *image.Gray, p geometry.Point) uint8 {
	x := min(max(int(math.Floor(p.X)), 0), picture.Rect.Dx()-1)
	y := min(max(int(math.Floor(p.Y)), 0), picture.Rect.Dy()-1)
	return picture.Pix[y*picture.Stride+x]
}
