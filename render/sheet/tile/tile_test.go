package tile_test

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/words"
)

// spot is a round piece with a word in it.
func spot(name string, x, y, r float64) tile.Piece {
	return tile.Piece{
		Name: name,
		Edge: scene.Shape{Path: scene.Circle(x, y, r), Stroke: scene.Black, Width: 0.4, Tag: scene.Tag{Name: name, Role: scene.Mark}},
		Items: []scene.Item{font.Set(scene.Text{At: scene.Point{X: x, Y: y + 1}, Size: 3, Anchor: scene.Middle, Ink: scene.Black, Content: name,
			Tag: scene.Tag{Name: name, Role: scene.Number}})},
	}
}

func word(content string, x, y float64) tile.Piece {
	return tile.Piece{Name: content, Items: []scene.Item{font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: 4.2, Anchor: scene.Middle, Ink: scene.Black, Content: content})}}
}

func request(t *testing.T, paper string) tile.Sheets {
	t.Helper()
	p, err := sheet.FindPaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	return tile.Sheets{Request: sheet.Request{Paper: p, Words: words.English()}, Name: "part", Title: "Part", Subtitle: "sheet", Legend: []string{"How to read it."}, Reduced: 1}
}

// pagesOf prints a drawing that ignores seams.
func pagesOf(d tile.Contents, ask tile.Sheets) (pages []scene.Page, notes []string, err error) {
	pages, notes, _, err = tile.Join(func(tile.Seams) tile.Contents { return d }, ask)
	return pages, notes, err
}

func contents(pages []scene.Page) string {
	var all []string
	for _, page := range pages {
		for _, it := range page.Items {
			if text, ok := it.(scene.Text); ok {
				all = append(all, text.Content)
			}
		}
	}
	return strings.Join(all, "\n")
}

// Wherever a seam is, each piece is whole on a sheet: rows of spots at all
// positions, on every paper.
func TestEveryPieceIsWhole(t *testing.T) {
	for _, paper := range sheet.PaperNames() {
		for shift := 0.0; shift < 40; shift += 1.3 {
			var d tile.Contents
			for k := range 30 {
				d.Pieces = append(d.Pieces, spot(fmt.Sprintf("P%d", k), float64(k%5)*(82+shift), float64(k/5)*(41+shift)+shift, 20))
			}
			pages, notes, err := pagesOf(d, request(t, paper))
			if err != nil {
				t.Fatal(err)
			}
			whole := map[string]bool{}
			for _, page := range pages {
				for _, fault := range scenetest.CheckLayout(page) {
					t.Error(fault)
				}
				for _, it := range page.Items {
					if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
						whole[s.Tag.Name] = true
					}
				}
			}
			if len(whole) != len(d.Pieces) {
				t.Fatalf("%s, moved by %.1f: %d of %d spots are whole; %q", paper, shift, len(whole), len(d.Pieces), notes)
			}
		}
	}
}

// A drawing that fits on one sheet has no sheet name, no crop marks and no
// joining instructions.
func TestOneSheet(t *testing.T) {
	pages, notes, err := pagesOf(tile.Contents{Pieces: []tile.Piece{spot("P", 0, 0, 20)}}, request(t, "a4"))
	if err != nil || len(pages) != 1 || len(notes) > 0 || pages[0].Name != "part" {
		t.Fatalf("%d pages, notes %q, error %v", len(pages), notes, err)
	}
	if all := contents(pages); strings.Contains(all, "A1") || strings.Contains(all, "Cut this") || !strings.Contains(all, "100 %") {
		t.Errorf("the sheet says:\n%s", all)
	}
}

// Paper is turned to landscape if that takes fewer sheets; landscape paper is
// not turned.
func TestFewestSheets(t *testing.T) {
	wide := tile.Contents{Pieces: []tile.Piece{spot("P", 0, 0, 5), spot("Q", 230, 0, 5)}}
	high := tile.Contents{Pieces: []tile.Piece{spot("P", 0, 0, 5), spot("Q", 0, 200, 5)}}
	ask := request(t, "a4")
	for _, c := range []struct {
		drawing   tile.Contents
		landscape bool
		sheets    int
		lies      bool
	}{{wide, false, 1, true}, {high, false, 1, false}, {high, true, 2, true}} {
		one := ask
		if c.landscape {
			one.Paper = one.Paper.Landscape()
		}
		pages, _, err := pagesOf(c.drawing, one)
		if err != nil {
			t.Fatal(err)
		}
		if lies := pages[0].Width > pages[0].Height; len(pages) != c.sheets || lies != c.lies {
			t.Errorf("%d sheets, on their side: %v; want %d, %v", len(pages), lies, c.sheets, c.lies)
		}
	}
}

