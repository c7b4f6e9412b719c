package book_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/machine"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/book"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// p4 is the built-in machine, with every joint planned.
func p4(t testing.TB) overhaul.Overhaul {
	t.Helper()
	source, err := patterns.Machines.Open("p4-engine", nil)
	if err != nil {
		t.Fatal(err)
	}
	machine, problems := machine.Read(source)
	o := machine.Overhaul
	for _, s := range machine.Strip {
		if s.Pattern != nil {
			input, found := patterns.Read(*s.Pattern)
			problems = append(problems, found...)
			p, err := plan.Build(input)
			if err != nil {
				t.Fatal(err)
			}
			s.Joint = &p
		}
		o.Tasks = append(o.Tasks, s.Task)
	}
	if problems.Stops() {
		t.Fatal(problems.Error())
	}
	return o
}

// The whole book passes the layout check on every paper, upright and on its
// side; and in every language on the paper with the least room. A plain run takes
// two papers and two languages: the sheets in it meet all in their own rooms.
func TestLayout(t *testing.T) {
	o := p4(t)
	if !testkit.Full() {
		for _, ask := range sheettest.Requests(0) {
			checkBook(t, o, ask)
		}
		return
	}
	for _, paper := range sheettest.Papers() {
		checkBook(t, o, sheettest.English(paper))
	}
	for _, language := range wordstest.All() {
		checkBook(t, o, sheet.Request{Paper: sheettest.Paper(t, "a5"), Words: language})
	}
}

func checkBook(t *testing.T, o overhaul.Overhaul, ask sheet.Request) {
	t.Helper()
	doc, _, err := book.Document(o, book.Request{Request: ask})
	if err != nil {
		t.Fatal(err)
	}
	sheettest.Check(t, o.Title, ask, doc.Pages)
}

// contents returns the words of all pages of the contents.
func contents(doc scene.Document) []scene.Text {
	var all []scene.Text
	for _, page := range doc.Pages {
		if words := scenetest.Texts(page); words[0].Content == "Contents" {
			all = append(all, words...)
		}
	}
	return all
}

// The contents lead to the right pages: each joint's papers stand where its line
// says.
func TestContentsLeadToTheirPages(t *testing.T) {
	paper, _ := sheet.FindPaper("a4")
	o := p4(t)
	doc, _, err := book.Document(o, book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}})
	if err != nil {
		t.Fatal(err)
	}
	all := contents(doc)
	for _, j := range o.Joints() {
		title := fmt.Sprintf("%d %s", j.Number, j.Title)
		at := slices.IndexFunc(all, func(text scene.Text) bool { return text.Content == title })
		if at < 0 {
			t.Errorf("the contents lack %s", title)
			continue
		}
		for k, want := range []string{"LOOSEN", "tray", "CONDITION", "TIGHTEN"} {
			n, err := strconv.Atoi(all[at+1+k].Content)
			if err != nil {
				t.Fatal(err)
			}
			var words []string
			for _, text := range scenetest.Texts(doc.Pages[n-1]) {
				words = append(words, text.Content)
			}
			if said := strings.Join(words, "\n"); !strings.Contains(said, title) || !strings.Contains(said, want) {
				t.Errorf("%s: page %d is not its %s", title, n, want)
			}
			if marks := doc.Pages[n-1].Bookmarks; len(marks) != 1 || !strings.HasPrefix(marks[0].Title, fmt.Sprintf("%d %s", j.Number, j.Title)) {
				t.Errorf("%s: page %d has the bookmarks %v", title, n, marks)
			}
		}
	}
}

// Every page carries a fingerprint and its count.
func TestEveryPageIsCountedAndMarked(t *testing.T) {
	paper, _ := sheet.FindPaper("letter")
	doc, _, err := book.Document(p4(t), book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}})
	if err != nil {
		t.Fatal(err)
	}
	for k, page := range doc.Pages {
		count, marked := false, false
		for _, text := range scenetest.Texts(page) {
			count = count || text.Content == strconv.Itoa(k+1)+" / "+strconv.Itoa(len(doc.Pages))
			marked = marked || strings.Contains(text.Content, "card ") || strings.Contains(text.Content, "book ")
		}
		if !count || !marked {
			t.Errorf("page %d: counted %t, marked %t", k+1, count, marked)
		}
	}
}

// pageOf returns the first page with this title and badge, and its number from
// 1.
func pageOf(t *testing.T, doc scene.Document, title, badge string) (scene.Page, int) {
	t.Helper()
	for k, page := range doc.Pages {
		if all := scenetest.Texts(page); all[0].Content == title && all[1].Content == badge {
			return page, k + 1
		}
	}
	t.Fatalf("the book has no page %s, %s", title, badge)
	return scene.Page{}, 0
}

