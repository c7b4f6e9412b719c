// Package page draws the pages of the bench: what the technician sees of a run,
// of the records and of the shop's patterns. The server fills in a view, a
// plain struct; the page is drawn from it. It knows no request and no store.
//
// It may import plan, run, diagram, scene, the SVG writer and words.
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

// Scheme is the brightness of the page.
type Scheme string

const (
	BySystem Scheme = "" // light or dark as set in the system
	Light    Scheme = "light"
	Dark     Scheme = "dark"
	Contrast Scheme = "contrast" // for sunlight
)

// Schemes lists the choices in the settings.
var Schemes = []Scheme{BySystem, Light, Dark, Contrast}

// SchemeCookie is the cookie for the scheme of a device: its script sets it,
// the server reads it.
const SchemeCookie = "drawdown-scheme"

// Frame is common to all pages.
type Frame struct {
	Words  *words.Catalogue
	Scheme Scheme    // from SchemeCookie
	Path   string    // of this page
	Now    time.Time // by the server's clock, in the shop's time zone
	Joined bool      // a tablet that joined with a code; it cannot share
	Dated  bool      // times always have their date
}

// Text are the words of the page.
func (f Frame) Text() words.Page { return f.Words.Page }

// Language is the tag of the page's language.
func (f Frame) Language() string { return f.Words.Language }

// when formats a time in the shop's time zone. On the same day it omits the
// date, unless the page is a lasting record.
func (f Frame) when(t time.Time) string {
	t = t.In(f.Now.Location())
	if !f.Dated && t.Format(time.DateOnly) == f.Now.Format(time.DateOnly) {
		return t.Format("15:04")
	}
	return t.Format("2006-01-02 15:04")
}

// Today is the day of the server, as a field for a day takes it.
func (f Frame) Today() string { return f.Now.Format(time.DateOnly) }

// pages are parsed for the first page: no other command needs them.
var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{"asset": asset, "modules": modules}).ParseFS(files, "templates/*.html"))
})

// modules are the scripts that the page of a run needs besides its own.
func modules() []string { return runModules }

var runModules = []string{"outbox.js", "entry.js", "live.js", "wait.js", "zoom.js", "device.js", "dialogs.js", "shown.js", "paper.js"}

// Write writes a page whose view is in a room of its own.
func Write(w io.Writer, name string, view any) error { return write(w, name, view) }

func write(w io.Writer, name string, view any) error {
	return pages().ExecuteTemplate(w, name+".html", view)
}
