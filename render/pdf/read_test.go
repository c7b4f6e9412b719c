package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

// sheet is a page read back from a file.
type sheet struct {
	width, height float64 // points
	lines         []line
	content       string
}

// line is a text in a page's content, in points from the lower left; upward if
// the content turns it a quarter anticlockwise.
type line struct {
	x, y, size float64
	font       string
	upward     bool
	text       string
}

var (
	objects  = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(.*?)\nendobj`)
	box      = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	contents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	kids     = regexp.MustCompile(`/Kids \[([^\]]*)\]`)
	selected = regexp.MustCompile(`^BT /F(\w+) ([\d.]+) Tf ET`)
	shown    = regexp.MustCompile(`(?s)BT (-?[\d.]+) (-?[\d.]+) Td \(`)
	turned   = regexp.MustCompile(`^0\.00000 1\.00000 -1\.00000 0\.00000 \S+ \S+ cm`)
)

// read reads the pages of a file that this package wrote.
func read(t testing.TB, file []byte) []sheet {
	t.Helper()
	found := map[string]string{}
	for _, m := range objects.FindAllSubmatch(file, -1) {
		found[string(m[1])] = string(m[2])
	}
	var out []sheet
	size := box.FindStringSubmatch(found["1"])
	for _, kid := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(kids.FindStringSubmatch(found["1"])[1], -1) {
		page := found[kid[1]]
		own := box.FindStringSubmatch(page)
		if own == nil {
			own = size
		}
		s := sheet{width: number(t, own[1]), height: number(t, own[2])}
		s.content = inflate(t, found[contents.FindStringSubmatch(page)[1]])
		s.lines = lines(t, s.content)
		out = append(out, s)
	}
	return out
}

func number(t testing.TB, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func inflate(t testing.TB, object string) string {
	t.Helper()
	_, packed, _ := strings.Cut(object, "stream\n")
	r, err := zlib.NewReader(strings.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func lines(t testing.TB, content string) []line {
	var out []line
	var now line
	for rest := content; rest != ""; {
		if m := selected.FindStringSubmatch(rest); m != nil {
			now.font, now.size = m[1], number(t, m[2])
		}
		if turned.MatchString(rest) {
			now.upward = true
		}
		if m := shown.FindStringSubmatchIndex(rest); m != nil && m[0] == 0 {
			now.x, now.y = number(t, rest[m[2]:m[3]]), number(t, rest[m[4]:m[5]])
			var used int
			now.text, used = literal(rest[m[1]:])
			out = append(out, now)
			now.upward = false
			rest = rest[m[1]+used:]
			continue
		}
		// Operators start at the beginning of a line or after a space.
		if i := strings.IndexAny(rest, " \n"); i >= 0 {
			rest = rest[i+1:]
		} else {
			rest = ""
		}
	}
	return out
}

// literal reads a literal string of UTF-16 characters (ISO 32000-1, 7.3.4.2).
func literal(s string) (string, int) {
	var raw []byte
	i := 0
	for ; s[i] != ')'; i++ {
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
	return string(utf16.Decode(units)), i + 1
}

// stroke is a painted path with the settings at that time.
type stroke struct {
	state
	points   []float64
	operator string
}

type state struct {
	fill, stroke [3]float64
	width, dash  float64
}

// painted interprets the operators of a page's content, except text.
func painted(t testing.TB, content string) []stroke {
	t.Helper()
	var out []stroke
	var now state
	var kept []state
	var points []float64
	for row := range strings.SplitSeq(content, "\n") {
		words := strings.Fields(strings.NewReplacer("[", "", "]", "").Replace(row))
		if len(words) == 0 || strings.Contains(row, "BT ") {
			continue
		}
		last := len(words) - 1
		values := make([]float64, last)
		for i, w := range words[:last] {
			values[i], _ = strconv.ParseFloat(w, 64)
		}
		switch words[last] {
		case "q":
			kept = append(kept, now)
		case "Q":
			now, kept = kept[len(kept)-1], kept[:len(kept)-1]
		case "rg":
			now.fill = [3]float64(values)
		case "RG":
			now.stroke = [3]float64(values)
		case "g":
			now.fill = [3]float64{values[0], values[0], values[0]}
		case "G":
			now.stroke = [3]float64{values[0], values[0], values[0]}
		case "w":
			now.width = values[0]
		case "d":
			now.dash = 0
			if len(values) > 1 {
				now.dash = values[0]
			}
		case "m", "l", "c":
			points = append(points, values...)
		case "f", "S", "B", "f*", "B*", "s", "b":
			out = append(out, stroke{now, points, words[last]})
			points = nil
		}
	}
	return out
}

// checkTable reports whether the cross-reference table points at the objects.
func checkTable(file []byte) error {
	_, tail, _ := bytes.Cut(file[bytes.LastIndex(file, []byte("startxref")):], []byte("\n"))
	place, _, _ := strings.Cut(string(tail), "\n")
	start, err := strconv.Atoi(place)
	if err != nil {
		return err
	}
	rows := strings.Split(string(file[start:]), "\n")
	if rows[0] != "xref" {
		return fmt.Errorf("no table at %d but %q", start, rows[0])
	}
	for i, row := range rows[3:] {
		if !strings.HasSuffix(row, " n ") {
			break
		}
		at, err := strconv.Atoi(row[:10])
		if err != nil {
			return err
		}
		if want := fmt.Sprintf("%d 0 obj", i+1); !bytes.HasPrefix(file[at:], []byte(want)) {
			return fmt.Errorf("object %d is not at %d", i+1, at)
		}
	}
	return nil
}
