package scene

import (
	"errors"
	"fmt"
	"math"
)

// Limits for backends. Furthest is the largest page that a PDF viewer must
// accept (ISO 32000-1, annex C: 14,400 units of 1/72 in).
const (
	Furthest     = 5080.0 // mm, of a page side and of any coordinate
	ShortestDash = 0.1    // mm
	LargestType  = 1000.0 // mm, em
)

// Check reports whether a page can be painted: all figures are finite and
// within the limits, and every enumerated value exists.
func Check(p Page) error {
	if !(p.Width > 0 && p.Width <= Furthest && p.Height > 0 && p.Height <= Furthest) {
		return fmt.Errorf("page %q is %g × %g mm: each side must be above 0 and at most %g mm", p.Name, p.Width, p.Height, Furthest)
	}
	for i, photo := range p.Photos {
		if b := photo.Box; len(photo.JPEG) == 0 || !(b.Right > b.Left && b.Bottom > b.Top) {
			return fmt.Errorf("page %q, photo %d: it needs a JPEG and a box with a width and a height", p.Name, i+1)
		}
		if err := errors.Join(checkPoint(Point{photo.Box.Left, photo.Box.Top}), checkPoint(Point{photo.Box.Right, photo.Box.Bottom})); err != nil {
			return fmt.Errorf("page %q, photo %d: %w", p.Name, i+1, err)
		}
	}
	for i, it := range p.Items {
		var err error
		switch it := it.(type) {
		case Shape:
			err = checkShape(it)
		case Text:
			err = checkText(it)
		default:
			err = fmt.Errorf("an item is a Shape or a Text, not %T", it)
		}
		if err != nil {
			return fmt.Errorf("page %q, item %d: %w", p.Name, i+1, err)
		}
	}
	return nil
}

func checkShape(s Shape) error {
	if s.Fill >= Inks || s.Stroke >= Inks {
		return fmt.Errorf("fill %d and stroke %d: inks go from 0 to %d", s.Fill, s.Stroke, Inks-1)
	}
	if s.Stroke != None && !(s.Width > 0 && s.Width <= Furthest) {
		return fmt.Errorf("a stroke %g mm wide: it must be above 0 and at most %g mm", s.Width, Furthest)
	}
	if s.Dash != 0 && !(s.Dash >= ShortestDash && s.Dash <= Furthest) {
		return fmt.Errorf("dashes of %g mm: they must be 0 for a solid line, or from %g to %g mm", s.Dash, ShortestDash, Furthest)
	}
	return checkPath(s.Path)
}

func checkPath(p Path) error {
	for i, seg := range p {
		if seg.Verb > Close {
			return fmt.Errorf("segment %d has the unknown verb %d", i+1, seg.Verb)
		}
		if seg.Verb != Move && (i == 0 || p[i-1].Verb == Close) {
			return fmt.Errorf("segment %d: a sub-path must begin with a Move", i+1)
		}
		for _, q := range seg.Points() {
			if err := checkPoint(q); err != nil {
				return err
			}
		}
	}
	return nil
}

func checkText(t Text) error {
	switch {
	case t.Ink >= Inks:
		return fmt.Errorf("text %.40q has ink %d: inks go from 0 to %d", t.Content, t.Ink, Inks-1)
	case t.Weight > Bold:
		return fmt.Errorf("text %.40q has the unknown weight %d", t.Content, t.Weight)
	case t.Anchor > End:
		return fmt.Errorf("text %.40q has the unknown anchor %d", t.Content, t.Anchor)
	case !(t.Size > 0 && t.Size <= LargestType):
		return fmt.Errorf("text %.40q is set at %g mm: the em must be above 0 and at most %g mm", t.Content, t.Size, LargestType)
	case !(t.Width >= 0 && t.Width <= Furthest):
		return fmt.Errorf("text %.40q is %g mm wide: the width must be from 0 to %g mm", t.Content, t.Width, Furthest)
	}
	return checkPoint(t.At)
}

// checkPoint also rejects what is not finite: no comparison with NaN is true.
func checkPoint(q Point) error {
	if !(math.Abs(q.X) <= Furthest && math.Abs(q.Y) <= Furthest) {
		return fmt.Errorf("point (%g, %g) mm: coordinates must be from %g to %g mm", q.X, q.Y, -Furthest, Furthest)
	}
	return nil
}
