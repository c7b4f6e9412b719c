// Package player writes an HTML page that plays the work on a joint step by
// step. The page is a single file that loads nothing else: it works from a
// memory stick, on a computer without a network. It may import frames, words
// and the SVG writer.
package player

import (
	"bytes"
	_ "embed"
	"html/template"
	"io"

	"drawdown/render/frames"
	"drawdown/render/svg"
	"drawdown/render/words"
)

//go:embed player.html
var layout string

//go:embed player.css
var style string

//go:embed player.js
var script string

type data struct {
	Steps   []frames.Action `json:"steps"`
	Members [][]string      `json:"members"`
	Words   scriptWords     `json:"words"`
}

// scriptWords are the words used by the script, which fills in %[1]d and %[2]d.
type scriptWords struct {
	Play  string `json:"play"`
	Pause string `json:"pause"`
	Start string `json:"start"`
	Done  string `json:"done"`
	Step  string `json:"step"`
	Stage string `json:"stage"`
}

// Write writes the page.
func Write(w io.Writer, show frames.Playback, catalogue *words.Catalogue) error {
	var part bytes.Buffer
	if err := svg.WriteInline(&part, show.Part, catalogue.Handout.Showing.Part); err != nil {
		return err
	}
	s := catalogue.Handout.Showing
	made, err := template.New("player").Parse(layout)
	if err != nil {
		return err
	}
	return made.Execute(w, map[string]any{
		"Language": catalogue.Language, "Show": show, "Words": s, "ManualFirst": catalogue.Sheet.ManualFirst,
		"Part": template.HTML(part.String()), "Style": template.CSS(style), "Script": template.JS(script),
		"Data": data{Steps: show.Steps, Members: show.Members, Words: scriptWords{s.Play, s.Pause, s.Start, s.Done, s.Step, s.Stage}},
	})
}
