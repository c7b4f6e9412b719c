package cli

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/shell"
	"drawdown/geometry/finding"
)

var recordsCommand = command{
	name:    "records",
	operand: operand{func() []string { return recordActNames }, shell.NoFiles},
	build: func(flags *pflag.FlagSet) runner {
		r := &recordsCall{flags: flags}
		r.data = flags.String("data", "", "`folder` of the record; default: the user's data folder")
		r.store = flags.String("store", "", "`address` of the PostgreSQL database that keeps the record")
		addTexts(flags, []textFlag{
			{"machine", "list: `part` of the machine's number or name"},
			{"joint", "list: `part` of the joint's name or title"},
			{"person", "list: `initials` or number of someone who took part"},
			{"wrench", "list: `number` of a wrench that was used"},
			{"from", "list: `date` from which on, such as 2026-03-14"},
			{"to", "list: `date` of the last day"},
		})
		r.open = flags.Bool("open", false, "list: only what is not sealed, void or closed")
		r.against = flags.String("against", "", "verify: `hash` that the chain had before, or its first 16 digits")
		r.print = flag.AddRecordPrint(flags)
		return func(p *Program, args []string) Status { return p.records(r, args) }
	},
}

// recordsCall is the flags of one call.
type recordsCall struct {
	flags   *pflag.FlagSet
	data    *string
	store   *string
	open    *bool
	against *string
	print   flag.RecordPrint
	place   record.Place
}

// recordAct is one action on the record: its operand, and the flags that it
// takes besides --data, --store and --lang.
type recordAct struct {
	name, needs string // needs: an example of the operand; "": none
	flags       []string
	do          func(p *Program, r *recordsCall, operand string) Status
}

var recordActs = []recordAct{
	{"list", "", []string{"machine", "joint", "person", "wrench", "from", "to", "open", "json"}, (*Program).listRecords},
	{"show", "R12", []string{"json"}, (*Program).showRecord},
	{"export", "R12", []string{"format", "out", "paper", "landscape", "json"}, (*Program).exportRecord},
	{"verify", "", []string{"against", "json"}, (*Program).verifyRecords},
	{"backup", "backup.db", nil, (*Program).backupRecords},
	{"restore", "backup.db", nil, (*Program).restoreRecords},
	{"erase", "RA", nil, (*Program).eraseName},
}

var recordActNames = []string{"list", "show", "export", "verify", "backup", "restore", "erase"}

func (p *Program) records(r *recordsCall, args []string) Status {
	if len(args) == 0 {
		args = []string{"list"}
	}
	i := slices.IndexFunc(recordActs, func(a recordAct) bool { return a.name == args[0] })
	if i < 0 {
		return p.misuse(finding.Failed(WhichRecordAct, finding.Values{"written": args[0], "acts": recordActNames}))
	}
	act := recordActs[i]
	operand, err := act.operand(args[1:])
	if err == nil {
		err = act.checkFlags(r.flags)
	}
	if err == nil {
		err = r.findPlace()
	}
	if err != nil {
		return p.misuse(err)
	}
	return act.do(p, r, operand)
}

// operand returns what follows the name.
func (a recordAct) operand(args []string) (string, error) {
	switch {
	case a.needs == "" && len(args) > 0:
		return "", finding.Failed(RecordActAlone, finding.Values{"act": a.name, "written": args[0]})
	case a.needs == "":
		return "", nil
	case len(args) == 0 || strings.TrimSpace(args[0]) == "":
		return "", finding.Failed(RecordActNeeds, finding.Values{"act": a.name, "example": a.needs})
	case len(args) > 1:
		return "", finding.Failed(RecordActAlone, finding.Values{"act": a.name + " " + args[0], "written": args[1]})
	}
	return args[0], nil
}

// checkFlags rejects a flag that would have no effect.
func (a recordAct) checkFlags(flags *pflag.FlagSet) (err error) {
	flags.Visit(func(f *pflag.Flag) {
		if f.Name != "data" && f.Name != "store" && f.Name != "lang" && !slices.Contains(a.flags, f.Name) {
			err = finding.Failed(RecordActFlag, finding.Values{"act": a.name, "flag": f.Name})
		}
	})
	return err
}

