package bench

import (
	"net/http"
	"strings"
	"testing"

	"drawdown/cmd/internal/job"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/book"
	"drawdown/render/sheet/sheettest"
)

// What the page of a job says of a part, a joint or a note is in the printed book of
// the machine, word for word. The book has a line for each action; it begins with a
// capital.
func TestSameWordsAsTheBook(t *testing.T) {
	t.Parallel()
	o, problems, err := job.LoadMachine("p4-engine", strings.NewReader(""))
	if err != nil || problems.Stops() {
		t.Fatal(err, problems)
	}
	document, _, err := book.Document(o, book.Request{Request: sheettest.English(sheet.Papers[1]), Trays: book.NoTrays})
	if err != nil {
		t.Fatal(err)
	}
	printed := plainWords(scenetest.Said(document.Pages...))
	s := served(t)
	var v struct {
		Teardown, Rebuild []struct{ Part, Note, Title, Remark string }
	}
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+s.job(`{"of":"p4-engine","who":"RA"}`), "")).into(t, &v)
	count := 0
	for _, l := range append(v.Teardown, v.Rebuild...) {
		for sentence := range strings.SplitSeq(l.Part+";"+l.Note+";"+l.Title+";"+l.Remark, ";") {
			if said := plainWords(sentence); said != "" {
				count++
				if !strings.Contains(printed, said) {
					t.Errorf("the book does not say %q", sentence)
				}
			}
		}
	}
	if count < 100 {
		t.Errorf("only %d sentences were compared", count)
	}
}

// plainWords is a text in small letters, with one blank between its words.
func plainWords(text string) string {
	return strings.ToLower(strings.Join(strings.Fields(text), " "))
}
