package trace

import (
	"cmp"
	"image"
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
	// Corners in pixels and the size of the rectangle that they are of; a
	// width of 0 for none.
	Corners           [4]geometry.Point
	WidthMm, HeightMm float64
}

// Trace finds what a picture shows, at the scale that is known of it. Where
// distances between holes are known it traces twice: to find the holes, then
// with the scale that they give.
func Trace(picture *image.Gray, scale Scale, options Options) (Found, error) {
	frame, from, off, err := scale.first()
	if err != nil {
		return Found{}, err
	}
	if scale.WidthMm > 0 {
		picture = onSheet(picture, scale.Corners)
	}
	found, err := Find(picture, frame, options)
	if err != nil {
		return Found{}, err
	}
	if slices.ContainsFunc(scale.Known, Known.byHoles) {
		distances, err := scale.between(found.Shapes)
		if err != nil {
			return Found{}, err
		}
		if frame, from, off, err = fromKnown(distances); err != nil {
			return Found{}, err
		}
		if found, err = Find(picture, frame, options); err != nil {
			return Found{}, err
		}
	}
	found.Scale, found.ScaleOffMm = from, off
	found.Doubts = append(found.Doubts, scale.doubts(found.PixelMm, off)...)
	return found, nil
}

// first finds the scale before any hole is known, and says where it comes from.
func (s Scale) first() (frame Frame, from finding.Finding, offMm float64, err error) {
	places := slices.DeleteFunc(slices.Clone(s.Known), Known.byHoles)
	switch {
	case s.WidthMm > 0:
		frame, err = FromRectangle(s.Corners, s.WidthMm, s.HeightMm)
		from = finding.Noted(ScaleFromCorners, finding.Values{"width": unit.Length(s.WidthMm), "height": unit.Length(s.HeightMm)})
		return frame, from, 0, err
	case len(places) > 0:
		return fromKnown(places)
	case s.NamedX > 0:
		return PerInch(s.NamedX, s.NamedY), finding.Noted(ScaleNamed, finding.Values{"resolution": resolution(s.NamedX, s.NamedY)}), 0, nil
	case s.FileX > 0:
		return PerInch(s.FileX, s.FileY), finding.Noted(ScaleFromFile, finding.Values{"resolution": resolution(s.FileX, s.FileY)}), 0, nil
	}
	lacks := NoScale
	if len(s.Known) > 0 { // between holes, which only a trace can tell apart
		lacks = NoRoughScale
	}
	return frame, from, 0, finding.Failed(lacks, finding.Values{"unbelieved": s.Unbelieved})
}

func fromKnown(distances []Known) (frame Frame, from finding.Finding, offMm float64, err error) {
	frame, offMm, err = FromKnown(distances)
	return frame, finding.Noted(ScaleFromKnown, finding.Values{"distances": len(distances)}), offMm, err
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
	// lensShare of the sheet's length is how far a lens with 2 % of barrel moves a
	// place, where the sheet fills the photo (pinned from painted photos).
	lensShare = 1.0 / 297
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
		doubts = append(doubts, finding.Warned(Lens, finding.Values{"off": unit.Length(lensShare * max(s.WidthMm, s.HeightMm))}))
	}
	measured := len(s.Known) > 0
	if !measured && s.WidthMm == 0 && s.NamedX > 0 && s.FileX > 0 && (differs(s.NamedX/s.FileX) || differs(s.NamedY/s.FileY)) {
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
