package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"math"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
)

func written(t testing.TB, doc scene.Document, date time.Time) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, doc, date); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Every line is where the scene has it: an anchored line is moved by its
// measured width. gofpdf writes positions to 1/100 point.
func TestReadBack(t *testing.T) {
	doc := scenetest.Card()
	page := read(t, written(t, doc, time.Time{}))[0]
	want := scenetest.Texts(doc.Pages[0])
	if len(page.lines) != len(want) || len(want) != scenetest.Strings {
		t.Fatalf("%d lines in the file, %d in the scene, %d in the card", len(page.lines), len(want), scenetest.Strings)
	}
	fonts := map[scene.Weight]string{}
	for i, w := range want {
		got := page.lines[i]
		x, y := w.At.X-w.Width*float64(w.Anchor)/2, w.At.Y
		if got.text != w.Content || got.upward != w.Upward {
			t.Errorf("line %d reads %q (upward %v), want %q", i, got.text, got.upward, w.Content)
		}
		if math.Abs(got.x-x*pointsPerMM) > 0.0051 || math.Abs(page.height-got.y-y*pointsPerMM) > 0.011 {
			t.Errorf("%q stands at (%g, %g) pt, want (%.3f, %.3f)", w.Content, got.x, page.height-got.y, x*pointsPerMM, y*pointsPerMM)
		}
		if math.Abs(got.size-w.Size*pointsPerMM) > 0.0051 {
			t.Errorf("%q is set at %g pt, want %.3f", w.Content, got.size, w.Size*pointsPerMM)
		}
		if f, known := fonts[w.Weight]; known && f != got.font {
			t.Errorf("%q is set in font %s, want %s", w.Content, got.font, f)
		}
		fonts[w.Weight] = got.font
	}
	if fonts[scene.Regular] == fonts[scene.Bold] {
		t.Error("both weights are set in one font")
	}
}

// The operators are those of ISO 32000-1, tables 57, 59, 60 and 74: q Q save
// and restore the settings, f S B paint (f* and B* would be the even-odd rule).
func TestShapes(t *testing.T) {
	doc := scenetest.Card()
	small := scenetest.Card().Pages[0]
	small.Width, small.Height = 180, 120
	doc.Pages = append(doc.Pages, small)
	for n, page := range read(t, written(t, doc, time.Time{})) {
		got := painted(t, page.content)
		for _, it := range doc.Pages[n].Items {
			s, ok := it.(scene.Shape)
			if !ok {
				continue
			}
			if len(got) == 0 {
				t.Fatalf("page %d: shapes are missing", n+1)
			}
			checkShape(t, got[0], s, doc.Pages[n].Height)
			got = got[1:]
		}
		if len(got) > 0 {
			t.Errorf("page %d: %d shapes too many", n+1, len(got))
		}
		if !strings.HasPrefix(page.content, "1 J\n1 j\n") || strings.Count(page.content, " J\n") > 1 {
			t.Errorf("page %d: caps and joins must be round throughout", n+1)
		}
	}
}

