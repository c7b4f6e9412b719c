package record

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/testkit"
	"drawdown/sequence/run"
)

// small makes a store with a job, two runs, a photo and people.
func small(t testing.TB, at Place) *Store {
	t.Helper()
	s := opened(t, at)
	job, err := s.AddJob(NewJob{Of: "p4-engine", Title: "Engine", Number: "P4-0117", Who: "JK", Time: noon, Frozen: []byte("{}")})
	if err != nil {
		t.Fatal(err)
	}
	inJob := headRun
	inJob.Job = job
	a, b := added(t, s, inJob), added(t, s, headRun)
	sum, err := s.PutPhoto([]byte("picture"))
	if err != nil {
		t.Fatal(err)
	}
	appended(t, s, a, run.Entry{ID: "a1", Act: run.Done, Step: 1, Who: "RA", Wrench: "W7", Time: noon})
	appended(t, s, b, run.Entry{ID: "b1", Act: run.Find, Who: "MB", Photo: sum, Note: "crack", Time: noon})
	appended(t, s, a, run.Entry{ID: "a2", Act: run.HandOver, Who: "RA", To: "MB", Time: noon})
	appended(t, s, b, run.Entry{ID: "b2", Act: run.Seal, Who: "MB", Second: "JK", Wrench: "W7", Time: noon})
	return s
}

func faults(t testing.TB, s *Store, against string) []finding.Finding {
	t.Helper()
	v, err := s.Verify(against)
	if err != nil {
		t.Fatal(err)
	}
	return v.Faults
}

// value is one field of one row.
type value struct {
	table, column string
	key           string // the column that identifies the row
	row           any    // its value in that row
	data          any
}