// findPlace finds where the record is: in a database, or in a folder.
func (r *recordsCall) findPlace() (err error) {
	for _, name := range []string{"data", "store"} {
		if f := r.flags.Lookup(name); f.Changed && f.Value.String() == "" {
			return finding.Failed(flag.NoValue, finding.Values{"flag": name})
		}
	}
	r.place = record.Place{Folder: *r.data, Address: *r.store}
	switch {
	case r.place.Address != "" && r.place.Folder != "":
		return finding.Failed(flag.Together, finding.Values{"flags": []string{"--data", "--store"}, "allowed": []string{"--data", "--store"}})
	case r.place.Address != "":
		return record.CheckAddress(r.place.Address)
	case r.place.Folder == "":
		r.place.Folder, err = record.DefaultFolder()
	}
	return err
}

// reading runs a function on the record, which the page may be using.
func (p *Program) reading(r *recordsCall, do func(s *record.Store) Status) Status {
	s, err := record.OpenToRead(r.place)
	if err != nil {
		return p.recordFailed(err)
	}
	defer s.Close()
	return do(s)
}

// recordFailed returns the status for an error of the record: that of a failing
// machine, unless a more specific reason is known.
func (p *Program) recordFailed(err error) Status {
	for _, wrong := range []finding.Code{
		record.InUse, record.OnNetwork, record.NewerStore, record.OlderStore, record.NoStore, record.NotAStore,
		record.NoSubject, record.NoPerson, record.BackupThere, record.BackupUnsound,
		record.NoSync, record.NoRecordThere, record.RecordThere,
	} {
		if errors.Is(err, wrong) {
			return p.fail(Wrong, err)
		}
	}
	if errors.Is(err, record.NotAHash) {
		return p.misuse(err)
	}
	return p.fail(Failed, err)
}

// filter reads the limits of a list.
func (r *recordsCall) filter() (record.Filter, error) {
	q := newQuantities(r.flags)
	f := record.Filter{Open: *r.open, Most: mostListed}
	for name, into := range map[string]*string{"machine": &f.Machine, "joint": &f.Joint, "person": &f.Person, "wrench": &f.Wrench} {
		*into, _ = q.Text(name)
	}
	f.From, f.To = q.day("from"), record.EndOfDay(q.day("to"))
	return f, q.Err
}

// mostListed is more than anybody reads.
const mostListed = 1000

// day reads a date in the time zone of the workshop.
func (q *quantities) day(name string) time.Time {
	text, set := q.Text(name)
	if !set {
		return time.Time{}
	}
	day, err := time.ParseInLocation(time.DateOnly, text, time.Local)
	if err != nil {
		q.Fail(finding.Failed(NoDay, finding.Values{"flag": name, "written": text}))
	}
	return day
}

func (p *Program) verifyRecords(r *recordsCall, _ string) Status {
	return p.reading(r, func(s *record.Store) Status {
		v, err := s.Verify(*r.against)
		if err != nil {
			return p.recordFailed(err)
		}
		status := Done
		if len(v.Faults) > 0 {
			status = Wrong
		}
		if *r.print.AsJSON {
			return max(status, p.printJSON(verdictOut{v.Head, status == Done, v.Against, append([]string{}, p.words.SayAll(v.Faults)...)}))
		}
		for _, f := range v.Faults {
			p.fail(Wrong, f)
		}
		if status == Done {
			fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(RecordSound, finding.Values{"entries": int(v.Head.Place), "head": v.Head.Hash, "met": int(v.Against)})))
			fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(RecordProves, finding.Values{"against": *r.against})))
		}
		return status
	})
}

// verdictOut is the output of verify --json.
type verdictOut struct {
	record.Head
	Sound   bool     `json:"sound"`
	Against int64    `json:"against,omitempty"` // the entry named by --against
	Faults  []string `json:"faults"`
}

func (p *Program) backupRecords(r *recordsCall, file string) Status {
	return p.reading(r, func(s *record.Store) Status {
		if err := s.Backup(file); err != nil {
			return p.recordFailed(err)
		}
		fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(RecordBackedUp, finding.Values{"file": file})))
		return Done
	})
}

func (p *Program) restoreRecords(r *recordsCall, file string) Status {
	aside, err := record.Restore(r.place, file, time.Now())
	if err != nil {
		return p.recordFailed(err)
	}
	fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(RecordRestored, finding.Values{"folder": r.place.Name(), "aside": aside})))
	return Done
}

func (p *Program) eraseName(r *recordsCall, who string) Status {
	s, err := record.OpenToWrite(r.place)
	if err != nil {
		return p.recordFailed(err)
	}
	defer s.Close()
	if err := s.Erase(who); err != nil {
		return p.recordFailed(err)
	}
	fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(RecordErased, finding.Values{"who": who})))
	return Done
}
