package photo

import (
	"image"
	"math"

	"drawdown/geometry"
)

const (
	smallSide  = 400  // pixels of the small picture in which the sheet is looked for
	levelStep  = 6    // of the thresholds that are tried
	leastShare = 0.12 // of the picture that the sheet fills
	quadShare  = 0.9  // of the hull of a patch that four corners make up
)

// Find looks for the largest rectangle in a photo. Not found means that there is
// none whose four sides stand out, or that it is not whole in the picture.
func Find(picture *image.Gray, edge Edge) (Sheet, bool) {
	small := shrink(picture, edge)
	var best Sheet
	var tried [][4]geometry.Point
	most := leastShare * float64(len(small.levels))
	for threshold := levelStep; threshold < 256; threshold += levelStep {
		for _, hull := range small.hulls(uint8(threshold), most) {
			corners, size := quadrangle(hull)
			if size < most || size < quadShare*area(hull) || known(corners, tried) {
				continue
			}
			tried = append(tried, corners)
			for i := range corners {
				corners[i] = corners[i].Scale(float64(small.scale))
			}
			if s, ok := measured(picture, corners, edge, foundShare); ok {
				best, most = s, size
			}
		}
	}
	return best, best.Lens.half > 0
}

// known reports whether such corners were tried before, to a pixel of the small
// picture.
func known(corners [4]geometry.Point, tried [][4]geometry.Point) bool {
	for _, t := range tried {
		far := 0.0
		for i, c := range corners {
			far = max(far, c.Distance(t[i]))
		}
		if far < 1.5 {
			return true
		}
	}
	return false
}

// thumbnail is a picture made smaller by whole pixels. What counts is bright: the
// picture of a band is turned to its negative.
type thumbnail struct {
	levels               []uint8
	width, height, scale int
}

func shrink(picture *image.Gray, edge Edge) thumbnail {
	size := picture.Rect.Size()
	k := max(1, max(size.X, size.Y)/smallSide)
	t := thumbnail{width: size.X / k, height: size.Y / k, scale: k}
	t.levels = make([]uint8, t.width*t.height)
	for i := range t.levels {
		x, y, sum := i%t.width*k, i/t.width*k, 0
		for dy := range k {
			for _, v := range picture.Pix[(y+dy)*picture.Stride+x:][:k] {
				sum += int(v)
			}
		}
		t.levels[i] = uint8(sum / (k * k))
		if edge == Band {
			t.levels[i] = 255 - t.levels[i]
		}
	}
	return t
}

// hulls are the hulls of the patches that are at least as bright as a threshold,
// reach no rim of the picture, and span more than so many pixels.
func (t thumbnail) hulls(threshold uint8, least float64) (hulls [][]geometry.Point) {
	seen := make([]bool, len(t.levels))
	for i, v := range t.levels {
		if v < threshold || seen[i] {
			continue
		}
		if ends, onRim := t.patch(i, threshold, seen); !onRim {
			if hull := geometry.Hull(ends); area(hull) > least {
				hulls = append(hulls, hull)
			}
		}
	}
	return hulls
}

// patch marks the pixels that hang together with one, and returns the corners of
// those at the ends of its rows.
func (t thumbnail) patch(from int, threshold uint8, seen []bool) (ends []geometry.Point, onRim bool) {
	left, right := map[int]int{}, map[int]int{}
	stack := []int{from}
	seen[from] = true
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		x, y := i%t.width, i/t.width
		if l, ok := left[y]; !ok || x < l {
			left[y] = x
		}
		right[y] = max(right[y], x)
		if x == 0 || y == 0 || x == t.width-1 || y == t.height-1 {
			onRim = true
			continue
		}
		for _, next := range [4]int{i - 1, i + 1, i - t.width, i + t.width} {
			if !seen[next] && t.levels[next] >= threshold {
				seen[next] = true
				stack = append(stack, next)
			}
		}
	}
	for y := range t.height {
		if l, ok := left[y]; ok {
			top, r := float64(y), float64(right[y]+1)
			ends = append(ends, geometry.Point{X: float64(l), Y: top}, geometry.Point{X: r, Y: top}, geometry.Point{X: float64(l), Y: top + 1}, geometry.Point{X: r, Y: top + 1})
		}
	}
	return ends, onRim
}

func area(path []geometry.Point) float64 {
	sum := 0.0
	for i, a := range path {
		b := path[(i+1)%len(path)]
		sum += a.X*b.Y - a.Y*b.X
	}
	return math.Abs(sum) / 2
}

// mostHull bounds the corners of a hull that are looked at: pairs go by the cube.
const mostHull = 72

// quadrangle returns the largest quadrangle with its corners on a hull, clockwise
// in the picture from the corner nearest its top left, and its area.
func quadrangle(hull []geometry.Point) (corners [4]geometry.Point, largest float64) {
	for len(hull) > mostHull {
		hull = withoutFlattest(hull)
	}
	n := len(hull)
	for i := range n {
		for k := i + 2; k < n; k++ {
			one, area1 := furthest(hull, i, k)
			two, area2 := furthest(hull, k, i+n)
			if area1+area2 > largest {
				corners, largest = [4]geometry.Point{hull[i], hull[one], hull[k], hull[two]}, area1+area2
			}
		}
	}
	return fromTopLeft(corners), largest
}

// furthest returns the corner between two others that makes the largest triangle
// with them.
func furthest(hull []geometry.Point, from, to int) (best int, largest float64) {
	n := len(hull)
	a, b := hull[from%n], hull[to%n]
	for j := from + 1; j < to; j++ {
		c := hull[j%n]
		if size := math.Abs((b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X)) / 2; size > largest {
			best, largest = j%n, size
		}
	}
	return best, largest
}

// withoutFlattest leaves out the corner whose triangle with its neighbours is the
// smallest.
func withoutFlattest(hull []geometry.Point) []geometry.Point {
	n, flattest, least := len(hull), 0, math.Inf(1)
	for i := range hull {
		if size := area([]geometry.Point{hull[(i+n-1)%n], hull[i], hull[(i+1)%n]}); size < least {
			flattest, least = i, size
		}
	}
	return append(append([]geometry.Point{}, hull[:flattest]...), hull[flattest+1:]...)
}

// fromTopLeft turns corners so that they run clockwise in the picture from the
// one at the top left.
func fromTopLeft(c [4]geometry.Point) [4]geometry.Point {
	turn := (c[1].X-c[0].X)*(c[2].Y-c[1].Y) - (c[1].Y-c[0].Y)*(c[2].X-c[1].X)
	if turn < 0 {
		c[1], c[3] = c[3], c[1]
	}
	first := 0
	for i, p := range c {
		if p.X+p.Y < c[first].X+c[first].Y {
			first = i
		}
	}
	return [4]geometry.Point{c[first], c[(first+1)%4], c[(first+2)%4], c[(first+3)%4]}
}
