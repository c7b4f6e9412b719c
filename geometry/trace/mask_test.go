package trace

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
)

func drawMask(t *rapid.T) *mask {
	m := &mask{width: rapid.IntRange(1, 14).Draw(t, "width"), height: rapid.IntRange(1, 14).Draw(t, "height"), tone: ToneDark}
	m.part = rapid.SliceOfN(rapid.Bool(), m.width*m.height, m.width*m.height).Draw(t, "pixels")
	return m
}

// flood numbers the patches by filling each from its first pixel: parts over
// corners too, background over sides only.
func flood(m *mask) (number []int, sizes []int) {
	number = make([]int, len(m.part))
	for i := range number {
		number[i] = -1
	}
	for start := range m.part {
		if number[start] >= 0 {
			continue
		}
		n := len(sizes)
		sizes = append(sizes, 0)
		number[start] = n
		for open := []int{start}; len(open) > 0; {
			at := open[len(open)-1]
			open = open[:len(open)-1]
			sizes[n]++
			x, y := at%m.width, at/m.width
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					if !m.part[start] && dx*dy != 0 {
						continue
					}
					u, v := x+dx, y+dy
					if u < 0 || v < 0 || u >= m.width || v >= m.height {
						continue
					}
					if k := v*m.width + u; number[k] < 0 && m.part[k] == m.part[start] {
						number[k] = n
						open = append(open, k)
					}
				}
			}
		}
	}
	return number, sizes
}

// The patches are those that filling finds, each from the same first pixel, in
// the same order and as large, and inside the patch above that pixel.
func TestBlobsAgainstFilling(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		m := drawMask(t)
		number, sizes := flood(m)
		all, err := m.blobs()
		if err != nil {
			t.Fatal(err)
		}
		seen := 0
		for i, b := range all {
			if b.pixels == 0 {
				continue
			}
			n := number[b.y*m.width+b.x]
			minX, minY, maxX, maxY := m.width, m.height, -1, -1
			for at, k := range number {
				if k == n {
					x, y := at%m.width, at/m.width
					minX, minY, maxX, maxY = min(minX, x), min(minY, y), max(maxX, x), max(maxY, y)
				}
			}
			if b.minX != minX || b.minY != minY || b.maxX != maxX || b.maxY != maxY {
				t.Fatalf("patch %d reaches from %d, %d to %d, %d", i, b.minX, b.minY, b.maxX, b.maxY)
			}
			if onRim := minX == 0 || minY == 0 || maxX == m.width-1 || maxY == m.height-1; b.onRim != onRim {
				t.Fatalf("patch %d: on the rim %v", i, b.onRim)
			}
			if b.pixels != sizes[n] || b.part != m.part[b.y*m.width+b.x] {
				t.Fatalf("patch %d has %d pixels, filling finds %d", i, b.pixels, sizes[n])
			}
			if n != seen {
				t.Fatalf("patch %d is the filled patch %d, want %d", i, n, seen)
			}
			seen++
			if (b.inside < 0) != (b.y == 0) || b.y > 0 && number[(b.y-1)*m.width+b.x] != number[all[b.inside].y*m.width+all[b.inside].x] {
				t.Fatalf("patch %d at %d,%d lies inside %d", i, b.x, b.y, b.inside)
			}
		}
		if seen != len(sizes) {
			t.Fatalf("%d patches, filling finds %d", seen, len(sizes))
		}
	})
}

// The walk round a patch encloses the patch and what lies in it: the area
// within the cracks is the number of those pixels.
func TestContourEncloses(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		m := drawMask(t)
		all, err := m.blobs()
		if err != nil {
			t.Fatal(err)
		}
		for i, b := range all {
			if b.pixels == 0 {
				continue
			}
			// Green's theorem over unit steps: the middle's x times the way outwards.
			area, upright, perimeter := 0.0, 0.0, 0
			for _, c := range m.contour(b) {
				area += c.x * c.outX
				upright += c.y * c.outY
				perimeter++
			}
			want := 0
			for k := range all {
				for in := k; in >= 0 && all[k].pixels > 0; in = all[in].inside {
					if in == i {
						want += all[k].pixels
						break
					}
					if all[in].onRim { // beside the one above, not within it
						break
					}
				}
			}
			if math.Abs(area-float64(want)) > 1e-9 || math.Abs(upright-float64(want)) > 1e-9 || perimeter%2 != 0 {
				t.Fatalf("the patch at %d,%d: %d borders enclose %g, want %d", b.x, b.y, perimeter, area, want)
			}
		}
	})
}

// Fibres go, whatever their direction; what is wider stays.
func TestDropFibres(t *testing.T) {
	t.Parallel()
	m := &mask{width: 40, height: 40, part: make([]bool, 1600)}
	set := func(x, y, w, h int) {
		for v := y; v < y+h; v++ {
			for u := x; u < x+w; u++ {
				m.part[v*m.width+u] = true
			}
		}
	}
	set(5, 2, 2, 30)   // an upright fibre
	set(10, 35, 20, 2) // a level one
	set(20, 10, 5, 5)  // a part
	m.dropThin(true, 2, true)
	m.dropThin(true, 2, false)
	n := 0
	for _, v := range m.part {
		if v {
			n++
		}
	}
	if n != 25 || !m.has(20, 10, true) || !m.has(24, 14, true) {
		t.Errorf("%d pixels are left, want those of the part, 25", n)
	}
}

// A simplified line keeps within the tolerance of the line that it came from,
// and its points are points of that line.
func TestSimplified(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 80).Draw(t, "points")
		line := make([]geometry.Point, n)
		for i := range line {
			r := rapid.Float64Range(5, 9).Draw(t, "radius")
			line[i] = geometry.Polar(geometry.Point{X: 3, Y: -2}, r, 360*float64(i)/float64(n))
		}
		tolerance := rapid.Float64Range(0.01, 2).Draw(t, "tolerance")
		short := simplified(line, tolerance, n)
		for _, p := range line {
			off := math.Inf(1)
			for i, a := range short {
				off = math.Min(off, offSegment(p, a, short[(i+1)%len(short)]))
			}
			if off > tolerance+1e-9 {
				t.Fatalf("%v lies %g mm off the simplified line, tolerance %g", p, off, tolerance)
			}
		}
		if most := rapid.IntRange(4, 20).Draw(t, "most"); len(simplified(line, tolerance, most)) > most {
			t.Fatalf("more than %d points are left", most)
		}
	})
}

// A circle through points with a third of them wrong is the true one.
func TestFitCircleWithOutliers(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		centre := geometry.Point{X: rapid.Float64Range(-200, 200).Draw(t, "x"), Y: rapid.Float64Range(-200, 200).Draw(t, "y")}
		radius := rapid.Float64Range(1, 60).Draw(t, "radius")
		bad := rapid.IntRange(0, 359).Draw(t, "bad from")
		push := rapid.Float64Range(0.1, 0.6).Draw(t, "push")
		var points []geometry.Point
		for i := range 360 {
			r := radius
			if (i-bad+360)%360 < 110 { // a torn stretch
				r *= 1 + push*math.Sin(math.Pi*float64((i-bad+360)%360)/110)
			}
			points = append(points, geometry.Polar(centre, r, float64(i)))
		}
		c, ok := fitCircle(points)
		if !ok || c.centre.Distance(centre) > 0.02 || math.Abs(c.radius-radius) > 0.02 {
			t.Fatalf("%+v, want %v and %g", c, centre, radius)
		}
	})
}
