package page_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/page"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

func frame(c *words.Catalogue, path string) page.Frame {
	return page.Frame{Words: c, Path: path, Now: time.Date(2026, 3, 14, 10, 42, 0, 0, time.UTC)}
}

// runView is the page of a run after some entries.
func runView(t testing.TB, name string, d run.Direction, c *words.Catalogue, entries ...run.Entry) page.RunView {
	t.Helper()
	p := patterntest.Plan(t, name)
	joint, err := page.JointOf(p, d, c)
	if err != nil {
		t.Fatal(err)
	}
	f := frame(c, "/runs/R1")
	state := run.New(p, d, nil).Start()
	for i, e := range entries {
		e.ID, e.Who, e.Time = "e"+strconv.Itoa(i), "RA", f.Now
		if r := state.Take(e); r != nil {
			t.Fatalf("%v: %v", e, r)
		}
		entries[i] = e
	}
	return page.RunView{Frame: f, ID: "R1", Run: state.At(f.Now), Joint: joint, Entries: entries, Number: "0117", Order: "2214"}
}

func done(steps ...int) (entries []run.Entry) {
	for _, n := range steps {
		entries = append(entries, run.Entry{Act: run.Done, Step: n})
	}
	return entries
}

func upTo(n int) (steps []int) {
	for k := range n {
		steps = append(steps, k+1)
	}
	return steps
}

// views are all pages, with content on each.
func views(t testing.TB, c *words.Catalogue) map[string]func(io.Writer) error {
	t.Helper()
	p := patterntest.Plan(t, "p4-head")
	joint, err := page.JointOf(p, run.Tighten, c)
	if err != nil {
		t.Fatal(err)
	}
	pattern := page.PatternLine{Name: "p4-head", Title: p.Title, Machine: p.Machine, Fasteners: 14, Builtin: true, Sound: true}
	line := page.RunLine{Run: "R1", Title: p.Title, Machine: p.Machine, Number: "0117", Order: "2214", Direction: run.Loosen, Status: run.Open, Done: 3, Of: 28, Troubles: 1, By: "RA", At: frame(c, "").Now}
	prints := []page.Print{{Sheet: "card", Address: "/card.pdf", At: frame(c, "").Now, Stale: true}, {Sheet: "tray", Address: "/tray.pdf"}}
	broken := append(done(upTo(22)...), run.Entry{Act: run.Report, Trouble: run.Broken, Step: 23, Note: "snapped"})
	angle := runView(t, "p4-head", run.Tighten, c, done(upTo(34)...)...)
	angle.Prints = prints
	accept := runView(t, "p4-head", run.Tighten, c)
	accept.Run.ToAccept = []finding.Finding{finding.Warned("list names nothing", nil)}
	return map[string]func(io.Writer) error{
		"home": func(w io.Writer) error {
			return page.Home(w, page.HomeView{Frame: frame(c, "/"), Folder: "/shop", Open: []page.RunLine{line}, Patterns: []page.PatternLine{pattern}, Recent: []page.RunLine{line}})
		},
		"home-empty": func(w io.Writer) error { return page.Home(w, page.HomeView{Frame: frame(c, "/"), Folder: "/shop"}) },
		"pattern": func(w io.Writer) error {
			return page.Pattern(w, page.PatternView{Frame: frame(c, "/patterns/p4-head"), PatternLine: pattern, Joint: joint, Prints: prints, Open: []page.RunLine{line}})
		},
		"run":         func(w io.Writer) error { return page.Run(w, angle) },
		"run-accept":  func(w io.Writer) error { return page.Run(w, accept) },
		"run-trouble": func(w io.Writer) error { return page.Run(w, runView(t, "p4-head", run.Tighten, c, broken...)) },
		"run-loosen":  func(w io.Writer) error { return page.Run(w, runView(t, "p4-head", run.Loosen, c, done(1, 2)...)) },
		"run-caps":    func(w io.Writer) error { return page.Run(w, runView(t, "p4-cam-caps", run.Tighten, c)) },
		"live":        func(w io.Writer) error { return page.RunLive(w, angle) },
		"records": func(w io.Writer) error {
			return page.Records(w, page.RecordsView{Frame: frame(c, "/records"), Runs: []page.RunLine{line}, Next: "/records?after=9"})
		},
		"records-empty": func(w io.Writer) error {
			return page.Records(w, page.RecordsView{Frame: frame(c, "/records"), Asked: page.RecordsAsked{Person: "RA"}})
		},
		"record": func(w io.Writer) error {
			return page.Record(w, page.RecordView{RunView: runView(t, "p4-head", run.Tighten, c, broken...), Head: "3b5d"})
		},
		"share": func(w io.Writer) error {
			return page.Share(w, page.ShareView{Frame: frame(c, "/share"), On: true, Code: "K7M2", QR: [][]bool{{true}}, Devices: []page.Device{{ID: "d1", Name: "192.168.4.31"}}})
		},
		"share-off": func(w io.Writer) error { return page.Share(w, page.ShareView{Frame: frame(c, "/share")}) },
		"join": func(w io.Writer) error {
			return page.Join(w, page.JoinView{Frame: frame(c, "/join"), Locked: time.Minute})
		},
		"settings": func(w io.Writer) error { return page.Settings(w, page.SettingsView{Frame: frame(c, "/settings")}) },
		"message": func(w io.Writer) error {
			return page.Message(w, page.MessageView{Frame: frame(c, "/nowhere"), Problem: page.NotFound})
		},
	}
}

