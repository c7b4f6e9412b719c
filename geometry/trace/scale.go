package trace

import (
	"cmp"
	"image"
	"maps"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Scale is what is known of the size of the pixels. What was measured goes
// before what was stated, and that before what the file says.
type Scale struct {
	NamedX, NamedY float64 // dots per inch across and down, by who asks; 0 for none
	FileX, FileY   float64 // those that the file states
	// Unbelieved is a resolution in the file that cameras and screens put in
	// unasked; 0 for none.
	Unbelieved float64
	Known      []Known
	// WidthMm and HeightMm are the size of the sheet in a photo; 0 for none.
	WidthMm, HeightMm float64
	// Corners are those of the sheet, in pixels; zero to look for them.
	Corners [4]geometry.Point
	// Target says that the sheet is the dark band of a printed target.
	Target bool
}

// Trace finds what a picture shows, at the scale that is known of it. Where
// distances between holes are known it traces twice: to find the holes, then
// with the scale that they give.
func Trace(picture *image.Gray, scale Scale, options Options) (Found, error) {
	from, err := scale.first(picture)
	if err != nil {
		return Found{}, err
	}
	found, err := Find(from.picture, from.frame, options)
	if err != nil {
		return Found{}, err
	}
	if slices.ContainsFunc(scale.Known, Known.byHoles) {
		distances, err := scale.between(found.Shapes)
		if err != nil {
			return Found{}, err
		}
		if from, err = from.by(distances, scale.WidthMm > 0); err != nil {
			return Found{}, err
		}
		if found, err = Find(from.picture, from.frame, options); err != nil {
			return Found{}, err
		}
	}
	found.Scale, found.ScaleOffMm = from.from, from.offMm
	found.Doubts = append(append(found.Doubts, from.doubts...), scale.doubts(found.PixelMm, from.offMm)...)
	return found, nil
}

// start is the picture to look at and its scale, and where that comes from.
type start struct {
	picture *image.Gray
	frame   Frame
	from    finding.Finding
	offMm   float64 // that the worst known distance is missed by
	doubts  []finding.Finding
}

// first finds the scale before any hole is known.
func (s Scale) first(picture *image.Gray) (start, error) {
	places := slices.DeleteFunc(slices.Clone(s.Known), Known.byHoles)
	made := start{picture: picture}
	switch {
	case s.WidthMm > 0:
		made, err := s.onPaper(picture)
		if err == nil && len(places) > 0 {
			return made.by(places, true)
		}
		return made, err
	case len(places) > 0:
		return made.by(places, false)
	case s.NamedX > 0:
		made.frame, made.from = PerInch(s.NamedX, s.NamedY), finding.Noted(ScaleNamed, finding.Values{"resolution": resolution(s.NamedX, s.NamedY)})
		return made, nil
	case s.FileX > 0:
		made.frame, made.from = PerInch(s.FileX, s.FileY), finding.Noted(ScaleFromFile, finding.Values{"resolution": resolution(s.FileX, s.FileY)})
		return made, nil
	}
	lacks := NoScale
	if len(s.Known) > 0 { // between holes, which only a trace can tell apart
		lacks = NoRoughScale
	}
	return made, finding.Failed(lacks, finding.Values{"unbelieved": s.Unbelieved})
}

// by is the scale that known distances give: of a photo, they stretch the paper.
func (made start) by(distances []Known, onPaper bool) (start, error) {
	var err error
	if !onPaper {
		made.frame, made.offMm, err = FromKnown(distances)
		made.from = finding.Noted(ScaleFromKnown, finding.Values{"distances": len(distances)})
		return made, err
	}
	before := made.frame
	made.frame, made.offMm, err = FromKnownOn(before, distances)
	size := made.picture.Rect.Size()
	x, y := float64(size.X)/2, float64(size.Y)/2
	if times := made.frame.pixelMm(x, y) / before.pixelMm(x, y); err == nil && differs(times) {
		made.doubts = append(made.doubts, finding.Warned(OtherSheet, finding.Values{"times": times}))
	}
	made.from.Values = maps.Clone(made.from.Values)
	made.from.Values["distances"] = len(distances)
	return made, err
}

// between puts the places of holes in for their ids.
func (s Scale) between(shapes []Shape) ([]Known, error) {
	at := map[string]geometry.Point{}
	var ids []string
	for _, shape := range shapes {
		if shape.Round() {
			at[shape.ID] = shape.Pixel
			ids = append(ids, shape.ID)
		}
	}
	var distances []Known
	for _, k := range s.Known {
		if k.byHoles() {
			for _, id := range []string{k.FromID, k.ToID} {
				if _, ok := at[id]; !ok {
					return nil, finding.Failed(NoHole, finding.Values{"hole": id, "allowed": ids})
				}
			}
			k.From, k.To = at[k.FromID], at[k.ToID]
		}
		distances = append(distances, k)
	}
	return distances, nil
}

const (
	// plausibleShare is how far a scanner may be off what its file states.
	plausibleShare = 0.02
	// agreeingMm is how far known distances may miss each other.
	agreeingMm = 0.1
)

// doubts holds known distances against the resolution that was stated, and
// against each other: a slip of the caliper would make every place wrong.
func (s Scale) doubts(pixelMm, offMm float64) []finding.Finding {
	var doubts []finding.Finding
	if offMm > agreeingMm {
		doubts = append(doubts, finding.Warned(KnownDiffer, finding.Values{"off": unit.Length(offMm)}))
	}
	if s.WidthMm > 0 {
		return doubts
	}
	measured := len(s.Known) > 0
	if !measured && s.NamedX > 0 && s.FileX > 0 && (differs(s.NamedX/s.FileX) || differs(s.NamedY/s.FileY)) {
		doubts = append(doubts, finding.Warned(OtherStated, finding.Values{
			"stated": resolution(s.FileX, s.FileY), "named": resolution(s.NamedX, s.NamedY), "times": s.FileX / s.NamedX,
		}))
	}
	stated := cmp.Or(s.NamedX, s.FileX)
	if times := pixelMm * stated / mmPerInch; measured && stated > 0 && differs(times) {
		doubts = append(doubts, finding.Warned(OtherKnown, finding.Values{"times": times, "stated": resolution(stated, stated)}))
	}
	return doubts
}

func differs(times float64) bool { return math.Abs(times-1) > plausibleShare }

// resolution is dots per inch, across and down where the two differ.
func resolution(x, y float64) finding.Finding {
	if x == y {
		y = 0
	}
	return finding.Noted(Resolution, finding.Values{"across": x, "down": y})
}
