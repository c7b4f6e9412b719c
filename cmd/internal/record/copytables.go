package record

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"drawdown/geometry/finding"
)

// tables, each after those that it refers to. All databases have the same
// columns.
var tables = []string{"subject", "entry", "person", "took_part", "blob", "refusal"}

// copyTables writes the whole database to a new file.
func (s *Store) copyTables(file string) error {
	to := inFile(file)
	defer to.closeFiles()
	var err error
	if to.write, err = to.engine.Open(false); err != nil {
		return to.notAStore(err)
	}
	if err := to.migrate(); err != nil {
		return err
	}
	if err := s.copyInto(to); err != nil {
		return err
	}
	return to.engine.Forget(to.write) // everything is in the file, and nothing beside it
}

// restoreTables puts a backup into a database without a record.
func restoreTables(at Place, backup string) error {
	fresh, err := os.MkdirTemp("", "drawdown-restore-")
	if err != nil {
		return finding.Failed(NotKept, finding.Values{"why": err})
	}
	defer os.RemoveAll(fresh)
	from := inFile(filepath.Join(fresh, storeFile))
	defer from.closeFiles()
	if err := from.takeCopy(backup); err != nil {
		return named(err, backup)
	}
	to, err := at.store()
	if err != nil {
		return err
	}
	defer to.closeFiles()
	if err := to.openAlone(); err != nil {
		return err
	}
	if err := from.copyInto(to); err != nil {
		return err
	}
	return checkCopy(to, backup)
}

// takeCopy copies a backup to the place of this store, checks it, and brings it
// up to date.
func (s *Store) takeCopy(backup string) (err error) {
	if err := copyFile(backup, s.file); err != nil {
		return s.notKept(err)
	}
	if err := checkFile(s.file); err != nil {
		return err
	}
	return s.openAlone()
}

// openAlone opens a store to copy its tables, without starting a record.
func (s *Store) openAlone() (err error) {
	if s.write, err = s.engine.Open(false); err != nil {
		return s.notAStore(err)
	}
	if err := s.migrate(); err != nil {
		return err
	}
	return s.openToRead()
}

func checkCopy(s *Store, backup string) error {
	verdict, err := s.Verify("")
	if err == nil && len(verdict.Faults) > 0 {
		err = finding.Failed(BackupUnsound, finding.Values{"file": backup, "faults": verdict.Faults})
	}
	return err
}

// copyInto copies all tables, in the state of one moment, into a store without
// entries.
func (s *Store) copyInto(to *Store) error {
	return s.snapshot(func(from *sql.Tx) error {
		return to.transaction(func(tx *sql.Tx) error {
			end, err := headOf(tx)
			if err == nil && end.Place > 0 {
				err = finding.Failed(RecordThere, finding.Values{"name": to.name})
			}
			for _, table := range tables {
				if err == nil {
					err = copyTable(from, tx, table)
				}
			}
			return err
		})
	})
}

func copyTable(from, to *sql.Tx, table string) error {
	rows, err := from.Query("SELECT * FROM " + table + " ORDER BY 1") // a record comes after the job that it refers to
	if err != nil {
		return err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return err
	}
	insertion := insertionOf(table, columns)
	fields, into := make([]any, len(columns)), make([]any, len(columns))
	for i := range fields {
		into[i] = &fields[i]
	}
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return err
		}
		if _, err := to.Exec(insertion, fields...); err != nil {
			return err
		}
	}
	return rows.Err()
}

func insertionOf(table string, columns []string) string {
	var places []string
	for i := range columns {
		places = append(places, fmt.Sprint("$", i+1))
	}
	return fmt.Sprintf("INSERT INTO %s (%s) VALUES (%s)", table, strings.Join(columns, ", "), strings.Join(places, ", "))
}