func written(t testing.TB, write func(io.Writer) error) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The pages, pinned from our own output.
func TestGolden(t *testing.T) {
	t.Parallel()
	hash := regexp.MustCompile(`/assets/[0-9a-f]+/`)
	all := views(t, words.English())
	for _, name := range []string{"home", "home-empty", "live", "run-trouble", "record", "records", "share", "join", "settings", "message"} {
		write := all[name]
		testkit.Golden(t, "testdata/"+name+".html", hash.ReplaceAll([]byte(written(t, write)), []byte("/assets/HASH/")))
	}
}

// Nothing is inline, and nothing is from another site: the content policy
// forbids both, and parts that a template rejects as unsafe would be visible.
func TestPolicy(t *testing.T) {
	t.Parallel()
	wrong := regexp.MustCompile(`<style|\sstyle=|\son[a-z]+="|<script>|(?:src|href)="(?:https?:)?//|ZgotmplZ|javascript:`)
	for name, write := range views(t, words.English()) {
		if found := wrong.FindString(written(t, write)); found != "" {
			t.Errorf("%s: %q", name, found)
		}
	}
}

// Text from a file or a person stays text, whatever it contains.
func TestHostileWords(t *testing.T) {
	t.Parallel()
	const hostile = `"><script>alert(1)</script><img src=x onerror=y>`
	v := runView(t, "p4-head", run.Tighten, words.English(), append(done(1), run.Entry{Act: run.Report, Trouble: run.OtherTrouble, Step: 2, Note: hostile})...)
	v.Run.Title, v.Number, v.Order, v.JobNote = hostile, hostile, hostile, hostile
	for _, text := range []string{
		written(t, func(w io.Writer) error { return page.Run(w, v) }),
		written(t, func(w io.Writer) error { return page.Record(w, page.RecordView{RunView: v, Head: hostile}) }),
	} {
		if strings.Contains(text, "<script>alert") || strings.Contains(text, "<img") {
			t.Error("words became markup")
		}
	}
}

var (
	tags   = regexp.MustCompile(`(?s)<script[^>]*>.*?</script>|<[^>]*>`)
	spoken = regexp.MustCompile(`(?:aria-label|data-says|data-none|data-unsent|data-saving|data-offline|data-later|placeholder|title)="([^"]*)"`)
	letter = regexp.MustCompile(`[\pL]{2,}`)
	marked = regexp.MustCompile(`‹[^›]*›`)
)

// Pages have no words of their own: all are from the catalogue, the file, the
// record or the system. With every word of the catalogue marked, nothing else
// remains.
func TestNothingIsSpelledHere(t *testing.T) {
	t.Parallel()
	// From the pattern p4-head and the entries above, and what is the same in
	// all languages.
	own := strings.Fields(`Cylinder head Fernhollow pump engine main side RA MB shop PDF CSV JSON lbf ft mm cyl EXHAUST SIDE snapped p4-head
		English Deutsch Français Español Camshaft caps in ex cap all cam bolts share card tray min Deutsch SHA invented teaching from no manual
		warp of the head face valve seat leak clearance camshaft end float`)
	for name, write := range views(t, wordstest.Marked()) {
		text := written(t, write)
		said := tags.ReplaceAllString(text, " ")
		for _, m := range spoken.FindAllStringSubmatch(text, -1) {
			said += " " + m[1]
		}
		for _, word := range letter.FindAllString(marked.ReplaceAllString(said, " "), -1) {
			if !slices.Contains(own, word) {
				t.Errorf("%s spells %q itself", name, word)
			}
		}
	}
}

