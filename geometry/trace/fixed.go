package trace

import (
	"cmp"
	"image"
	"math"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace/fixes"
	"drawdown/geometry/trace/rings"
)

// fix applies the corrections of a person. Ids stay as they were, so that those on
// an earlier proof still hold; what becomes a bolt gets the next free number.
func (f *Found) fix(by fixes.Fixes, rule holes.Rule, picture *image.Gray) error {
	for _, take := range by.Takes {
		i, err := f.named(take.Place)
		if err != nil {
			return err
		}
		f.take(i, take.Use)
	}
	for _, add := range by.Adds {
		f.Shapes = append(f.Shapes, f.added(add, picture))
		f.take(len(f.Shapes)-1, add.Use)
	}
	for _, size := range by.Sizes {
		i, err := f.named(size.Place)
		if err != nil {
			return err
		}
		f.Shapes[i].DiameterMm, f.Shapes[i].Doubts = size.DiameterMm, nil
		f.regroup(i, 0.05) // what a person measured is kept to a tenth
	}
	for _, place := range by.Drop {
		i, err := f.named(place)
		if err != nil {
			return err
		}
		f.Shapes[i].dropped = true
	}
	f.leaveOut()
	f.inOrder()
	if n := by.Count(); n > 0 {
		f.Taken = append(f.taken(rule), finding.Noted(Fixed, finding.Values{"fixes": n}))
	}
	return nil
}

// leaveOut takes what a person dropped out of the shapes.
func (f *Found) leaveOut() {
	f.Dropped = keep(f.Shapes, func(i int) bool { return f.Shapes[i].dropped })
	for i := range f.Dropped {
		f.Dropped[i].Role, f.Dropped[i].Doubts = Spot, nil
	}
	f.Shapes = slices.DeleteFunc(f.Shapes, func(s Shape) bool { return s.dropped })
}

// named returns the shape of an id, now or before the fixes, or that at a pixel.
func (f *Found) named(place fixes.Place) (int, error) {
	if place.ID == "" {
		best, least := -1, math.Inf(1)
		for i, s := range f.Shapes {
			if d := s.Pixel.Distance(place.Pixel); d*f.PixelMm < max(s.DiameterMm/2, 2) && d < least {
				best, least = i, d
			}
		}
		if best < 0 {
			return best, finding.Failed(NothingAt, finding.Values{"x": place.Pixel.X, "y": place.Pixel.Y})
		}
		return best, nil
	}
	var ids []string
	for i, s := range f.Shapes {
		if s.ID == place.ID || s.was == place.ID {
			return i, nil
		}
		ids = append(ids, s.ID)
	}
	return -1, finding.Failed(NoHole, finding.Values{"hole": place.ID, "allowed": ids})
}

// take makes a shape what a person says that it is. Nothing about it is in doubt
// after that.
func (f *Found) take(i int, use holes.Use) {
	s := &f.Shapes[i]
	role := use
	if use == holes.Other {
		role = Port
	}
	s.Doubts, s.said = nil, true
	if s.Role == role && s.ID != "" {
		return
	}
	s.was, s.Role = s.ID, role
	s.ID = f.free(role)
	f.regroup(i, sizeStepMm)
}

// free is the id of a role with the next number.
func (f *Found) free(role Role) string {
	letter, last := initial(role), 0
	for _, s := range f.Shapes {
		for _, id := range []string{s.ID, s.was} {
			if n, err := strconv.Atoi(id[min(1, len(id)):]); err == nil && id[:1] == letter {
				last = max(last, n)
			}
		}
	}
	return letter + strconv.Itoa(last+1)
}

// regroup puts a round shape to those of its diameter, or opens a group for it.
func (f *Found) regroup(i int, toleranceMm float64) {
	s := &f.Shapes[i]
	if s.Role == Port && s.Group < 0 {
		return
	}
	for g, mm := range f.GroupsMm {
		if math.Abs(mm-s.DiameterMm) <= toleranceMm && f.useOf(g, i) == s.Role {
			s.Group = g
			return
		}
	}
	s.Group = len(f.GroupsMm)
	f.GroupsMm = append(f.GroupsMm, s.DiameterMm)
}

// useOf is the role of a group, without one of its shapes.
func (f *Found) useOf(group, without int) Role {
	for i, s := range f.Shapes {
		if i != without && s.Group == group {
			return s.Role
		}
	}
	return ""
}

// added is a hole where a person says that there is one. Its place and size are
// those of the edge in the picture, where one is seen.
func (f *Found) added(add fixes.Add, picture *image.Gray) Shape {
	s := Shape{Group: -1, Pixel: add.Pixel, At: add.At, DiameterMm: cmp.Or(add.DiameterMm, f.usualMm())}
	if add.InMm {
		s.Pixel = f.View.Pixel(add.At)
	} else {
		s.At = f.View.part(f.View.frame.Mm(add.Pixel.X, add.Pixel.Y))
	}
	if seen, ok := rings.Look(picture, s.Pixel, s.DiameterMm/2/f.PixelMm); ok && seen.Round > leastAddedRound && !add.InMm {
		s.Pixel, s.Kept = seen.Centre, seen.Round
		s.At = f.View.part(f.View.frame.Mm(seen.Centre.X, seen.Centre.Y))
		if add.DiameterMm == 0 {
			s.DiameterMm = 2 * seen.Radius * f.PixelMm
		}
	}
	for k := range 72 { // the edge of an opening
		s.Edge = append(s.Edge, geometry.Polar(s.At, s.DiameterMm/2, 5*float64(k)))
	}
	return s
}

const leastAddedRound = 0.5

// usualMm is the median diameter of the holes for bolts.
func (f *Found) usualMm() float64 {
	var diameters []float64
	for _, s := range f.Shapes {
		if s.Role == Fastener {
			diameters = append(diameters, s.DiameterMm)
		}
	}
	return cmp.Or(median(diameters), 8)
}

// inOrder sorts the shapes by their role, then by their number.
func (f *Found) inOrder() {
	slices.SortStableFunc(f.Shapes, func(a, b Shape) int {
		return cmp.Or(cmp.Compare(slices.Index(roles, a.Role), slices.Index(roles, b.Role)), cmp.Compare(len(a.ID), len(b.ID)), cmp.Compare(a.ID, b.ID))
	})
}
