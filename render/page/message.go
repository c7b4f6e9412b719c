package page

import "io"

// SettingsView is the page of language, scheme and sound.
type SettingsView struct{ Frame }

// Settings writes the settings.
func Settings(w io.Writer, v SettingsView) error { return write(w, "settings", v) }

// Problem is why a page cannot be shown.
type Problem string

const (
	NotFound   Problem = "not found"   // no such page, run or pattern
	NoKey      Problem = "no key"      // neither key nor session
	OtherHost  Problem = "other host"  // asked for under a name that is not ours
	Ended      Problem = "ended"       // the session was ended
	TooMuch    Problem = "too much"    // too large, too many, too slow
	NotAllowed Problem = "not allowed" // the method or the sender
	Failed     Problem = "failed"      // a fault on our side
)

// Problems lists them.
var Problems = []Problem{NotFound, NoKey, OtherHost, Ended, TooMuch, NotAllowed, Failed}

// MessageView says why there is no such page, and what to do.
type MessageView struct {
	Frame
	Problem Problem
	Detail  string // worded already; may be empty
}

// Message writes it.
func Message(w io.Writer, v MessageView) error { return write(w, "message", v) }