// values lists all fields of the tables, except refusals, which are outside the
// chain.
func values(t testing.TB, db *sql.DB) (all []value) {
	t.Helper()
	for table, key := range map[string]string{"entry": "n", "subject": "n", "person": "n", "blob": "sum"} {
		rows, err := db.Query(fmt.Sprintf("SELECT %s AS place, * FROM %s", key, table))
		if err != nil {
			t.Fatal(err)
		}
		columns, err := rows.Columns()
		if err != nil {
			t.Fatal(err)
		}
		for rows.Next() {
			fields := make([]any, len(columns))
			into := make([]any, len(columns))
			for i := range fields {
				into[i] = &fields[i]
			}
			if err := rows.Scan(into...); err != nil {
				t.Fatal(err)
			}
			for i, column := range columns[1:] {
				all = append(all, value{table, column, key, fields[0], fields[i+1]})
			}
		}
		if err := rows.Err(); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// changes returns variants of a field that differ in one byte. A plain run
// flips one bit of every third byte, a different one in turn; a full one flips every
// bit.
func changes(data any) (all []any) {
	flipped := func(text []byte) (list [][]byte) {
		for i := range text {
			for bit := range 8 {
				if testkit.Full() || i%3 == 0 && bit == i/3%8 {
					changed := append([]byte(nil), text...)
					changed[i] ^= 1 << bit
					list = append(list, changed)
				}
			}
		}
		return list
	}
	switch data := data.(type) {
	case []byte:
		for _, changed := range flipped(data) {
			all = append(all, changed)
		}
	case string:
		for _, changed := range flipped([]byte(data)) {
			all = append(all, string(changed))
		}
		all = append(all, data+"x")
	case int64:
		all = append(all, data+1, data^1<<20)
	}
	return all
}

// anyChange lets a test make changes that the database would refuse.
func anyChange(t *testing.T, s *Store) {
	t.Helper()
	settings := "PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF"
	if s.Shared() {
		settings = "SET session_replication_role = replica; SET synchronous_commit = off"
	}
	if _, err := s.write.Exec(settings); err != nil {
		t.Fatal(err)
	}
}

// Every changed byte of every row is found: in entries, search columns, names,
// files and photos.
func TestEveryChangedByteIsFound(t *testing.T) { onEach(t, testEveryChangedByteIsFound) }

func testEveryChangedByteIsFound(t *testing.T, at Place) {
	s := small(t, at)
	anyChange(t, s)
	tried, seen := 0, 0
	for _, v := range values(t, s.read) {
		if v.table == "blob" && v.column == "kind" || v.table == "person" && v.column == "n" || v.data == nil {
			continue // not of an entry: the kind does not matter, and n is changed below
		}
		set := fmt.Sprintf("UPDATE %s SET %s = $1 WHERE %s = $2", v.table, v.column, v.key)
		for _, changed := range changes(v.data) {
			if seen++; !at.isFile() && !testkit.Full() && seen%4 != 0 { // the check is the same, and the database slower
				continue
			}
			row := v.row
			if v.column == v.key {
				row = changed
			}
			if _, err := s.write.Exec(set, changed, v.row); err != nil {
				continue // a place that is taken
			}
			if len(faults(t, s, "")) == 0 {
				t.Errorf("%s.%s of %d: %q for %q is not found", v.table, v.column, v.row, changed, v.data)
			}
			if _, err := s.write.Exec(set, v.data, row); err != nil {
				t.Fatal(err)
			}
			tried++
		}
	}
	if sound(t, s); tried < testkit.Samples(70, 2000) {
		t.Errorf("only %d changes tried", tried)
	}
}

// Missing entries, entries in another order, and extra rows.
func TestMissingRowsAreFound(t *testing.T) { onEach(t, testMissingRowsAreFound) }

func testMissingRowsAreFound(t *testing.T, at Place) {
	for name, change := range map[string]string{
		"first entry":          "DELETE FROM entry WHERE n = 1",
		"an entry":             "DELETE FROM entry WHERE n = 6",
		"entry and its places": "DELETE FROM entry WHERE n = 6; UPDATE entry SET n = n - 1 WHERE n > 6",
		"two entries swapped":  "UPDATE entry SET n = 100 WHERE n = 6; UPDATE entry SET n = 6 WHERE n = 7; UPDATE entry SET n = 7 WHERE n = 100",
		"a run":                "DELETE FROM subject WHERE id = 'R2'",
		"all of a run":         "DELETE FROM entry WHERE subject = (SELECT n FROM subject WHERE id = 'R2'); DELETE FROM subject WHERE id = 'R2'",
		"a person":             "DELETE FROM person WHERE name = 'MB'",
		"who took part":        "DELETE FROM took_part WHERE person = 1",
		"took no part":         "INSERT INTO took_part VALUES ((SELECT n FROM person WHERE name = 'MB'), 1)",
		"a photo":              "DELETE FROM blob WHERE kind = 'photo'",
		"a file":               "DELETE FROM blob WHERE kind = 'file'",
		"another name":         "UPDATE person SET name = 'XX' WHERE name = 'MB'",
		"an added run":         "INSERT INTO subject VALUES (99, 'R3', 'run', NULL, '', '', 0, 0)",
	} {
		s := small(t, elsewhere(t, at))
		anyChange(t, s)
		if _, err := s.write.Exec(change); err != nil {
			t.Fatal(name, err)
		}
		if len(faults(t, s, "")) == 0 {
			t.Error(name, "is not found")
		}
	}
}

// A truncated chain and a rewritten store are consistent in themselves; only a
// hash that was printed before reveals them.
func TestVerifyAgainst(t *testing.T) { onEach(t, testVerifyAgainst) }

func testVerifyAgainst(t *testing.T, at Place) {
	s := small(t, at)
	head := sound(t, s)
	kept, err := s.Entries("R1", 0)
	if err != nil {
		t.Fatal(err)
	}
	printed := strings.ToUpper(head.Hash[:16] + " " + head.Hash[16:])
	for _, known := range []string{head.Hash, kept[0].Hash, head.Hash[:16], printed} {
		if found := faults(t, s, known); len(found) > 0 {
			t.Error(known, found)
		}
	}
	for _, wrong := range []string{"7c1e", head.Hash + "0", strings.Repeat("g", 64)} {
		if _, err := s.Verify(wrong); !errors.Is(err, NotAHash) {
			t.Error(wrong, err)
		}
	}
	if _, err := s.write.Exec("DELETE FROM entry WHERE n = (SELECT max(n) FROM entry); DELETE FROM took_part WHERE person = (SELECT n FROM person WHERE name = 'JK') AND subject = (SELECT n FROM subject WHERE id = 'R2')"); err != nil {
		t.Fatal(err)
	}
	if found := faults(t, s, ""); len(found) > 0 {
		t.Error("the cut end is found without the hash", found)
	}
	if found := faults(t, s, head.Hash); !finding.Has(found, Rewritten) {
		t.Error(found)
	}
	if found := faults(t, s, kept[0].Hash); len(found) > 0 { // before the cut
		t.Error(found)
	}
	anew := small(t, elsewhere(t, at))
	if found := faults(t, anew, head.Hash); !finding.Has(found, Rewritten) || len(faults(t, anew, "")) > 0 {
		t.Error(found)
	}
}

// A file with an overwritten page is never called sound.
func TestDamagedFile(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	closed(t, small(t, Place{Folder: folder}))
	file := filepath.Join(folder, storeFile)
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	const page = 4096 // SQLite's default page size
	for at := page; at < len(data); at += page {
		damaged := append([]byte(nil), data...)
		for i := range 200 {
			damaged[at+i] ^= 0x5a
		}
		if err := os.WriteFile(file, damaged, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := OpenToRead(Place{Folder: folder})
		if err != nil {
			continue
		}
		v, err := s.Verify("")
		if err == nil && len(v.Faults) == 0 && strings.Trim(string(data[at:at+200]), "\x00") != "" {
			t.Errorf("page at %d: nothing is found", at)
		}
		s.Close()
	}
}
