package tray_test

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"drawdown/patterns"
	"drawdown/render/pdf"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tray"
	"drawdown/render/words"
)

// The sheets of the P4 head, read back from the printed file, cut and laid as
// instructed: the distances between spots are those between the fasteners in
// the pattern file, to a tenth of a millimetre, also across sheets.
func TestSpotsAreExact(t *testing.T) {
	t.Parallel()
	file, _ := patterns.BuiltinText("p4-head")
	// Without washers the spots are hexagons, whose centres the reader can
	// find.
	p := planOf(t, regexp.MustCompile(`(?m)^ +washer:.*\n`).ReplaceAllString(string(file), ""))
	byNumber := p.Loosen.Order
	for _, paper := range sheet.Papers {
		document, _, err := tray.Document(p, tray.Style{}, sheet.Request{Paper: paper, Words: words.English()})
		if err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := pdf.Write(&file, document, time.Time{}); err != nil {
			t.Fatal(err)
		}
		places := joined(t, readPages(t, file.Bytes()))
		if len(places) != len(byNumber) {
			t.Fatalf("%s: %d spots, want %d", paper.Name, len(places), len(byNumber))
		}
		worst := 0.0
		for a, at := range places {
			for b, other := range places {
				i, k := byNumber[a-1], byNumber[b-1]
				// Seen from above, paper and part have the same orientation:
				// compare the offsets in both directions, not only the length.
				want := p.Joint.Fasteners[i].At.Sub(p.Joint.Fasteners[k].At)
				off := math.Hypot(at.X-other.X-want.X, other.Y-at.Y-want.Y)
				worst = math.Max(worst, off)
			}
		}
		if worst > 0.1 {
			t.Errorf("%s: two spots are %.3f mm from where they should be", paper.Name, worst)
		}
		t.Logf("%s: %d sheets, the worst of all pairs of spots is %.3f mm off", paper.Name, len(document.Pages), worst)
	}
}

// printed is a page read back from a PDF file, in millimetres from the top
// left.
type printed struct {
	label string
	paths []path
	texts []text
}

type path struct {
	width, dash float64
	points      []scene.Point // of all its straight lines
}

type text struct {
	at      scene.Point
	content string
}

// joined lays the sheets like a person: the crop marks of one on the dashed
// marks of the next. A spot on two sheets must have one position.
func joined(t *testing.T, pages []printed) map[int]scene.Point {
	t.Helper()
	right, bottom := map[string]float64{}, map[string]float64{} // position of the cut of a sheet
	shiftX, shiftY := map[string]float64{}, map[string]float64{}
	places := map[int]scene.Point{}
	for _, page := range pages {
		row, column := "A", "1"
		if page.label != "" {
			row, column = page.label[:1], page.label[1:]
		}
		crops, joints := page.marks(0.3, 0), page.marks(0.2, 0.8)
		if page.label != "" {
			if n, _ := strconv.Atoi(column); n > 1 {
				left := strconv.Itoa(n - 1)
				if len(joints.upright) == 0 {
					t.Fatalf("sheet %s has no mark for the sheet to its left", page.label)
				}
				shiftX[column] = right[left] - joints.upright[0]
			}
			if row > "A" {
				above := string(row[0] - 1)
				if len(joints.flat) == 0 {
					t.Fatalf("sheet %s has no mark for the sheet above", page.label)
				}
				shiftY[row] = bottom[above] - joints.flat[0]
			}
			right[column] = crops.upright[len(crops.upright)-1] + shiftX[column]
			bottom[row] = crops.flat[len(crops.flat)-1] + shiftY[row]
		}
		for number, at := range page.spots() {
			at.X, at.Y = at.X+shiftX[column], at.Y+shiftY[row]
			if before, twice := places[number]; twice && math.Hypot(at.X-before.X, at.Y-before.Y) > 0.1 {
				t.Errorf("spot %d lies at %.2f and at %.2f", number, before, at)
			}
			places[number] = at
		}
	}
	return places
}

// marks are the positions of the marks around a window, sorted.
type marks struct{ upright, flat []float64 }

func (p printed) marks(width, dash float64) marks {
	var m marks
	for _, path := range p.paths {
		if !near(path.width, width) || !near(path.dash, dash) || len(path.points)%2 != 0 {
			continue
		}
		for k := 0; k < len(path.points); k += 2 {
			a, b := path.points[k], path.points[k+1]
			if math.Hypot(a.X-b.X, a.Y-b.Y) > 4 {
				break // not a mark but an edge of the part
			}
			if near(a.X, b.X) {
				m.upright = append(m.upright, a.X)
			} else {
				m.flat = append(m.flat, a.Y)
			}
		}
	}
	slices.Sort(m.upright)
	slices.Sort(m.flat)
	return m
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.02 }