func checkShape(t testing.TB, got stroke, want scene.Shape, height float64) {
	t.Helper()
	operator := map[[2]bool]string{{true, false}: "f", {false, true}: "S", {true, true}: "B"}[[2]bool{want.Fill != scene.None, want.Stroke != scene.None}]
	if got.operator != operator {
		t.Fatalf("painted by %s, want %s", got.operator, operator)
	}
	near := func(what string, got, want, by float64) {
		t.Helper()
		if math.Abs(got-want) > by {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	ink := func(what string, got [3]float64, k scene.Ink) {
		t.Helper()
		r, g, b := k.RGB()
		for i, v := range []uint8{r, g, b} {
			near(what, got[i], float64(v)/255, 0.00051)
		}
	}
	if want.Fill != scene.None {
		ink("fill", got.fill, want.Fill)
	}
	if want.Stroke != scene.None {
		ink("stroke", got.stroke, want.Stroke)
		near("width", got.width, want.Width*pointsPerMM, 0.0051)
		near("dash", got.dash, want.Dash*pointsPerMM, 0.0051)
	}
	var points []float64
	for _, seg := range want.Path {
		for _, q := range seg.P[:map[scene.Verb]int{scene.Move: 1, scene.Line: 1, scene.Curve: 3}[seg.Verb]] {
			points = append(points, q.X*pointsPerMM, (height-q.Y)*pointsPerMM)
		}
	}
	if len(points) != len(got.points) {
		t.Fatalf("%d coordinates, want %d", len(got.points), len(points))
	}
	for i := range points {
		near("coordinate", got.points[i], points[i], 0.0051)
	}
}

func TestSameBytes(t *testing.T) {
	doc := scenetest.Card()
	first := written(t, doc, time.Time{})
	t.Chdir(t.TempDir())
	t.Setenv("TZ", "Asia/Tokyo")
	for range 10 {
		if !bytes.Equal(first, written(t, doc, time.Time{})) {
			t.Fatal("the same document gave other bytes")
		}
	}
	noon := time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC)
	elsewhere := noon.In(time.FixedZone("", 9*3600))
	if !bytes.Equal(written(t, doc, noon), written(t, doc, elsewhere)) {
		t.Error("the same moment in another time zone gave other bytes")
	}
	if bytes.Equal(first, written(t, doc, noon)) {
		t.Error("the date is not in the file")
	}
	if err := checkTable(first); err != nil {
		t.Error(err)
	}
}

func TestDescription(t *testing.T) {
	file := written(t, scenetest.Card(), time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC))
	for _, want := range []string{"/Lang (en)", "/PrintScaling /None", "/CreationDate (D:20260314120000)", "/ModDate (D:20260314120000)"} {
		if !bytes.Contains(file, []byte(want)) {
			t.Errorf("no %s in the file", want)
		}
	}
	doc := scenetest.Card()
	doc.Language = ""
	if bytes.Contains(written(t, doc, time.Time{}), []byte("/Lang")) {
		t.Error("an unknown language is named")
	}
}

func TestPagesOfTheirOwnSize(t *testing.T) {
	var doc scene.Document
	sizes := [][2]float64{{210, 297}, {297, 210}, {100, 400}, {215.9, 279.4}, {210, 297}}
	for _, s := range sizes {
		page := scenetest.Card().Pages[0]
		page.Width, page.Height = s[0], s[1]
		doc.Pages = append(doc.Pages, page)
	}
	first := read(t, written(t, doc, time.Time{}))
	if len(first) != len(sizes) {
		t.Fatalf("%d pages, want %d", len(first), len(sizes))
	}
	for i, s := range sizes {
		if math.Abs(first[i].width-s[0]*pointsPerMM) > 0.01 || math.Abs(first[i].height-s[1]*pointsPerMM) > 0.01 {
			t.Errorf("page %d is %g × %g pt, want %g × %g mm", i+1, first[i].width, first[i].height, s[0], s[1])
		}
		if len(first[i].lines) != scenetest.Strings {
			t.Errorf("page %d has %d lines", i+1, len(first[i].lines))
		}
	}
	// Settings must not get lost over a page break.
	again := read(t, written(t, scene.Document{Pages: doc.Pages[4:]}, time.Time{}))[0]
	for i, l := range first[4].lines {
		if l.size != again.lines[i].size || l.x != again.lines[i].x || l.text != again.lines[i].text {
			t.Errorf("line %d of the last page is %v, alone it is %v", i, l, again.lines[i])
		}
	}
}

func TestEmbedsWhatIsUsed(t *testing.T) {
	text := scene.Text{At: scene.Point{X: 10, Y: 10}, Size: 4, Width: 10, Ink: scene.Black, Content: "a"}
	bold, unseen := text, text
	bold.Weight = scene.Bold
	unseen.Weight, unseen.Ink = scene.Bold, scene.None
	for _, c := range []struct {
		name  string
		items []scene.Item
		want  int
	}{
		{"no text", nil, 0},
		{"regular", []scene.Item{text, unseen}, 1},
		{"bold", []scene.Item{bold}, 1},
		{"both", []scene.Item{text, bold}, 2},
	} {
		file := written(t, scene.Document{Pages: []scene.Page{{Width: 100, Height: 100, Items: c.items}}}, time.Time{})
		if got := bytes.Count(file, []byte("/FontFile2 ")); got != c.want {
			t.Errorf("%s: %d fonts embedded, want %d", c.name, got, c.want)
		}
	}
}

// gofpdf modifies the font that it is given.
func TestFontsStayAsTheyAre(t *testing.T) {
	sum := func() (s [2][32]byte) {
		for i := range s {
			s[i] = sha256.Sum256(font.Data(scene.Weight(i)))
		}
		return s
	}
	before := sum()
	written(t, scenetest.Card(), time.Time{})
	if sum() != before {
		t.Error("the embedded typeface was changed")
	}
}

