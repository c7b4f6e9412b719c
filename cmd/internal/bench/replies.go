package bench

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log"
	"net/http"
	"reflect"
	"strings"
	"time"

	"drawdown/cmd/internal/bench/gate"
	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// route answers a request; its error is put into words by the caller.
type route func(w http.ResponseWriter, r *http.Request) error

// rejected is the answer to a request that was refused.
type rejected struct {
	Reason string       `json:"reason"`
	Code   finding.Code `json:"code,omitempty"`
	By     string       `json:"by,omitempty"`
	At     *time.Time   `json:"at,omitempty"`
}

// failure is an error with its HTTP status.
type failure struct {
	status int
	why    error
}

func (f failure) Error() string { return f.why.Error() }
func (f failure) Unwrap() error { return f.why }

// wrong returns a finding about a request with its status.
func wrong(status int, code finding.Code, values finding.Values) error {
	return failure{status, finding.Failed(code, values)}
}

// refused is an entry that a rule forbids.
type refused struct{ run.Refusal }

func (r refused) Error() string { return r.Finding.Error() }
func (r refused) Unwrap() error { return r.Finding }

// statuses maps findings of lower packages to HTTP statuses; all others are
// internal errors.
var statuses = map[finding.Code]int{
	record.NoSubject:    http.StatusNotFound,
	record.NoPhoto:      http.StatusNotFound,
	record.NoEntryID:    http.StatusBadRequest,
	record.LongEntryID:  http.StatusBadRequest,
	record.OtherContent: http.StatusConflict,
	record.DiskFull:     http.StatusInsufficientStorage,
	record.Away:         http.StatusServiceUnavailable,
	gate.WrongCode:      http.StatusForbidden,
	gate.WaitForCode:    http.StatusTooManyRequests,
	gate.ManyCodes:      http.StatusTooManyRequests,
}

// statusOf returns the status of an error and what to tell the reader.
func statusOf(err error) (int, error) {
	var known failure
	var rule refused
	var tooLarge *http.MaxBytesError
	var found finding.Finding
	switch {
	case errors.As(err, &known):
		return known.status, known.why
	case errors.As(err, &rule) && rule.Malformed:
		return http.StatusBadRequest, err
	case errors.As(err, &rule):
		return http.StatusConflict, err
	case errors.As(err, &tooLarge):
		return http.StatusRequestEntityTooLarge, tooMany(tooLarge.Limit)
	case errors.Is(err, fs.ErrNotExist):
		return http.StatusNotFound, err
	case errors.As(err, &found) && found.Code == record.Away:
		return statuses[record.Away], finding.Failed(record.Away, nil) // server names are of no use on a tablet; the log has them
	case errors.As(err, &found) && statuses[found.Code] != 0:
		return statuses[found.Code], err
	case errors.As(err, &found):
		return http.StatusInternalServerError, err
	}
	return http.StatusInternalServerError, finding.Failed(Broke, nil) // the log has more
}

func tooMany(limit int64) error {
	const kilo, mega = 1 << 10, 1 << 20
	if limit >= mega {
		return finding.Failed(TooLarge, finding.Values{"most": int(limit / mega), "unit": "MB"})
	}
	return finding.Failed(TooLarge, finding.Values{"most": int(limit / kilo), "unit": "kB"})
}

// fail answers a request that was refused.
func (b *Bench) fail(w http.ResponseWriter, r *http.Request, err error) {
	status, why := statusOf(err)
	if status == http.StatusInternalServerError {
		log.Printf("%s %s: %v", r.Method, r.URL.Path, err)
	}
	c := b.reader(r)
	if !isAPI(r) {
		b.message(w, r, status, why)
		return
	}
	answer(w, status, rejectedBy(c, why))
}

func rejectedBy(c *words.Catalogue, why error) rejected {
	out := rejected{Reason: c.Error(why)}
	var found finding.Finding
	if errors.As(why, &found) {
		out.Code = found.Code
	}
	var rule refused
	if errors.As(why, &rule) {
		out.By = rule.By
		if !rule.At.IsZero() {
			out.At = &rule.At
		}
	}
	return out
}

