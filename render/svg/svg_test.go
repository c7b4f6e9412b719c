package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
)

func written(t testing.TB, page scene.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, page); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// element is an element of the picture with its attributes and its text.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

func parse(t testing.TB, file []byte) []element {
	t.Helper()
	var out []element
	var open []int
	d := xml.NewDecoder(bytes.NewReader(file))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(out))
			out = append(out, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				out[open[len(open)-1]].text += string(token)
			}
		}
	}
}

func named(elements []element, name string) []element {
	var out []element
	for _, e := range elements {
		if e.name == name {
			out = append(out, e)
		}
	}
	return out
}

func near(t testing.TB, what, got string, want float64) {
	t.Helper()
	if v, err := strconv.ParseFloat(got, 64); err != nil || math.Abs(v-want) > 0.0005001 {
		t.Errorf("%s is %q, want %g", what, got, want)
	}
}

func TestReadBack(t *testing.T) {
	page := scenetest.Card().Pages[0]
	all := parse(t, written(t, page))
	root := all[0]
	if root.name != "svg" || root.attrs["width"] != "210mm" || root.attrs["height"] != "297mm" || root.attrs["viewBox"] != "0 0 210 297" {
		t.Errorf("the root is %v", root)
	}
	lines, paths := named(all, "text"), named(all, "path")
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Text:
			checkText(t, lines[0], it)
			lines = lines[1:]
		case scene.Shape:
			checkShape(t, paths[0], it)
			paths = paths[1:]
		}
	}
	if len(lines)+len(paths) > 0 {
		t.Errorf("%d texts and %d paths too many", len(lines), len(paths))
	}
}

func checkText(t testing.TB, got element, want scene.Text) {
	t.Helper()
	if got.text != want.Content {
		t.Fatalf("text is %q, want %q", got.text, want.Content)
	}
	near(t, "x", got.attrs["x"], want.At.X)
	near(t, "y", got.attrs["y"], want.At.Y)
	near(t, "font-size", got.attrs["font-size"], want.Size)
	near(t, "textLength", got.attrs["textLength"], want.Width)
	anchor := [...]string{"", "middle", "end"}[want.Anchor]
	if got.attrs["text-anchor"] != anchor || got.attrs["lengthAdjust"] != "spacingAndGlyphs" {
		t.Errorf("%q has attributes %v", want.Content, got.attrs)
	}
	if want.Upward != strings.HasPrefix(got.attrs["transform"], "rotate(-90 ") {
		t.Errorf("%q is turned by %q", want.Content, got.attrs["transform"])
	}
	if bold := got.attrs["font-weight"] == "bold"; bold != (want.Weight == scene.Bold) {
		t.Errorf("%q has weight %q", want.Content, got.attrs["font-weight"])
	}
}

func checkShape(t testing.TB, got element, want scene.Shape) {
	t.Helper()
	letters := strings.Map(func(r rune) rune {
		if strings.ContainsRune("MLCZ", r) {
			return r
		}
		return -1
	}, got.attrs["d"])
	verbs := ""
	for _, seg := range want.Path {
		verbs += string("MLCZ"[seg.Verb])
	}
	if letters != verbs {
		t.Errorf("path %q has verbs %s, want %s", got.attrs["d"], letters, verbs)
	}
	for name, ink := range map[string]scene.Ink{"fill": want.Fill, "stroke": want.Stroke} {
		colour := ""
		if ink != scene.None {
			colour = hex(ink)
		}
		if got.attrs[name] != colour {
			t.Errorf("%s is %q, want %q", name, got.attrs[name], colour)
		}
	}
}

func TestPathData(t *testing.T) {
	var p scene.Path
	p.MoveTo(1, math.Copysign(0, -1))
	p.LineTo(2.5, -3.25)
	p.CurveTo(scene.Point{X: 1, Y: 2}, scene.Point{X: 3, Y: 4}, scene.Point{X: 0.01, Y: -0.001})
	p.Close()
	page := scene.Page{Width: 10, Height: 10, Items: []scene.Item{
		scene.Shape{Path: p, Stroke: scene.Black, Width: 0.25, Dash: 1.5},
		scene.Shape{Path: p},
		scene.Shape{Fill: scene.Black},
	}}
	paths := named(parse(t, written(t, page)), "path")
	if len(paths) != 1 {
		t.Fatalf("%d paths, want the one that can be seen", len(paths))
	}
	want := map[string]string{
		"d": "M1,0L2.5,-3.25C1,2 3,4 0.01,0Z", "stroke": "#111111", "stroke-width": "0.25", "stroke-dasharray": "1.5",
	}
	for name, value := range want {
		if got := paths[0].attrs[name]; got != value {
			t.Errorf("%s is %q, want %q", name, got, value)
		}
	}
}