// The scripts have no sentences either: their texts are in the page.
func TestScriptsSpellNothing(t *testing.T) {
	t.Parallel()
	sentence := regexp.MustCompile("[\"'`][A-Z][a-z]+ [a-z]+")
	count := 0
	err := fs.WalkDir(page.Assets(), assetFolder(t), func(name string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".js") {
			return err
		}
		data, err := fs.ReadFile(page.Assets(), name)
		count++
		if found := sentence.Find(data); found != nil {
			t.Errorf("%s: %s", name, found)
		}
		return err
	})
	if err != nil || count < 10 {
		t.Errorf("%d scripts: %v", count, err)
	}
}

var assetPath = regexp.MustCompile(`/assets/([^"]+)`)

func assetFolder(t testing.TB) string {
	t.Helper()
	text := written(t, func(w io.Writer) error {
		return page.Settings(w, page.SettingsView{Frame: frame(words.English(), "/")})
	})
	return strings.Split(assetPath.FindStringSubmatch(text)[1], "/")[0]
}

// The first view of a run, with all its requests, is under 300 kB uncompressed,
// also for the largest built-in pattern.
func TestFirstView(t *testing.T) {
	t.Parallel()
	const most = 300_000 // the limit set for the bench
	for _, name := range patterns.Builtin() {
		text := written(t, func(w io.Writer) error { return page.Run(w, runView(t, name, run.Tighten, words.English())) })
		all := len(text)
		seen := map[string]bool{}
		for _, m := range assetPath.FindAllStringSubmatch(text, -1) {
			data, err := fs.ReadFile(page.Assets(), m[1])
			if err != nil {
				t.Fatal(err)
			}
			if !seen[m[1]] {
				all += len(data)
			}
			seen[m[1]] = true
		}
		regular, err := fs.ReadFile(page.Assets(), assetFolder(t)+"/go-regular.woff2") // named in the style sheet
		if err != nil {
			t.Fatal(err)
		}
		if all += len(regular); all > most {
			t.Errorf("%s: %d bytes, %d allowed", name, all, most)
		}
		if len(seen) < 10 {
			t.Errorf("only %d files are asked for", len(seen))
		}
	}
}

// The part changed by an entry is small, because it is read again after each.
func TestLiveIsSmall(t *testing.T) {
	t.Parallel()
	text := written(t, func(w io.Writer) error {
		return page.RunLive(w, runView(t, "p4-head", run.Tighten, words.English(), done(upTo(20)...)...))
	})
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	io.WriteString(z, text)
	z.Close()
	if packed.Len() > 12_000 { // common practice, no source: eight network packets
		t.Errorf("%d bytes packed", packed.Len())
	}
}

// Assets are served only from their folder, and only existing files.
func TestAssetsAlone(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"page.css", "other/page.css", assetFolder(t) + "/../page.go", assetFolder(t) + "/none.js"} {
		if _, err := fs.Stat(page.Assets(), name); err == nil {
			t.Errorf("%s is there", name)
		}
	}
}

// Undo takes back the last tap, also a trouble, but nothing before what cannot
// be undone.
func TestUndo(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		last []run.Entry
		want string
	}{
		{"a step", nil, "e20"},
		{"a trouble", []run.Entry{{Act: run.Report, Trouble: run.Seized, Step: 22}}, "e21"},
		{"a trouble that was taken back", []run.Entry{{Act: run.Report, Trouble: run.Seized, Step: 22}, {Act: run.Undo, Of: "e21"}}, "e20"},
		{"a value", []run.Entry{{Act: run.Measure, Measure: "gap", Value: "1"}}, "e21"},
		{"an interrupted angle", []run.Entry{{Act: run.Unsure, Step: 22}}, ""},
		{"a new fastener", []run.Entry{{Act: run.Replace, Step: 22}}, ""},
	} {
		if got := runView(t, "p4-head", run.Tighten, words.English(), append(done(upTo(21)...), c.last...)...).Undo(); got != c.want {
			t.Errorf("after %s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A photo is shown where what was found is listed, and an entry without one is not.
func TestPhotosAreShown(t *testing.T) {
	t.Parallel()
	found := []run.Entry{{Act: run.Find, Found: run.Crack, Who: "RA", Photo: "7b7f"}, {Act: run.Find, Found: run.Scoring, Who: "RA"}}
	v := page.JobView{Frame: frame(words.English(), "/jobs/J1"), Job: teardown.View{Findings: found}}
	if got := v.Photos(); len(got) != 1 || got[0].Sum != "7b7f" || !strings.Contains(got[0].Says, "Crack") {
		t.Errorf("%+v", got)
	}
}