// inOrder makes sure that lines that begin so stand on a page, one below the
// other.
func inOrder(t *testing.T, page scene.Page, begins ...string) {
	t.Helper()
	last := 0.0
	for _, begin := range begins {
		i := slices.IndexFunc(scenetest.Texts(page), func(text scene.Text) bool { return strings.HasPrefix(text.Content, begin) })
		if i < 0 {
			t.Errorf("%q is not there", begin)
			continue
		}
		if y := scenetest.Texts(page)[i].At.Y; y <= last {
			t.Errorf("%q stands at %g, not below %g", begin, y, last)
		} else {
			last = y
		}
	}
}

func a4Book(t *testing.T) scene.Document {
	t.Helper()
	paper, _ := sheet.FindPaper("a4")
	doc, _, err := book.Document(p4(t), book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}})
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// What stands before a joint in the list stands on its card as well, in the
// order in which it is done: faces and gaskets before the part that goes on.
func TestCardsShowWhatComesBefore(t *testing.T) {
	doc := a4Book(t)
	page, _ := pageOf(t, doc, "6 Camshaft caps", "LOOSEN")
	inOrder(t, page, "Out: timing cover", "First: Crankshaft turned clockwise", "Out: timing chain", "Timing pin in before")
	page, _ = pageOf(t, doc, "8 Oil sump", "TIGHTEN")
	inOrder(t, page, "NEW: pickup O", "Sealant: liquid sealant", "Faces clean and dry", "In: sump", "All fasteners")
	page, _ = pageOf(t, doc, "6 Camshaft caps", "TIGHTEN")
	inOrder(t, page, "First: Crankshaft turned by", "Oil every bearing", "In: camshaft")
}

// A step whose figures this book lacks leads to the list in which they are
// written, and warns while building.
func TestFiguresOfTheManualAreWrittenIn(t *testing.T) {
	doc := a4Book(t)
	_, number := pageOf(t, doc, "Figures from the manual", "BOOK")
	steps, _ := pageOf(t, doc, "Rebuild", "BOOK")
	inOrder(t, steps, "Prepare: all ready", "Figures from the manual: all rows filled in", "STOP: figures on page", "NEW: main shells", "In: crankshaft", "Caps at the torque", "Clearance measured")
	strip, _ := pageOf(t, doc, "Teardown", "BOOK")
	inOrder(t, strip, "Tools: all ready", "Figures from the manual: sizes filled in", "Out: drain plug")
	var all strings.Builder
	for _, page := range doc.Pages {
		for _, text := range scenetest.Texts(page) {
			all.WriteString(text.Content + " ")
		}
	}
	if want := fmt.Sprintf("STOP: figures on page %d: pickup bolts, oil pump bolts", number); !strings.Contains(all.String(), want) {
		t.Errorf("the steps do not say %q", want)
	}

	o := p4(t)
	for i := range o.Tasks {
		o.Tasks[i].Manual, o.Tasks[i].Figures = nil, nil
	}
	paper, _ := sheet.FindPaper("a4")
	without, _, _ := book.Document(o, book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}, Trays: book.NoTrays})
	for _, page := range without.Pages {
		for _, text := range scenetest.Texts(page) {
			if strings.HasPrefix(text.Content, "Figures from the manual") || strings.Contains(text.Content, "STOP: figures") {
				t.Errorf("no part goes by the manual, and yet: %s", text.Content)
			}
		}
	}
}

// A list that would end on a page of a row or two is set closer.
func TestNoListEndsOnANearlyEmptyPage(t *testing.T) {
	doc := a4Book(t)
	for k, page := range doc.Pages {
		all := scenetest.Texts(page)
		first := k == 0 || scenetest.Texts(doc.Pages[k-1])[0].Content != all[0].Content
		if all[1].Content != "BOOK" || first {
			continue
		}
		lines := map[float64]bool{}
		for _, text := range all[:len(all)-1] { // the page count stands by itself
			lines[text.At.Y] = true
		}
		const headAndFoot = 6 // title, badge, what it is about, which book, the manual first, a place to sign
		if rows := len(lines) - headAndFoot; rows < 6 {
			t.Errorf("page %d, %s, has %d lines", k+1, all[0].Content, rows)
		}
	}
}

// Progress is told once for each joint's papers and ends with all of them.
func TestProgress(t *testing.T) {
	paper, _ := sheet.FindPaper("a4")
	var told []int
	book.Document(p4(t), book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}, Trays: book.NoTrays, Drawn: func(done, all int) {
		told = append(told, done)
		if all != 20 {
			t.Errorf("%d of %d", done, all)
		}
	}})
	if len(told) != 20 || told[19] != 20 {
		t.Errorf("told %v", told)
	}
}

// The pictures of all joints stand on one page of letter paper, a little lower,
// rather than the last alone on a second.
func TestOverviewSavesAPage(t *testing.T) {
	doc, _, err := book.Document(p4(t), book.Request{Request: sheettest.English(sheettest.Paper(t, "letter")), Trays: book.NoTrays})
	if err != nil {
		t.Fatal(err)
	}
	pages := 0
	for _, page := range doc.Pages {
		if scenetest.Texts(page)[0].Content == words.English().Book.Overview {
			pages++
		}
	}
	if pages != 1 {
		t.Errorf("the overview takes %d pages", pages)
	}
}
