package bench

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"net/http"
	"slices"
	"strings"

	"drawdown/cmd/internal/bench/drafts"
	"drawdown/cmd/internal/files"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/edit"
	"drawdown/patterns/source"
	"drawdown/render"
	"drawdown/render/page/editpage"
)

// edited is a pattern file as it is on the disk.
type edited struct {
	source  source.Source
	file    string // its name in the folder; empty for a built-in one
	builtin bool
}

// editable finds a pattern file by its name.
func (s *shop) editable(name string) (edited, error) {
	if isName(name) {
		for _, ending := range []string{".yaml", ".yml"} {
			from, err := patterns.OpenIn(s.root, name+ending)
			if err == nil {
				raw, err := s.root.ReadFile(name + ending)
				if err != nil || !bytes.Equal(raw, from.Data) || !drafts.IsText(raw) {
					return edited{}, wrong(http.StatusUnprocessableEntity, NotEditable, finding.Values{"name": cut(name)})
				}
				return edited{from, name + ending, false}, nil
			}
			if !errors.Is(err, fs.ErrNotExist) {
				return edited{}, err
			}
		}
		if slices.Contains(patterns.Builtin(), name) {
			from, err := patterns.Open(name, strings.NewReader(""))
			return edited{from, "", true}, err
		}
	}
	return edited{}, wrong(http.StatusNotFound, NoPattern, finding.Values{"name": cut(name), "meant": "", "all": s.names()})
}

func (b *Bench) editPage(w http.ResponseWriter, r *http.Request) error {
	of, err := b.shop.editable(r.PathValue("name"))
	if err != nil {
		return err
	}
	f := b.frame(r)
	v := editpage.View{Frame: f, Name: r.PathValue("name"), File: string(of.source.Data), Base: stampOf(of)}
	if v.Draft, err = drafts.Of(of.source, v.Name, f); err != nil {
		return err
	}
	v.Title = cmp.Or(v.Draft.Title, v.Name)
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return editpage.Write(to, v) })
}

// stampOf identifies the bytes of a file; a file that is not there has none.
func stampOf(of edited) string {
	if of.builtin {
		return ""
	}
	sum := sha256.Sum256(of.source.Data)
	return hex.EncodeToString(sum[:16])
}

// afterEdit answers an edit: the new text, how to take the edit back, and what the
// page shows.
type afterEdit struct {
	Text     string      `json:"text"`
	Back     edit.Change `json:"back"`
	Operated bool        `json:"operated"` // not typed: the field gets the text
	Picture  string      `json:"picture,omitempty"`
	Draft    string      `json:"draft"`
}

func (b *Bench) postEdit(w http.ResponseWriter, r *http.Request) error {
	name := r.PathValue("name")
	of, err := b.shop.editable(name)
	if err != nil {
		return err
	}
	var ask drafts.Ask
	if err := b.readUpTo(w, r, &ask, mostPattern); err != nil {
		return err
	}
	from := of.source
	if ask.Text != nil {
		from.Data = []byte(*ask.Text)
	}
	change, err := drafts.Made(from, ask)
	if err == nil {
		from.Data, err = change.Apply(from.Data)
	}
	var found finding.Finding
	if errors.As(err, &found) {
		return failure{http.StatusUnprocessableEntity, found}
	} else if err != nil {
		return err
	}
	f := b.frame(r)
	f.Path = "/patterns/" + name + "/edit"
	draft, err := drafts.Of(from, name, f)
	if err != nil {
		return err
	}
	answered := afterEdit{Text: string(from.Data), Back: change.Inverse(), Operated: ask.Typed == nil}
	if answered.Draft, answered.Picture, err = drawn(draft); err != nil {
		return err
	}
	answer(w, http.StatusOK, answered)
	return nil
}

// drawn writes what changes with an edit. While a file has errors, the picture of
// before stays.
func drawn(d editpage.Draft) (forms, picture string, err error) {
	var text bytes.Buffer
	if err = editpage.WriteDraft(&text, d); err != nil {
		return "", "", err
	}
	forms = text.String()
	text.Reset()
	if len(d.Joint.Marks) > 0 {
		err = editpage.WritePicture(&text, d)
	}
	return forms, text.String(), err
}

// keptText answers a saved text, or one that was not: another was saved meanwhile.
type keptText struct {
	Base   string  `json:"base"`
	Theirs *string `json:"theirs,omitempty"`
	Reason string  `json:"reason,omitempty"`
}

// putPattern saves a text whole, unless the file is no longer the one that was
// edited.
func (b *Bench) putPattern(w http.ResponseWriter, r *http.Request) error {
	name := r.PathValue("name")
	if !isName(name) {
		return wrong(http.StatusUnprocessableEntity, NoFileName, finding.Values{"name": cut(name)})
	}
	var sent struct {
		Text string `json:"text"`
		Base string `json:"base"`
	}
	if err := b.readUpTo(w, r, &sent, mostPattern); err != nil {
		return err
	}
	b.shop.saving.Lock()
	defer b.shop.saving.Unlock()
	of, err := b.shop.editable(name)
	if err != nil && !errors.As(err, new(failure)) || errors.Is(err, NotEditable) {
		return err
	}
	if now := stampOf(of); err == nil && now != sent.Base {
		theirs := string(of.source.Data)
		answer(w, http.StatusConflict, keptText{Base: now, Theirs: &theirs, Reason: b.reader(r).Error(finding.Failed(edit.TextChanged, nil))})
		return nil
	}
	file := cmp.Or(of.file, name+".yaml")
	if _, err := files.Write(b.shop.folder, []render.File{{Name: file, Data: []byte(sent.Text)}}); err != nil {
		return err
	}
	saved := edited{source: source.Source{Data: []byte(sent.Text)}, file: file}
	answer(w, http.StatusOK, keptText{Base: stampOf(saved)})
	return nil
}