// spots returns the centre of each hexagon by the number in it.
func (p printed) spots() map[int]scene.Point {
	spots := map[int]scene.Point{}
	for _, path := range p.paths {
		if len(path.points) != 6 || !near(path.width, 0.4) {
			continue
		}
		var c scene.Point
		for _, q := range path.points {
			c.X, c.Y = c.X+q.X/6, c.Y+q.Y/6
		}
		for _, text := range p.texts {
			number, err := strconv.Atoi(text.content)
			if err == nil && math.Hypot(text.at.X-c.X, text.at.Y-c.Y) < 8 {
				spots[number] = c
			}
		}
	}
	return spots
}

// The check bars are 100 mm long in the file, in both directions.
func TestCheckBars(t *testing.T) {
	t.Parallel()
	p := planOf(t, "p4-head")
	for _, paper := range sheet.Papers {
		document, _, err := tray.Document(p, tray.Style{}, sheet.Request{Paper: paper, Words: words.English()})
		if err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := pdf.Write(&file, document, time.Time{}); err != nil {
			t.Fatal(err)
		}
		for _, page := range readPages(t, file.Bytes()) {
			across, up := 0, 0
			for _, path := range page.paths {
				if len(path.points) != 24 { // a line and eleven ticks
					continue
				}
				dx, dy := path.points[1].X-path.points[0].X, path.points[1].Y-path.points[0].Y
				switch {
				case math.Abs(dx-100) < 0.02 && dy == 0:
					across++
				case math.Abs(dy+100) < 0.02 && dx == 0:
					up++
				}
			}
			if across != 1 || up != 1 {
				t.Errorf("%s, sheet %s: %d bars of 100 mm across, %d up", paper.Name, page.label, across, up)
			}
		}
	}
}

var (
	objects  = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(.*?)\nendobj`)
	box      = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	contents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	kids     = regexp.MustCompile(`/Kids \[([^\]]*)\]`)
	shown    = regexp.MustCompile(`(?s)BT (-?[\d.]+) (-?[\d.]+) Td \(((?:\\.|[^\\)])*)\)`)
	label    = regexp.MustCompile(`^[A-Z][0-9]+$`)
)

const pointMm = 25.4 / 72

// readPages reads the pages of a PDF file in order.
func readPages(t *testing.T, file []byte) []printed {
	t.Helper()
	found := map[string]string{}
	for _, m := range objects.FindAllSubmatch(file, -1) {
		found[string(m[1])] = string(m[2])
	}
	size := box.FindStringSubmatch(found["1"])
	var pages []printed
	for _, kid := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(kids.FindStringSubmatch(found["1"])[1], -1) {
		own := box.FindStringSubmatch(found[kid[1]])
		if own == nil {
			own = size
		}
		height := number(t, own[2]) * pointMm
		_, packed, _ := strings.Cut(found[contents.FindStringSubmatch(found[kid[1]])[1]], "stream\n")
		r, err := zlib.NewReader(strings.NewReader(packed))
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, readPage(t, string(content), height))
	}
	return pages
}

func readPage(t *testing.T, content string, height float64) printed {
	t.Helper()
	var page printed
	largest := 0.0
	var size float64
	// Texts are separate blocks; between them are paths.
	for rest := content; rest != ""; {
		m := shown.FindStringSubmatchIndex(rest)
		before := rest
		if m != nil {
			before = rest[:m[0]]
		}
		for _, f := range regexp.MustCompile(`/F\w+ ([\d.]+) Tf`).FindAllStringSubmatch(before, -1) {
			size = number(t, f[1])
		}
		if m == nil {
			break
		}
		at := scene.Point{X: number(t, rest[m[2]:m[3]]) * pointMm, Y: height - number(t, rest[m[4]:m[5]])*pointMm}
		words := literal(rest[m[6]:m[7]])
		page.texts = append(page.texts, text{at, words})
		if label.MatchString(words) && size > largest && size > 15 { // the name of a sheet is set at 6 mm
			page.label, largest = words, size
		}
		rest = rest[m[1]:]
	}
	page.paths = readPaths(shown.ReplaceAllString(content, ""), height)
	return page
}

func readPaths(content string, height float64) []path {
	var paths []path
	var now path
	for row := range strings.SplitSeq(content, "\n") {
		fields := strings.Fields(strings.NewReplacer("[", "", "]", "").Replace(row))
		if len(fields) == 0 {
			continue
		}
		var v []float64
		for _, f := range fields[:len(fields)-1] {
			x, _ := strconv.ParseFloat(f, 64)
			v = append(v, x*pointMm)
		}
		switch fields[len(fields)-1] {
		case "w":
			now.width = v[0]
		case "d":
			now.dash = 0
			if len(v) > 1 {
				now.dash = v[0]
			}
		case "m", "l":
			now.points = append(now.points, scene.Point{X: v[0], Y: height - v[1]})
		case "S", "B", "f":
			paths = append(paths, now)
			now.points = nil
		}
	}
	return paths
}

// literal reads a literal string of UTF-16 characters (ISO 32000-1, 7.3.4.2).
func literal(s string) string {
	var raw []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' {
			i++
			if s[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, s[i])
	}
	units := make([]uint16, len(raw)/2)
	for k := range units {
		units[k] = uint16(raw[2*k])<<8 | uint16(raw[2*k+1])
	}
	return string(utf16.Decode(units))
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