func TestEscapes(t *testing.T) {
	const s = `a<b> & "c" 'd' ]]> &amp;`
	page := scene.Page{Name: s, Width: 10, Height: 10, Items: []scene.Item{
		scene.Text{Size: 3, Width: 5, Ink: scene.Black, Content: s},
		scene.Text{Size: 3, Ink: scene.Black, Content: "two  blanks\nand ⌀"},
		scene.Text{Size: 3, Ink: scene.Black},
		scene.Text{Size: 3, Content: "no ink"},
	}}
	all := parse(t, written(t, page))
	lines := named(all, "text")
	if len(lines) != 2 || lines[0].text != s || lines[1].text != "two  blanks and Ø" {
		t.Errorf("texts are %v", lines)
	}
	if got := named(all, "title")[0].text; got != s {
		t.Errorf("title is %q", got)
	}
	if _, has := lines[1].attrs["textLength"]; has {
		t.Error("a text of no width is squeezed to it")
	}
}

// A standalone picture requests nothing else.
func TestSelfContained(t *testing.T) {
	file := string(written(t, scenetest.Card().Pages[0]))
	for _, word := range []string{"href", "url(", "<style", "<script", "<image", "<!DOCTYPE"} {
		if strings.Contains(file, word) {
			t.Errorf("the picture has %s", word)
		}
	}
}

func TestSameBytes(t *testing.T) {
	page := scenetest.Card().Pages[0]
	want := written(t, page)
	var all sync.WaitGroup
	for range 6 {
		all.Go(func() {
			if !bytes.Equal(want, written(t, page)) {
				t.Error("the same page gave other bytes")
			}
		})
	}
	all.Wait()
}

func TestTurnsDown(t *testing.T) {
	for name, page := range map[string]scene.Page{
		"NaN":     {Width: math.NaN(), Height: 10},
		"U+1F527": {Width: 10, Height: 10, Items: []scene.Item{scene.Text{Size: 3, Ink: scene.Black, Content: "🔧"}}},
		"1e+09":   {Width: 10, Height: 10, Items: []scene.Item{scene.Text{At: scene.Point{X: 1e9}, Size: 3, Ink: scene.Black, Content: "a"}}},
	} {
		var b bytes.Buffer
		if err := Write(&b, page); err == nil || !strings.Contains(err.Error(), name) || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes", name, err, b.Len())
		}
	}
}

var errFull = errors.New("the disk is full")

type broken struct{ left int }

func (b *broken) Write(p []byte) (int, error) {
	if b.left -= len(p); b.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestPassesOnWriteErrors(t *testing.T) {
	page := scenetest.Card().Pages[0]
	for _, left := range []int{0, 5000, 30000} {
		if err := Write(&broken{left}, page); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: got %v, want %v", left, err, errFull)
		}
	}
}

func BenchmarkCard(b *testing.B) {
	page := scenetest.Card().Pages[0]
	for b.Loop() {
		if err := Write(io.Discard, page); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMarks(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			page := scenetest.Marks(n).Pages[0]
			for b.Loop() {
				if err := Write(io.Discard, page); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A page finds what to touch by the id of the thing; furniture has none.
func TestThingsCarryTheirID(t *testing.T) {
	page := scene.Page{Name: "p", Width: 40, Height: 20, Items: []scene.Item{
		scene.Shape{Path: scene.Circle(10, 10, 5), Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: `a"1`, Role: scene.Mark}},
		scene.Shape{Path: scene.Circle(10, 10, 4), Stroke: scene.Black, Width: 0.3, Tag: scene.Tag{Name: `a"1`, Role: scene.Mark, Core: true}},
		scene.Shape{Path: scene.Circle(30, 10, 4), Stroke: scene.Black, Width: 0.3},
		scene.Text{At: scene.Point{X: 10, Y: 11}, Size: 3, Ink: scene.Black, Content: "1", Tag: scene.Tag{Name: `a"1`, Role: scene.Number, Core: true}},
	}}
	var got []string
	for _, e := range parse(t, written(t, page)) {
		_, core := e.attrs["data-core"]
		if e.name == "path" || e.name == "text" {
			got = append(got, fmt.Sprint(e.attrs["data-role"], " ", e.attrs["data-id"], " ", core))
		}
	}
	if want := []string{`mark a"1 false`, `mark a"1 true`, "  false", `number a"1 true`}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A photo is written into the file at its box, below the items.
func TestPhoto(t *testing.T) {
	page := scene.Page{Width: 100, Height: 100, Photos: []scene.Photo{{JPEG: []byte("jpeg"), Box: scene.Box{Left: 10, Top: 20, Right: 40, Bottom: 40}}}}
	want := `<image x="10" y="20" width="30" height="20" preserveAspectRatio="none" href="data:image/jpeg;base64,anBlZw=="/>`
	if got := string(written(t, page)); !strings.Contains(got, want) {
		t.Errorf("%s", got)
	}
}
