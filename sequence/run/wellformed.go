package run

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"reflect"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
)

// The longest texts of an entry, in letters.
const (
	mostOfID   = 100
	mostOfName = 60
	mostOfNote = 2000
	mostOfText = 200
)

// ReadEntry reads an entry as a client sends it. It takes no field that it does
// not know, and none that is the server's own. Whether the entry fits a run is
// judged by Take.
func ReadEntry(data []byte) (Entry, *Refusal) {
	var given map[string]json.RawMessage
	if err := json.Unmarshal(data, &given); err != nil || given == nil {
		return Entry{}, malformed(EntryUnreadable, nil)
	}
	if do, ok := given["do"]; ok {
		if act, both := given["act"]; both && string(act) != string(do) {
			return Entry{}, malformed(ValueUnknown, finding.Values{"field": "do", "written": string(do), "allowed": []string{string(act)}})
		}
		given["act"] = do
		delete(given, "do")
	}
	for _, field := range slices.Sorted(maps.Keys(given)) {
		if !slices.Contains(clientFields, field) {
			return Entry{}, malformed(FieldUnknown, finding.Values{"field": field, "allowed": clientFields})
		}
	}
	known, err := json.Marshal(given)
	if err != nil {
		return Entry{}, malformed(EntryUnreadable, nil)
	}
	var e Entry
	decoder := json.NewDecoder(bytes.NewReader(known))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&e); err != nil {
		return Entry{}, fieldFault(err, given)
	}
	var place struct {
		At []float64 `json:"at"`
	}
	if e.Place != nil && json.Unmarshal(given["place"], &place) == nil && len(place.At) != 2 && place.At != nil {
		return Entry{}, malformed(FieldType, finding.Values{"field": "place.at"}) // Go would fill it up with 0, or cut it
	}
	return e, nil
}

// fieldFault names the field that could not be read.
func fieldFault(err error, given map[string]json.RawMessage) *Refusal {
	if wrong := (*json.UnmarshalTypeError)(nil); errors.As(err, &wrong) && wrong.Field != "" {
		return malformed(FieldType, finding.Values{"field": wrong.Field})
	}
	for _, field := range slices.Sorted(maps.Keys(given)) {
		one, _ := json.Marshal(map[string]json.RawMessage{field: given[field]})
		if json.Unmarshal(one, &Entry{}) != nil {
			return malformed(FieldType, finding.Values{"field": field})
		}
	}
	return malformed(FieldUnknown, finding.Values{"field": "place", "allowed": fieldsOf[Place]()}) // the only field with fields
}

// clientFields are the fields of an entry that a client may send.
var clientFields = fieldsOf[Entry]("time", "wrench_facts")

func fieldsOf[T any](but ...string) (fields []string) {
	for field := range reflect.TypeFor[T]().Fields() {
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		if !slices.Contains(but, name) {
			fields = append(fields, name)
		}
	}
	return fields
}

// fault says what is wrong with an entry before any rule is asked.
func (s *State) fault(e Entry) *Refusal {
	if r := e.FaultByItself(); r != nil {
		return r
	}
	if slices.Contains(ofJobs, e.Act) {
		return malformed(OfAJob, finding.Values{"act": string(e.Act)})
	}
	if e.Step != 0 && s.numbered[e.Step] == nil {
		return malformed(NoSuchStep, finding.Values{"step": e.Step})
	}
	if e.Kind != "" && !slices.Contains(s.kinds(), e.Kind) {
		return malformed(NoSuchKind, finding.Values{"kind": e.Kind, "allowed": s.kinds()})
	}
	if e.Joint != "" && e.Joint != s.work.Of {
		return malformed(ValueUnknown, finding.Values{"field": "joint", "written": e.Joint, "allowed": []string{s.work.Of}})
	}
	if r := s.placeFault(e.Place); r != nil {
		return r
	}
	if e.Act == Measure {
		if _, err := s.result(&e); err != nil {
			return Wrong(err)
		}
	}
	return s.nameFault(e)
}

