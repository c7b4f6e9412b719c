package book_test

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/book"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

var (
	decimalPoint = regexp.MustCompile(`\d\.\d`)
	// Property classes have a point in every language, and the file's own words
	// are not changed.
	ownPoint = regexp.MustCompile(`\b(8\.8|10\.9|12\.9)\b|manual \d\.\d`)
)

// drawn caches the books drawn by papers.
var drawn = map[string]scene.Document{}

// papers draws the book in a language, once for all tests.
func papers(t *testing.T, language, size string) scene.Document {
	t.Helper()
	key := language + " " + size
	if doc, ok := drawn[key]; ok {
		return doc
	}
	ask := sheet.Request{Paper: sheettest.Paper(t, size), Words: sheettest.Language(t, language)}
	doc, _, err := book.Document(p4(t), book.Request{Request: ask, Trays: book.ReducedTrays})
	if err != nil {
		t.Fatal(err)
	}
	drawn[key] = doc
	return doc
}

// No figure on any sheet of the book has a decimal point in a language with a
// decimal comma.
func TestFiguresOfTheLanguage(t *testing.T) {
	for _, language := range words.Languages()[1:] {
		for _, page := range papers(t, language, "a4").Pages {
			for _, text := range scenetest.Texts(page) {
				if decimalPoint.MatchString(ownPoint.ReplaceAllString(text.Content, "")) {
					t.Errorf("%s, page %s: %q", language, page.Name, text.Content)
				}
			}
		}
	}
}

// No word of the catalogue is broken in any table on any paper.
func TestTablesBreakNoWord(t *testing.T) {
	for k, language := range words.Languages() {
		w, _ := words.Find(language)
		whole := map[string]bool{}
		for _, field := range strings.Fields(fmt.Sprint(reflect.ValueOf(w.Book))) {
			whole[field] = true
		}
		for n, size := range []string{"a4", "a5"} {
			if !testkit.Full() && n != k%2 {
				continue
			}
			paper, _ := sheet.FindPaper(size)
			for _, page := range papers(t, language, size).Pages {
				all := scenetest.Texts(page)
				for i := 1; i < len(all); i++ {
					above, below := all[i-1], all[i]
					if above.At.X != below.At.X || math.Abs(below.At.Y-above.At.Y-paper.Line) > 1e-6 {
						continue
					}
					head, tail := strings.Split(above.Content, " "), strings.Split(below.Content, " ")
					if joined := head[len(head)-1] + tail[0]; whole[joined] {
						t.Errorf("%s %s, page %s: %s is broken", language, size, page.Name, joined)
					}
				}
			}
		}
	}
}

// The list names lubricants as the cards do.
func TestLubricantsOfTheLanguage(t *testing.T) {
	for language, want := range map[string]string{"en": "engine oil", "es": "aceite de motor", "de": "Motoröl", "fr": "huile moteur"} {
		var said []string
		for _, page := range papers(t, language, "a4").Pages {
			for _, text := range scenetest.Texts(page) {
				said = append(said, text.Content)
			}
		}
		all := strings.Join(said, "\n")
		if !strings.Contains(all, "\n"+want+"\n") || language != "en" && strings.Contains(all, "engine oil") {
			t.Errorf("%s: the list does not say %q, or not only", language, want)
		}
	}
}

// What is asked of the manual is joined to its step in the way of the language:
// a French semicolon has a space before it.
func TestStepsAreJoinedAsTheLanguageDoes(t *testing.T) {
	paper, _ := sheet.FindPaper("a4")
	for language, joint := range map[string]string{"en": "; ", "de": "; ", "es": "; ", "fr": "\u00a0; "} {
		w := sheettest.Language(t, language)
		doc, _, err := book.Document(p4(t), book.Request{Request: sheet.Request{Paper: paper, Words: w}, Trays: book.NoTrays})
		if err != nil {
			t.Fatal(err)
		}
		blanks := strings.NewReplacer("\u00a0", " ") // non-breaking, and breaking
		all := ""
		for _, page := range doc.Pages {
			for _, text := range scenetest.Texts(page) {
				all += blanks.Replace(text.Content) + " "
			}
		}
		for _, begins := range []string{w.Book.ByManual} {
			begins, _, _ = strings.Cut(blanks.Replace(begins), "%s")
			joined, any := strings.Count(all, blanks.Replace(joint)+begins), strings.Count(all, "; "+begins)
			if joined == 0 || joined != any {
				t.Errorf("%s: %q is joined %d times, as it should be %d times", language, begins, any, joined)
			}
		}
	}
}
