package bench

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/record"
	"drawdown/sequence/run"
)

// read reads one event of a stream: its id and its entry.
func (e *stream) read(t *testing.T) (id string, entry event) {
	t.Helper()
	for {
		line, err := e.lines.ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		switch key, value, _ := strings.Cut(strings.TrimSpace(line), ": "); key {
		case "id":
			id = value
		case "data":
			if err := json.Unmarshal([]byte(value), &entry); err != nil {
				t.Fatal(err)
			}
		case "":
			if id != "" {
				return id, entry
			}
		}
	}
}

type stream struct{ lines *bufio.Reader }

func (s *shopfloor) events(path, last string, change ...func(*http.Request)) *stream {
	s.t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	s.t.Cleanup(cancel)
	r, err := http.NewRequestWithContext(ctx, "GET", s.base+path, nil)
	if err != nil {
		s.t.Fatal(err)
	}
	r.Header.Set("Authorization", "Bearer "+s.key)
	if last != "" {
		r.Header.Set("Last-Event-ID", last)
	}
	for _, f := range change {
		f(r)
	}
	answer, err := s.client.Do(r)
	if err != nil || answer.StatusCode != http.StatusOK || answer.Header.Get("Content-Type") != "text/event-stream" {
		s.t.Fatal(err, answer)
	}
	s.t.Cleanup(func() { answer.Body.Close() })
	return &stream{bufio.NewReader(answer.Body)}
}

// Each entry is sent once and in order; a reader who was away receives those
// missed.
func TestEvents(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.accepted()
	path := "/api/runs/" + id + "/events"
	fresh := s.events(path, "")
	s.done(id, 1)
	if at, e := fresh.read(t); at != "2" || e.ID != "d1" || e.Act != run.Done || e.Version != 2 || e.Who != "RA" || !e.Time.Equal(s.clock.now()) {
		t.Errorf("%s %+v", at, e)
	}
	s.done(id, 2)
	s.done(id, 3)
	for _, again := range []*stream{s.events(path, "1"), s.events(path+"?after=1", "")} {
		for k, want := range []string{"2", "3", "4"} {
			if at, e := again.read(t); at != want || e.ID != fmt.Sprint("d", k+1) {
				t.Errorf("event %s %s, want %s", at, e.ID, want)
			}
		}
	}
	s.done(id, 4)
	for _, want := range []string{"3", "4", "5"} {
		if at, _ := fresh.read(t); at != want {
			t.Errorf("event %s, want %s", at, want)
		}
	}
	// A number from the future, as after a restored backup, gets the next
	// entries.
	ahead := s.events(path, "99")
	s.want(http.StatusOK, s.enter(id, `{"entry":"n","act":"note","note":"x","who":"RA"}`))
	if at, _ := ahead.read(t); at != "6" {
		t.Errorf("event %s", at)
	}
	s.want(http.StatusNotFound, s.ask("GET", "/api/runs/R9/events", ""))
}

// Ending a session ends its events, too, and the end of the page ends all.
func TestEventsEnd(t *testing.T) {
	t.Parallel()
	s := served(t, func(o *Options) { o.Limits.Beat = 10 * time.Millisecond })
	id := s.accepted()
	cookie := cookieOf(t, s.ask("GET", "/?key="+s.key, "", withoutKey))
	of := s.events("/api/runs/"+id+"/events", "", func(r *http.Request) { withoutKey(r); r.AddCookie(cookie) })
	for _, session := range s.bench.gate.Sessions() {
		s.want(http.StatusNoContent, s.ask("DELETE", "/api/share/sessions/"+session.ID, ""))
	}
	for { // keep-alives, then the end
		if _, err := of.lines.ReadString('\n'); err != nil {
			break
		}
	}
	e := s.events("/api/runs/"+id+"/events", "")
	s.end() // fails the test if the page does not end
	for {
		if _, err := e.lines.ReadString('\n'); err != nil {
			break
		}
	}
}