// isAPI reports whether the sender is a program, and not a person with a
// browser.
func isAPI(r *http.Request) bool {
	return strings.HasPrefix(r.URL.Path, "/api/") || r.URL.Path == "/api"
}

// answer writes JSON.
func answer(w http.ResponseWriter, status int, v any) {
	text, err := report.JSON(v)
	if err != nil {
		log.Printf("answer: %v", err)
		status, text = http.StatusInternalServerError, []byte("{}\n")
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(status)
	w.Write(text)
}

// read reads the JSON of a request into v. It refuses keys that v lacks, so
// that nothing is lost silently.
func (b *Bench) read(w http.ResponseWriter, r *http.Request, v any) error {
	return b.readUpTo(w, r, v, b.Limits.Body)
}

func (b *Bench) readUpTo(w http.ResponseWriter, r *http.Request, v any, most int64) error {
	text, err := io.ReadAll(http.MaxBytesReader(w, r.Body, most))
	if err != nil {
		return bodyUnread(err)
	}
	return readJSON(text, v)
}

// bodyUnread states why the body of a request did not arrive.
func bodyUnread(err error) error {
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) {
		return err
	}
	return wrong(http.StatusRequestTimeout, BodyCut, nil)
}

func readJSON(text []byte, v any) error {
	if len(bytes.TrimSpace(text)) == 0 {
		return wrong(http.StatusBadRequest, NoBody, nil)
	}
	if err := unknownKey(text, v); err != nil {
		return err
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(v); err != nil {
		return notJSON(text, err)
	}
	if _, err := decoder.Token(); err != io.EOF {
		return wrong(http.StatusBadRequest, MoreThanOne, nil)
	}
	return nil
}

// unknownKey names a key of an object that v lacks.
func unknownKey(text []byte, v any) error {
	var object map[string]json.RawMessage
	of := reflect.TypeOf(v).Elem()
	if json.Unmarshal(text, &object) != nil || of.Kind() != reflect.Struct {
		return nil // reported when it is read
	}
	for key := range object {
		if !hasKey(of, key) {
			return wrong(http.StatusBadRequest, UnknownKey, finding.Values{"key": key})
		}
	}
	return nil
}

func hasKey(of reflect.Type, key string) bool {
	for _, field := range reflect.VisibleFields(of) {
		if name, _, _ := strings.Cut(field.Tag.Get("json"), ","); name == key {
			return true
		}
	}
	return false
}

// notJSON reports where a text is no JSON, or not what is expected.
func notJSON(text []byte, err error) error {
	var syntax *json.SyntaxError
	var value *json.UnmarshalTypeError
	at := int64(len(text))
	switch {
	case errors.As(err, &syntax):
		at = syntax.Offset
	case errors.As(err, &value):
		line, column := place(text, value.Offset)
		return wrong(http.StatusBadRequest, WrongValue, finding.Values{"key": value.Field, "want": wanted(value.Type), "line": line, "column": column})
	case !errors.Is(err, io.ErrUnexpectedEOF): // an unknown key below the top
		return wrong(http.StatusBadRequest, UnknownKey, nil)
	}
	line, column := place(text, at)
	return wrong(http.StatusBadRequest, NotJSON, finding.Values{"line": line, "column": column})
}

// wanted returns the JSON name of a type, as a form in package words.
func wanted(t reflect.Type) string {
	switch t.Kind() {
	case reflect.String:
		return "text"
	case reflect.Int, reflect.Int64:
		return "whole number"
	case reflect.Float64:
		return "number"
	case reflect.Bool:
		return "truth"
	case reflect.Slice, reflect.Array:
		return "list"
	}
	return "object"
}

// place returns line and column of the character before an offset, counted from
// 1.
func place(text []byte, offset int64) (line, column int) {
	before := text[:max(0, min(int(offset), len(text))-1)]
	return 1 + bytes.Count(before, []byte("\n")), len([]rune(string(before[bytes.LastIndexByte(before, '\n')+1:]))) + 1
}

// download sets the file name under which a browser saves an answer.
func download(w http.ResponseWriter, how, name, kind string) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", fmt.Sprintf(`%s; filename="%s"`, how, strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' || strings.ContainsRune(`"\/:*?<>|;`, r) {
			return '-'
		}
		return r
	}, name)))
}
