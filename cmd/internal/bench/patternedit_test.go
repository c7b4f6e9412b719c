package bench

import (
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/patterns/edit"
)

func madeEdit(s *shopfloor, name string, ask map[string]any) (out struct {
	Text    string
	Back    edit.Change
	Picture string
	Draft   string
}) {
	s.t.Helper()
	body, err := json.Marshal(ask)
	if err != nil {
		s.t.Fatal(err)
	}
	s.want(http.StatusOK, s.ask("POST", "/api/patterns/"+name+"/edit", string(body))).into(s.t, &out)
	return out
}

// Every built-in pattern opens on the page, and an edit is made, drawn and taken
// back.
func TestEditsOfBuiltins(t *testing.T) {
	s := served(t)
	for _, name := range patterns.Builtin() {
		s.want(http.StatusOK, s.ask("GET", "/patterns/"+name+"/edit", ""))
		first := madeEdit(s, name, map[string]any{})
		moved := madeEdit(s, name, map[string]any{"text": first.Text, "operations": []any{map[string]any{"do": "set", "path": []string{"title"}, "value": "Another"}}})
		if moved.Text == first.Text || moved.Picture == "" || !strings.Contains(moved.Draft, "Another") {
			t.Errorf("%s: %q", name, moved.Text)
		}
		back := madeEdit(s, name, map[string]any{"text": moved.Text, "change": moved.Back})
		if back.Text != first.Text || back.Picture != first.Picture {
			t.Errorf("%s differs after its edit is taken back", name)
		}
	}
}

// Names that lead elsewhere, texts that are no pattern and edits that do not fit
// are refused with the reason; nothing is written.
func TestHostileEdits(t *testing.T) {
	s := served(t)
	for _, c := range []struct {
		method, path, body string
		status             int
	}{
		{"PUT", "/api/patterns/..%2Fx", `{"text":"a","base":""}`, http.StatusUnprocessableEntity},
		{"PUT", "/api/patterns/.x", `{"text":"a","base":""}`, http.StatusUnprocessableEntity},
		{"PUT", "/api/patterns/lid", `{"text":"a","base":""}`, http.StatusConflict},
		{"PUT", "/api/patterns/lid", `{"text":1}`, http.StatusBadRequest},
		{"POST", "/api/patterns/none/edit", `{}`, http.StatusNotFound},
		{"POST", "/api/patterns/p4-engine/edit", `{}`, http.StatusNotFound},
		{"POST", "/api/patterns/lid/edit", `{"operations":[{"do":"dance"}]}`, http.StatusUnprocessableEntity},
		{"POST", "/api/patterns/lid/edit", `{"operations":[{"do":"move","ids":["A1"],"x":"1e9"}]}`, http.StatusUnprocessableEntity},
		{"POST", "/api/patterns/lid/edit", `{"change":[{"at":-5,"old":"","new":"x"}]}`, http.StatusUnprocessableEntity},
		{"POST", "/api/patterns/lid/edit", `{"text":"a: [","operations":[{"do":"drop","path":["a"]}]}`, http.StatusUnprocessableEntity},
		{"POST", "/api/patterns/lid/edit", `{"text":"<script>alert(1)</script>"}`, http.StatusOK},
		{"POST", "/api/patterns/lid/edit", `{"text":"\u0000"}`, http.StatusOK},
		{"POST", "/api/patterns/lid/edit", `{"text":""}`, http.StatusOK},
		{"GET", "/patterns/none/edit", "", http.StatusNotFound},
	} {
		r := s.ask(c.method, c.path, c.body)
		if r.status != c.status || strings.Contains(string(r.body), "<script>alert") && c.method == "POST" && strings.Contains(string(r.body), `"draft":"<script`) {
			t.Errorf("%s %s %s: %v, want %d", c.method, c.path, c.body, r, c.status)
		}
	}
	if entries, err := os.ReadDir(s.shop); err != nil || len(entries) != 1 {
		t.Errorf("the folder has %v, %v", entries, err)
	}
	if text, err := os.ReadFile(filepath.Join(s.shop, "lid.yaml")); err != nil || string(text) != lid {
		t.Errorf("the file is now %q, %v", text, err)
	}
}

// A name with quotes and brackets is text on the page, wherever it is shown.
func TestHostileNamesAreText(t *testing.T) {
	s := served(t)
	s.write("hostile.yaml", "drawdown: 1\ntitle: \"<img src=x onerror=alert(1)>\"\nkinds: {\"<b>\": {thread: M8}}\nfasteners: [{id: \"A<i>\", at: [0, 0], kind: \"<b>\"}, {id: \"'>\", at: [50, 0], kind: \"<b>\"}]\n")
	body := string(s.want(http.StatusOK, s.ask("GET", "/patterns/hostile/edit", "")).body)
	for _, tag := range []string{"<img", "<b>", "<i>"} {
		if strings.Contains(strings.ReplaceAll(body, `<b class="of">`, ""), tag) {
			t.Errorf("%s is a tag of the page", tag)
		}
	}
}