// picture is a JPEG with a red left and a blue right half, and tags before
// them.
func picture(t *testing.T, tags []byte) []byte {
	t.Helper()
	p := image.NewRGBA(image.Rect(0, 0, 64, 32))
	for y := range 32 {
		for x := range 64 {
			p.Set(x, y, color.RGBA{R: 255, A: 255})
			if x >= 32 {
				p.Set(x, y, color.RGBA{B: 255, A: 255})
			}
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, nil); err != nil {
		t.Fatal(err)
	}
	return append(append(append([]byte{}, b.Bytes()[:2]...), tags...), b.Bytes()[2:]...)
}

// exif is the segment written by a camera held upright: orientation 6 (CIPA
// DC-008, 4.6.4), with the place where the picture was taken.
func exif() []byte {
	body := "Exif\x00\x00MM\x00*\x00\x00\x00\x08" + "\x00\x02" + // big endian, two tags
		"\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00" + // orientation 6
		"\x88\x25\x00\x04\x00\x00\x00\x01\x00\x00\x00\x26" + // the place is at offset 38
		"\x00\x00\x00\x00" +
		"\x00\x01" + "\x00\x01\x00\x02\x00\x00\x00\x02N\x00\x00\x00" + "\x00\x00\x00\x00" + "GPS-SECRET"
	length := len(body) + 2
	return append([]byte{0xff, 0xe1, byte(length >> 8), byte(length)}, body...)
}

// A photo is stored upright and without the place where it was taken.
func TestPhotos(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.accepted()
	data := picture(t, exif())
	var made, again struct{ Photo string }
	s.want(http.StatusCreated, s.ask("POST", "/api/photos", string(data))).into(t, &made)
	form := "--x\r\nContent-Disposition: form-data; name=\"note\"\r\n\r\ncrack\r\n--x\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"../../evil.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n" + string(data) + "\r\n--x--\r\n"
	s.want(http.StatusCreated, s.ask("POST", "/api/photos", form, head("Content-Type", "multipart/form-data; boundary=x"))).into(t, &again)
	if made.Photo != again.Photo || len(made.Photo) != 64 {
		t.Errorf("%q and %q", made.Photo, again.Photo)
	}
	got := s.want(http.StatusOK, s.ask("GET", "/api/photos/"+made.Photo, ""))
	if contains(got.body, "SECRET") || contains(got.body, "Exif") || got.head.Get("Content-Type") != "image/jpeg" {
		t.Errorf("kept with its tags: %q", got.body[:80])
	}
	kept, err := jpeg.Decode(bytes.NewReader(got.body))
	if err != nil || kept.Bounds().Dx() != 32 || kept.Bounds().Dy() != 64 {
		t.Fatalf("%v %v", err, kept.Bounds())
	}
	// Orientation 6: the first row of the file is the right side of the
	// picture, and its first column the top.
	if r, _, b, _ := kept.At(16, 8).RGBA(); r < b {
		t.Error("the top is not red")
	}
	s.want(http.StatusOK, s.enter(id, `{"entry":"f","act":"finding","who":"RA","note":"crack","photo":"`+made.Photo+`","place":{"fastener":"A2"}}`))
	var zipped bytes.Buffer
	zip.NewWriter(&zipped).Close()
	for name, body := range map[string]string{"text": "no picture", "cut": string(data[:60]), "archive": zipped.String()} {
		if got := s.ask("POST", "/api/photos", body); got.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %s", name, got)
		}
	}
	s.want(http.StatusBadRequest, s.ask("POST", "/api/photos", ""))
	s.want(http.StatusBadRequest, s.ask("POST", "/api/photos", "--x--\r\n", head("Content-Type", "multipart/form-data; boundary=x")))
	s.want(http.StatusNotFound, s.ask("GET", "/api/photos/"+strings.Repeat("0", 64), ""))
}

