package record

import (
	"bytes"
	"database/sql"
	"encoding/hex"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// fewestDigits is how many digits of a hash identify it: 64 bits.
const fewestDigits = 16

// Verify checks the whole store: every link of the chain, the search columns
// against the chain, files and photos, and the names that are present. against
// is a hash that the chain had before, or at least its first 16 digits: the
// chain must still contain it. If it is empty that is not checked.
// Verify does not prove who wrote an entry, nor that what was entered is true.
// Without against it finds neither a truncated chain nor a store that was
// rewritten.
func (s *Store) Verify(against string) (Verdict, error) {
	wanted, err := parseHash(against)
	if err != nil {
		return Verdict{}, err
	}
	c := &check{engine: s.engine, wanted: wanted, subjects: map[int64]*seenSubject{}, ids: map[string]int64{}, people: map[string]map[int64]bool{}, sums: map[string]int64{}}
	err = s.snapshot(func(tx *sql.Tx) error {
		c.db = tx
		for _, part := range []func() error{c.database, c.chain, c.starts, c.names, c.files} {
			if err := part(); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return Verdict{}, s.notRead(err)
	}
	if wanted != "" && c.met == 0 {
		c.fault(Rewritten, finding.Values{"hash": against, "place": int(c.end.Place)})
	}
	return Verdict{Head: c.end, Against: c.met, Faults: c.faults}, nil
}

// parseHash reads a hash as printed, including spaces.
func parseHash(written string) (string, error) {
	digits := strings.ToLower(strings.Join(strings.Fields(written), ""))
	if strings.Trim(digits, "0123456789abcdef") != "" || len(digits) > 64 || digits != "" && len(digits) < fewestDigits {
		return "", finding.Failed(NotAHash, finding.Values{"written": written})
	}
	return digits, nil
}

// check is a check of the store in progress.
type check struct {
	engine   engine
	db       *sql.Tx
	wanted   string
	met      int64 // place of the given hash
	end      Head
	faults   []finding.Finding
	subjects map[int64]*seenSubject
	ids      map[string]int64          // id of a record → its place
	people   map[string]map[int64]bool // hash of a name → the records that contain it
	sums     map[string]int64          // SHA-256 → place of an entry that names it
}

// seenSubject is what the bodies state about a record.
type seenSubject struct {
	start   body
	version int
	last    int64
}

// mostFaults is enough to show that a store is damaged.
const mostFaults = 100

func (c *check) fault(code finding.Code, values finding.Values) {
	if len(c.faults) < mostFaults {
		c.faults = append(c.faults, finding.Failed(code, values))
	}
}

// database asks the database whether it is intact.
func (c *check) database() error {
	why, err := c.engine.Damage(c.db)
	if why != "" {
		c.fault(FileDamaged, finding.Values{"why": why})
	}
	return err
}

// row is an entry as stored in the table.
type row struct {
	place, subject  int64
	version         int
	id, act, wrench string
	body, hash      []byte
}

// chain follows the chain from its first link.
func (c *check) chain() error {
	rows, err := c.db.Query("SELECT n, subject, version, id, act, wrench, body, hash FROM entry ORDER BY n")
	if err != nil {
		return err
	}
	defer rows.Close()
	var before []byte
	for rows.Next() {
		var r row
		if err := rows.Scan(&r.place, &r.subject, &r.version, &r.id, &r.act, &r.wrench, &r.body, &r.hash); err != nil {
			return err
		}
		c.linked(r, before)
		before = r.hash
	}
	return rows.Err()
}

func (c *check) linked(r row, before []byte) {
	if want := c.end.Place + 1; r.place != want {
		c.fault(EntryMissing, finding.Values{"place": int(want)})
	} else if !bytes.Equal(r.hash, link(before, r.body)) {
		c.fault(EntryChanged, finding.Values{"place": int(r.place)})
	}
	c.end = Head{Place: r.place, Hash: hex.EncodeToString(r.hash)}
	if c.wanted != "" && c.met == 0 && strings.HasPrefix(c.end.Hash, c.wanted) {
		c.met = r.place
	}
	b, err := readBody(r.body)
	if err != nil {
		c.fault(EntryChanged, finding.Values{"place": int(r.place)})
		return
	}
	c.indexed(r, b)
}

// indexed compares the columns of an entry with its body, and records what else
// the body needs.
func (c *check) indexed(r row, b body) {
	if b.Start != nil {
		c.subjects[r.place] = &seenSubject{start: b, version: -1}
		c.ids[b.On] = r.place
	}
	about := c.subjects[r.subject]
	if about == nil || about.start.On != b.On || b.Place != r.place || b.Version != r.version || b.id() != r.id || b.act() != r.act || b.wrench() != r.wrench {
		c.fault(IndexChanged, finding.Values{"place": int(r.place)})
		return
	}
	if b.Version != about.version+1 {
		c.fault(EntryMissing, finding.Values{"place": int(r.place)})
	}
	about.version, about.last = b.Version, max(about.last, milliseconds(b.time()))
	for _, hash := range b.names() {
		if *hash != "" {
			if c.people[*hash] == nil {
				c.people[*hash] = map[int64]bool{}
			}
			c.people[*hash][r.subject] = true
		}
	}
	for _, sum := range b.sums() {
		c.sums[sum] = r.place
	}
}

// starts compares the rows under which records are found with the bodies that
// started them.
func (c *check) starts() error {
	rows, err := c.db.Query("SELECT n, id, kind, job, machine, joint, first, last FROM subject")
	if err != nil {
		return err
	}
	defer rows.Close()
	found := 0
	for rows.Next() {
		var n, first, last int64
		var id, kind, machine, joint string
		var job sql.NullInt64
		if err := rows.Scan(&n, &id, &kind, &job, &machine, &joint, &first, &last); err != nil {
			return err
		}
		seen := c.subjects[n]
		if seen == nil {
			c.fault(SubjectChanged, finding.Values{"id": id})
			continue
		}
		found++
		st := *seen.start.Start
		wantMachine := machineKey(st, c.startOf(st.Job))
		if id != seen.start.On || Kind(kind) != st.Kind || job.Int64 != c.ids[st.Job] || machine != wantMachine ||
			joint != jointKey(st) || first != milliseconds(st.Time) || last != seen.last {
			c.fault(SubjectChanged, finding.Values{"id": id})
		}
	}
	if found != len(c.subjects) {
		c.fault(SubjectChanged, finding.Values{"id": "?"})
	}
	return rows.Err()
}

// startOf returns what a job was started from, or nil.
func (c *check) startOf(job string) *start {
	if seen := c.subjects[c.ids[job]]; seen != nil {
		return seen.start.Start
	}
	return nil
}

// names checks that the names which were not erased are those of the chain, and
// that each is found in the records that contain it.
func (c *check) names() error {
	wrong, err := c.wrongNames()
	if err != nil {
		return err
	}
	parts, err := c.wrongParts()
	if wrong += parts; wrong > 0 {
		c.fault(NameChanged, finding.Values{"count": wrong})
	}
	return err
}

func (c *check) wrongNames() (wrong int, err error) {
	rows, err := c.db.Query("SELECT hash, name, salt FROM person")
	if err != nil {
		return 0, err
	}
	defer rows.Close()
	known := map[string]bool{}
	for rows.Next() {
		var hash string
		var name sql.NullString
		var salt []byte
		if err := rows.Scan(&hash, &name, &salt); err != nil {
			return 0, err
		}
		known[hash] = true
		if name.Valid != (salt != nil) || name.Valid && nameHash(salt, name.String) != hash {
			wrong++
		}
	}
	for hash := range c.people {
		if !known[hash] {
			wrong++
		}
	}
	return wrong, rows.Err()
}

func (c *check) wrongParts() (wrong int, err error) {
	rows, err := c.db.Query("SELECT hash, subject FROM took_part JOIN person ON person.n = person")
	if err != nil {
		return 0, err
	}
	defer rows.Close()
	left := 0
	for _, records := range c.people {
		left += len(records)
	}
	for rows.Next() {
		var hash string
		var subject int64
		if err := rows.Scan(&hash, &subject); err != nil {
			return 0, err
		}
		if !c.people[hash][subject] {
			wrong++
		} else {
			left--
		}
	}
	return wrong + left, rows.Err()
}

// files checks that what entries name by SHA-256 is present and unchanged.
func (c *check) files() error {
	rows, err := c.db.Query("SELECT sum, data FROM blob ORDER BY sum")
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var sum string
		var data []byte
		if err := rows.Scan(&sum, &data); err != nil {
			return err
		}
		if sumOf(data) != sum {
			c.fault(BlobChanged, finding.Values{"sum": sum})
		}
		delete(c.sums, sum)
	}
	var missing []string
	for sum := range c.sums {
		missing = append(missing, sum)
	}
	slices.Sort(missing)
	for _, sum := range missing {
		c.fault(BlobMissing, finding.Values{"place": int(c.sums[sum]), "sum": sum})
	}
	return rows.Err()
}