// nameFault says where a step does not tell which fastener is meant, or the place
// is another fastener.
func (s *State) nameFault(e Entry) *Refusal {
	st := s.numbered[e.Step]
	if st == nil || e.Act != Replace && e.Act != Report {
		return nil
	}
	named := e.Place != nil && e.Place.Fastener != ""
	switch {
	case len(st.IDs) == 0 && e.Act == Replace && !named:
		return malformed(StepNeedsName, finding.Values{"step": e.Step, "ids": s.ids()})
	case len(st.IDs) > 1 && !named, len(st.IDs) > 0 && named && !slices.Contains(st.IDs, e.Place.Fastener):
		return malformed(StepNeedsName, finding.Values{"step": e.Step, "ids": st.IDs})
	}
	return nil
}

// FaultByItself says what is wrong with an entry, whatever run or job it is on.
func (e Entry) FaultByItself() *Refusal {
	for _, text := range e.texts() {
		if n := utf8.RuneCountInString(text.written); n > text.most {
			return malformed(TextTooLong, finding.Values{"field": text.field, "length": n, "most": text.most})
		}
		if !utf8.ValidString(text.written) || strings.ContainsFunc(text.written, func(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\t' }) {
			return malformed(FieldType, finding.Values{"field": text.field})
		}
	}
	for _, word := range e.words() {
		if word.written != "" && !slices.Contains(word.allowed, word.written) {
			return malformed(ValueUnknown, finding.Values{"field": word.field, "written": word.written, "allowed": word.allowed})
		}
	}
	if _, ok := e.Value.Number(); e.Value != "" && !ok {
		return malformed(NumberUnread, finding.Values{"field": "value", "written": string(e.Value)})
	}
	if r := e.dayFault(); r != nil {
		return r
	}
	if deg, _ := e.Value.Number(); e.Decided == TurnOn && e.Value != "" && deg <= 0 {
		return malformed(NumberUnread, finding.Values{"field": "value", "written": string(e.Value)})
	}
	if _, ok := e.Shim.Number(); e.Shim != "" && !ok {
		return malformed(NumberUnread, finding.Values{"field": "shim", "written": string(e.Shim)})
	}
	return e.missing()
}

// dayFault: only paper states a day, and none that is still to come. Whoever entered it
// may be a day ahead of the server's clock.
func (e Entry) dayFault() *Refusal {
	if e.Day == "" {
		return nil
	}
	if e.Source != OnPaper {
		return malformed(ValueUnknown, finding.Values{"field": "source", "written": string(e.Source), "allowed": []string{string(OnPaper)}})
	}
	day, err := time.Parse(time.DateOnly, e.Day)
	if err != nil || !e.Time.IsZero() && day.After(e.Time.AddDate(0, 0, 1)) {
		return malformed(DayUnread, finding.Values{"written": e.Day})
	}
	return nil
}

// missing says which field the act needs and does not have.
func (e Entry) missing() *Refusal {
	has := map[need]bool{
		needID: e.ID != "", needAct: e.Act != "", needWho: strings.TrimSpace(e.Who) != "", needStep: e.Step != 0, needOf: e.Of != "",
		needTrouble: e.Trouble != "", needNote: strings.TrimSpace(e.Note) != "", needValue: e.Value != "", needSheet: e.Sheet != "",
		needFingerprint: e.Fingerprint != "", needStepOrPlace: e.Step != 0 || e.Place != nil && e.Place.Fastener != "",
		needMeasureOrStep: e.Measure != "" || e.Step != 0,
		needFoundOrNote:   e.Found != "" || strings.TrimSpace(e.Note) != "",
		needDecision:      e.Decided == CountsAsDone || e.Decided == TurnOn || e.Repair != "" || strings.TrimSpace(e.Note) != "",
		needDecidedBy:     strings.TrimSpace(e.DecidedBy) != "",
		needThread:        strings.TrimSpace(e.Thread) != "",
		needTo:            strings.TrimSpace(e.To) != "",
	}
	needs := append([]need{needID, needAct, needWho}, rules[e.Act].needs...)
	if e.Decided != "" {
		needs = append(needs, needDecidedBy)
	}
	if e.Decided == TurnOn {
		needs = append(needs, needValue)
	}
	if e.Repair == ThreadInsert {
		needs = append(needs, needThread)
	}
	for _, field := range needs {
		if !has[field] {
			return malformed(FieldMissing, finding.Values{"act": string(e.Act), "field": string(field)})
		}
	}
	return nil
}

// text is a field of an entry with the room that it has.
type text struct {
	field, written string
	most           int
}

func (e Entry) texts() []text {
	return []text{
		{"entry", e.ID, mostOfID}, {"who", e.Who, mostOfName}, {"to", e.To, mostOfName}, {"second", e.Second, mostOfName}, {"decided_by", e.DecidedBy, mostOfName},
		{"note", e.Note, mostOfNote}, {"kept", e.Kept, mostOfNote}, {"of", e.Of, mostOfID}, {"device_time", e.DeviceTime, mostOfName}, {"measure", e.Measure, mostOfText},
		{"value", string(e.Value), mostOfName}, {"unit", e.Unit, mostOfName}, {"shim", string(e.Shim), mostOfName}, {"joint", e.Joint, mostOfText}, {"photo", e.Photo, mostOfText}, {"wrench", e.Wrench, mostOfName}, {"thread", e.Thread, mostOfName},
		{"sheet", e.Sheet, mostOfName}, {"fingerprint", e.Fingerprint, mostOfName}, {"day", e.Day, mostOfName},
	}
}

// word is a field that has one of some words.
type word struct {
	field, written string
	allowed        []string
}

func (e Entry) words() []word {
	return []word{
		{"act", string(e.Act), texts(slices.Concat(Acts, ofJobs))},
		{"trouble", string(e.Trouble), texts(Troubles)},
		{"found", string(e.Found), texts(Founds)},
		{"decided", string(e.Decided), texts(e.decisions())},
		{"repair", string(e.Repair), texts(Repairs)},
		{"source", string(e.Source), []string{string(OnPaper)}},
	}
}

func texts[T ~string](list []T) []string {
	all := make([]string, len(list))
	for i, v := range list {
		all[i] = string(v)
	}
	return all
}

func (s *State) placeFault(p *Place) *Refusal {
	if p == nil {
		return nil
	}
	named := 0
	for _, is := range []bool{p.Fastener != "", p.Station != "", p.Label != "", p.At != nil} {
		if is {
			named++
		}
	}
	switch {
	case named != 1:
		return malformed(OnePlace, nil)
	case p.Fastener != "" && s.fastener(p.Fastener) == nil:
		return malformed(NoSuchFastener, finding.Values{"id": p.Fastener, "allowed": s.ids()})
	case p.Station != "" && !slices.Contains(s.work.Stations, p.Station):
		return malformed(NoSuchStation, finding.Values{"id": p.Station, "allowed": s.work.Stations})
	case p.Label != "" && !slices.Contains(s.work.Labels, p.Label):
		return malformed(NoSuchLabel, finding.Values{"label": p.Label, "allowed": s.work.Labels})
	}
	return nil
}

func (s *State) ids() []string {
	ids := make([]string, len(s.work.Fasteners))
	for i, f := range s.work.Fasteners {
		ids[i] = f.ID
	}
	return ids
}

func (s *State) kinds() []string {
	names := make([]string, len(s.work.Kinds))
	for i, k := range s.work.Kinds {
		names[i] = k.Name
	}
	if s.work.Gasket != "" {
		names = append(names, GasketKind)
	}
	return names
}

// kindOf returns the fastener of an id; nil where there is none.
func (s *State) fastener(id string) *Fastener {
	i := slices.IndexFunc(s.work.Fasteners, func(f Fastener) bool { return f.ID == id })
	if i < 0 {
		return nil
	}
	return &s.work.Fasteners[i]
}