func TestManyAtOnce(t *testing.T) {
	doc := scenetest.Card()
	want := written(t, doc, time.Time{})
	var all sync.WaitGroup
	for range 6 {
		all.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, doc, time.Time{}); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("written at once with others, the file differs (%v)", err)
			}
		})
	}
	all.Wait()
}

func TestTurnsDown(t *testing.T) {
	doc := func(items ...scene.Item) scene.Document {
		return scene.Document{Pages: []scene.Page{{Name: "card", Width: 210, Height: 297, Items: items}}}
	}
	text := func(s string) scene.Document { return doc(scene.Text{Size: 3, Ink: scene.Black, Content: s}) }
	titled := doc()
	titled.Title = "🔧"
	tongue := doc()
	tongue.Language = "en) /AA (x"
	for _, c := range []struct {
		name, want string
		doc        scene.Document
	}{
		{"no page", "no page", scene.Document{}},
		{"emoji", "U+1F527", text("🔧")},
		{"broken byte", "UTF-8", text("\xff")},
		{"title", "U+1F527", titled},
		{"language", "BCP 47", tongue},
		{"NaN", "NaN", doc(scene.Text{At: scene.Point{X: math.NaN()}, Size: 3, Ink: scene.Black, Content: "a"})},
		{"far", "1e+09", doc(scene.Text{At: scene.Point{Y: 1e9}, Size: 3, Ink: scene.Black, Content: "a"})},
		{"endless line", "Inf", doc(scene.Shape{Path: scene.Path{{P: [3]scene.Point{{X: math.Inf(1)}}}}, Fill: scene.Black})},
	} {
		var b bytes.Buffer
		err := Write(&b, c.doc, time.Time{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want an error with %q", c.name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes written in spite of the error", c.name, b.Len())
		}
	}
}

// Line ends and similar characters are set as spaces, and signs that the
// typeface lacks by their replacements.
func TestCleansText(t *testing.T) {
	doc := scene.Document{Pages: []scene.Page{{Width: 100, Height: 100, Items: []scene.Item{
		scene.Text{Size: 3, Ink: scene.Black, Content: "⌀ 12\tH7\nu\u0308ber (a\\b)"},
	}}}}
	if got := read(t, written(t, doc, time.Time{}))[0].lines[0].text; got != "Ø 12 H7 über (a\\b)" {
		t.Errorf("set as %q", got)
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
	doc := scenetest.Card()
	whole := len(written(t, doc, time.Time{}))
	for left := 0; left < whole; left += 5000 {
		if err := Write(&broken{left}, doc, time.Time{}); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: got %v, want %v", left, err, errFull)
		}
	}
}

// An independent reader must find every word.
func TestPdftotext(t *testing.T) {
	program := testkit.Program(t, "pdftotext")
	doc := scenetest.Card()
	cmd := exec.Command(program, "-raw", "-enc", "UTF-8", "-", "-")
	cmd.Stdin = bytes.NewReader(written(t, doc, time.Time{}))
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%v: %s", err, complaints.String())
	}
	blanks := regexp.MustCompile(`\s+`)
	all := blanks.ReplaceAllString(string(out), " ")
	for _, want := range scenetest.Texts(doc.Pages[0]) {
		if !strings.Contains(all, blanks.ReplaceAllString(want.Content, " ")) {
			t.Errorf("pdftotext does not find %q", want.Content)
		}
	}
}

// Bookmarks lead to their pages (ISO 32000-1, 12.3.3: each title a text string,
// here UTF-16BE; each destination the object of its page).
func TestBookmarks(t *testing.T) {
	page := func(name, title string, level int) scene.Page {
		return scene.Page{Name: name, Width: 210, Height: 297, Margin: 12, Bookmarks: []scene.Bookmark{{Title: title, Level: level}}}
	}
	var out bytes.Buffer
	doc := scene.Document{Pages: []scene.Page{page("a", "Öl", 0), page("b", "Head", 1)}}
	if err := Write(&out, doc, time.Time{}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"<</Title (\xfe\xff\x00\xd6\x00l)", "<</Title (\xfe\xff\x00H\x00e\x00a\x00d)",
		"/Dest [3 0 R", "/Dest [5 0 R",
	} {
		if !bytes.Contains(out.Bytes(), []byte(want)) {
			t.Errorf("the file lacks %q", want)
		}
	}
	doc.Pages[1].Bookmarks[0].Level = 2
	if err := Write(&out, doc, time.Time{}); err == nil {
		t.Error("a bookmark two levels down is taken")
	}
}
