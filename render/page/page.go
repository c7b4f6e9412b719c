// Package page draws the pages of the bench: what the technician sees of a run,
// of the records and of the shop's patterns. The server fills a view, a plain
// struct; the page is drawn from it. It sees no request and no store.
//
// It may import plans, runs, diagrams, scenes, the writer of SVG and words.
package page

import (
	"embed"
	"html/template"
	"io"
	"sync"
	"time"

	"drawdown/render/words"
)

//go:embed templates
var files embed.FS

// Scheme is how light the page is.
type Scheme string

const (
	BySystem Scheme = "" // light or dark as the system says
	Light    Scheme = "light"
	Dark     Scheme = "dark"
	Contrast Scheme = "contrast" // for the sun
)

// Schemes lists the choices of the settings.
var Schemes = []Scheme{BySystem, Light, Dark, Contrast}

// SchemeCookie is the cookie in which a device keeps its scheme: its script sets
// it, the server reads it.
const SchemeCookie = "drawdown-scheme"

// Frame is what stands about every page.
type Frame struct {
	Words  *words.Catalogue
	Scheme Scheme    // as SchemeCookie says
	Path   string    // of this page
	Now    time.Time // by the server's clock, in the shop's zone
	Joined bool      // a tablet that joined by a code: it cannot share
	Dated  bool      // times always come with their date
}

// Text are the words of the page.
func (f Frame) Text() words.Page { return f.Words.Page }

// Language is the tag of the page's language.
func (f Frame) Language() string { return f.Words.Language }

// when prints a time in the shop's zone: the time alone on the same day, unless the
// page is one that lasts.
func (f Frame) when(t time.Time) string {
	t = t.In(f.Now.Location())
	if !f.Dated && t.Format(time.DateOnly) == f.Now.Format(time.DateOnly) {
		return t.Format("15:04")
	}
	return t.Format("2006-01-02 15:04")
}

// Today is the day of the server, as a field for a day takes it.
func (f Frame) Today() string { return f.Now.Format(time.DateOnly) }

// pages are read at the first page: no other command needs them.
var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{"asset": asset, "modules": modules}).ParseFS(files, "templates/*.html"))
})

// modules are the scripts that the page of a run needs beside its own.
func modules() []string { return runModules }

var runModules = []string{"outbox.js", "entry.js", "live.js", "wait.js", "zoom.js", "device.js", "dialogs.js", "shown.js", "paper.js"}

func write(w io.Writer, name string, view any) error {
	return pages().ExecuteTemplate(w, name+".html", view)
}
