package page

import (
	"cmp"
	"io"

	"drawdown/render/words"
)

// SettingsView is the page for language, brightness, sound and initials, at
// /settings. ?lang= selects the language; everything else stays on the device.
type SettingsView struct{ Frame }

// Settings writes the settings.
func Settings(w io.Writer, v SettingsView) error { return write(w, "settings", v) }

type languageChoice struct {
	Tag, Name string
	Now       bool
}

// Languages are the languages under their own names.
func (v SettingsView) Languages() []languageChoice {
	var all []languageChoice
	for _, tag := range words.Languages() {
		if c, err := words.Find(tag); err == nil {
			all = append(all, languageChoice{tag, c.Name, tag == v.Words.Language})
		}
	}
	return all
}

type schemeChoice struct {
	Scheme Scheme
	Name   string
	Now    bool
}

// SchemeChoices are the choices of brightness.
func (v SettingsView) SchemeChoices() []schemeChoice {
	var all []schemeChoice
	for _, s := range Schemes {
		all = append(all, schemeChoice{s, v.Text().Settings.Schemes[cmp.Or(string(s), "system")], s == v.Scheme})
	}
	return all
}

// Problem is why a page cannot be shown.
type Problem string

const (
	NotFound   Problem = "not found"   // no such page, run or pattern
	NoKey      Problem = "no key"      // neither key nor session
	OtherHost  Problem = "other host"  // requested under another host name
	Ended      Problem = "ended"       // the session was ended
	TooMuch    Problem = "too much"    // too large, too many or too slow
	NotAllowed Problem = "not allowed" // the method or the sender
	Failed     Problem = "failed"      // an internal error
)

// Problems lists all problems.
var Problems = []Problem{NotFound, NoKey, OtherHost, Ended, TooMuch, NotAllowed, Failed}

// MessageView says why a page cannot be shown, and what to do.
type MessageView struct {
	Frame
	Problem Problem
	Detail  string // in words; may be empty
}

// Message writes the message page.
func Message(w io.Writer, v MessageView) error { return write(w, "message", v) }

// Title names the problem.
func (v MessageView) Title() string { return v.Text().Message.Titles[string(v.Problem)] }

// Says explains what to do.
func (v MessageView) Says() string { return v.Text().Message.Says[string(v.Problem)] }

// Home reports whether the first page may be shown.
func (v MessageView) Home() bool {
	return v.Problem != NoKey && v.Problem != OtherHost && v.Problem != Ended
}