// If both take as many sheets, the paper is not turned, so that a book need not
// be turned either.
func TestPaperStays(t *testing.T) {
	for _, d := range []tile.Contents{
		{Pieces: []tile.Piece{spot("P", 0, 0, 5), spot("Q", 100, 100, 5)}},
		{Pieces: []tile.Piece{spot("P", 0, 0, 5), spot("Q", 300, 300, 5), spot("R", 0, 300, 5), spot("S", 300, 0, 5)}},
	} {
		ask := request(t, "a4")
		upright, _, err := pagesOf(d, ask)
		if err != nil {
			t.Fatal(err)
		}
		ask.Paper = ask.Paper.Landscape()
		aside, _, err := pagesOf(d, ask)
		if err != nil {
			t.Fatal(err)
		}
		if len(upright) != len(aside) || upright[0].Width > upright[0].Height {
			t.Errorf("%d sheets %g wide, %d on their side", len(upright), upright[0].Width, len(aside))
		}
	}
}

// A cut goes beside a spot if there is space: the sheet above shows no part of
// the spot (first principles).
func TestCutsLieBesideSpots(t *testing.T) {
	for shift := 0.0; shift < 30; shift += 2.5 {
		d := tile.Contents{Lines: []scene.Shape{{Path: scene.Rect(0, 0, 300, 100, 0), Stroke: scene.Black, Width: 0.3}}}
		for k := range 7 {
			d.Pieces = append(d.Pieces, spot(fmt.Sprintf("P%d", k), 20+shift+float64(k)*38, 50, 12))
		}
		pages, _, err := pagesOf(d, request(t, "a5"))
		if err != nil {
			t.Fatal(err)
		}
		for _, page := range pages {
			for _, it := range page.Items {
				if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark && s.Path.Bounds().Width() < 23.9 {
					t.Errorf("moved by %g: page %s shows a part of %s", shift, page.Name, s.Tag.Name)
				}
			}
		}
	}
}

// An empty sheet is not printed; the key plan and the notes say so.
func TestEmptySheets(t *testing.T) {
	d := tile.Contents{Pieces: []tile.Piece{spot("P", 0, 0, 10), spot("Q", 600, 0, 10), spot("R", 600, 700, 10)}}
	pages, notes, err := pagesOf(d, request(t, "a4"))
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(notes, "\n")
	if len(pages) != 3 || !strings.Contains(all, "is empty and is left out") || !strings.Contains(contents(pages), "Crossed out in the plan") {
		t.Errorf("%d pages, notes:\n%s", len(pages), all)
	}
}

// Words that a seam would cut move onto a sheet; words that do not fit there
// are reported.
func TestWordsAtAJoint(t *testing.T) {
	d := tile.Contents{Pieces: []tile.Piece{spot("P", 0, 0, 5), spot("Q", 300, 0, 5)}}
	for x := 0.0; x <= 300; x += 7 {
		with := d
		with.Words = []tile.Piece{word("A LABEL OF SOME LENGTH", x, 40)}
		pages, notes, err := pagesOf(with, request(t, "a5"))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(contents(pages), "A LABEL OF SOME LENGTH") || len(notes) > 0 && strings.Contains(notes[0], "words") {
			t.Errorf("at %.0f the label is gone; %q", x, notes)
		}
		for _, page := range pages {
			for _, fault := range scenetest.CheckLayout(page) {
				t.Errorf("at %.0f: %s", x, fault)
			}
		}
	}
	d.Words = []tile.Piece{word(strings.Repeat("A LABEL WITHOUT END ", 6), 150, 40)}
	_, notes, err := pagesOf(d, request(t, "a5"))
	if err != nil || !strings.Contains(strings.Join(notes, "\n"), "do not fit") {
		t.Errorf("notes %q, %v", notes, err)
	}
}

// A piece larger than the paper is reported.
func TestPieceLargerThanTheSheet(t *testing.T) {
	_, notes, err := pagesOf(tile.Contents{Pieces: []tile.Piece{spot("HUGE", 0, 0, 120)}}, request(t, "a5"))
	if err != nil || len(notes) == 0 || !strings.Contains(strings.Join(notes, "\n"), "HUGE is larger than a sheet of a5") {
		t.Errorf("notes %q, %v", notes, err)
	}
}

// Fit gives the largest scale in tenths that fits on one page (a part reduced
// more than about three times may lose another tenth).
func TestFit(t *testing.T) {
	draw := func(reduced float64) tile.Contents {
		return tile.Contents{Lines: []scene.Shape{{Path: scene.Rect(0, 0, 800/reduced, 300/reduced, 0), Stroke: scene.Black, Width: 0.3}}}
	}
	ask := request(t, "a4")
	got := tile.Fit(draw, ask)
	one := func(reduced float64) int {
		ask.Reduced = reduced
		pages, _, err := pagesOf(draw(reduced), ask)
		if err != nil {
			t.Fatal(err)
		}
		return len(pages)
	}
	if one(got) != 1 || one(got-0.1) == 1 {
		t.Errorf("1 : %.1f takes %d sheets, 1 : %.1f %d", got, one(got), got-0.1, one(got-0.1))
	}
}