// The record of a run is exported completely, and names the head of the chain.
func TestExports(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"loosen","number":"TP-7"}`)
	s.done(id, 1)
	s.want(http.StatusOK, s.enter(id, `{"entry":"n","act":"note","who":"RA","note":"=HYPERLINK(\"x\")"}`))
	var out record.Export
	got := s.want(http.StatusOK, s.ask("GET", "/api/runs/"+id+".json", ""))
	if got.into(t, &out); out.ID != id || len(out.Entries) != 2 || out.Number != "TP-7" || out.Chain == nil || !strings.Contains(got.head.Get("Content-Disposition"), id+".json") {
		t.Errorf("%+v %v", out.Subject, got.head)
	}
	csv := s.want(http.StatusOK, s.ask("GET", "/api/runs/"+id+".csv", ""))
	if strings.Count(string(csv.body), "\n") != 3 || contains(csv.body, ",=HYPERLINK") || contains(csv.body, `"=HYPERLINK`) {
		t.Errorf("%s", csv.body)
	}
	pdf := s.want(http.StatusOK, s.ask("GET", "/api/runs/"+id+".pdf?lang=de", ""))
	if !bytes.HasPrefix(pdf.body, []byte("%PDF")) {
		t.Errorf("%.40q", pdf.body)
	}
	s.want(http.StatusBadRequest, s.ask("GET", "/api/runs/"+id+".pdf?paper=a9", ""))
}

// A print is the same file that the command line writes; it is recorded with
// the fingerprint, and counts as out of date once the file has changed.
func TestPrints(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"tighten"}`)
	for _, sheet := range []string{"card", "tray", "condition"} {
		s.clock.pass(time.Minute)
		ofFile := s.want(http.StatusOK, s.ask("GET", "/patterns/lid/"+sheet+".pdf?who=RA", ""))
		ofRun := s.want(http.StatusOK, s.ask("GET", "/runs/"+id+"/"+sheet+".pdf?who=RA", ""))
		if !bytes.HasPrefix(ofFile.body, []byte("%PDF")) || !bytes.Equal(ofFile.body, ofRun.body) {
			t.Errorf("%s: %d and %d bytes", sheet, len(ofFile.body), len(ofRun.body))
		}
	}
	var v struct {
		Prints []run.Print
	}
	s.ask("GET", "/api/runs/"+id, "").into(t, &v)
	var noted []string
	for _, p := range v.Prints {
		noted = append(noted, fmt.Sprintf("%s %s %v %d", p.Sheet, p.By, p.OutOfDate, len(p.Fingerprint)))
	}
	if diff := cmp.Diff([]string{"card RA false 9", "tray RA false 9", "condition RA false 9"}, noted); diff != "" {
		t.Error(diff)
	}
	const stale = "out of date"
	if page := s.ask("GET", "/patterns/lid", ""); contains(page.body, stale) {
		t.Error("a fresh print counts as out of date")
	}
	s.write("lid.yaml", strings.Replace(lid, "20 N·m", "22 N·m", 1))
	if page := s.ask("GET", "/patterns/lid", ""); strings.Count(string(page.body), stale) != 3 {
		t.Errorf("the page says of %d prints that they are out of date", strings.Count(string(page.body), stale))
	}
	if page := s.ask("GET", "/runs/"+id, ""); contains(page.body, stale) {
		t.Error("the run's own prints count as out of date")
	}
	after := s.want(http.StatusOK, s.ask("GET", "/runs/"+id+"/card.pdf", ""))
	before := s.want(http.StatusOK, s.ask("GET", "/patterns/lid/card.pdf", ""))
	if bytes.Equal(after.body, before.body) {
		t.Error("the run prints the changed file")
	}
	s.want(http.StatusBadRequest, s.ask("GET", "/runs/"+id+"/card.pdf?paper=a9", ""))
	version := s.state(id).Version
	s.want(http.StatusOK, s.ask("HEAD", "/runs/"+id+"/card.pdf", ""))
	s.want(http.StatusOK, s.ask("HEAD", "/api/runs/"+id+"/events", ""))
	if now := s.state(id).Version; now != version {
		t.Error("a print is noted that was not asked for")
	}
	s.want(http.StatusUnprocessableEntity, s.ask("GET", "/patterns/p4-engine/card.pdf", ""))
}
