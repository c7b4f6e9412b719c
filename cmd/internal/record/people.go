package record

import (
	"crypto/rand"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"strings"

	"drawdown/geometry/finding"
)

const (
	saltBytes = 16
	hashBytes = 16 // of the SHA-256 over salt and name: enough to avoid collisions
)

// nameHash replaces a name in the chain.
func nameHash(salt []byte, name string) string {
	sum := sha256.Sum256(append(salt[:len(salt):len(salt)], name...))
	return hex.EncodeToString(sum[:hashBytes])
}

// hideNames replaces each name by its hash, and returns the people.
func hideNames(tx *sql.Tx, names ...*string) (people []int64, err error) {
	for _, at := range names {
		if *at = strings.TrimSpace(*at); *at == "" {
			continue
		}
		person, hash, err := personOf(tx, *at)
		if err != nil {
			return nil, err
		}
		*at = hash
		people = append(people, person)
	}
	return people, nil
}

// personOf finds a person by name, or adds a new one.
func personOf(tx *sql.Tx, name string) (person int64, hash string, err error) {
	err = tx.QueryRow("SELECT n, hash FROM person WHERE name = $1", name).Scan(&person, &hash)
	if !errors.Is(err, sql.ErrNoRows) {
		return person, hash, err
	}
	salt := make([]byte, saltBytes)
	rand.Read(salt) // never fails
	hash = nameHash(salt, name)
	err = tx.QueryRow("INSERT INTO person (n, hash, name, salt) SELECT coalesce(max(n), 0) + 1, $1, $2, $3 FROM person RETURNING n", hash, name, salt).Scan(&person)
	return person, hash, err
}

// erasedLength is how much of a hash is shown for an erased name: enough to see
// which entries are by the same person.
const erasedLength = 6

// show replaces hashes by names; for an erased name, by a # and the start of
// its hash.
func (r reader) show(names ...*string) error {
	for _, at := range names {
		if *at == "" {
			continue
		}
		name, known := r.names[*at]
		if !known {
			var err error
			if name, err = r.nameOf(*at); err != nil {
				return err
			}
			r.names[*at] = name
		}
		*at = name
	}
	return nil
}

func (r reader) nameOf(hash string) (string, error) {
	var name sql.NullString
	if err := r.db.QueryRow("SELECT name FROM person WHERE hash = $1", hash).Scan(&name); err != nil && !errors.Is(err, sql.ErrNoRows) {
		return "", err
	}
	if !name.Valid {
		return "#" + hash[:min(erasedLength, len(hash))], nil
	}
	return name.String, nil
}

// People lists the people in the record, by name.
func (s *Store) People() ([]Person, error) {
	rows, err := s.read.Query("SELECT name, (SELECT count(*) FROM took_part WHERE person = person.n) FROM person WHERE name IS NOT NULL ORDER BY name")
	if err != nil {
		return nil, s.notRead(err)
	}
	defer rows.Close()
	var list []Person
	for rows.Next() {
		var one Person
		if err := rows.Scan(&one.Name, &one.Records); err != nil {
			return nil, s.notRead(err)
		}
		if one.Records > 0 {
			list = append(list, one)
		}
	}
	return list, rows.Err()
}

// Erase deletes a name and its salt. The person's work stays in the record,
// without the name, and the chain remains valid. The name is also removed from
// the file, not only from its tables, but not from backups.
func (s *Store) Erase(who string) error {
	err := s.written(func(tx *sql.Tx, _ *Head) error {
		result, err := tx.Exec("UPDATE person SET name = NULL, salt = NULL WHERE name = $1", strings.TrimSpace(who))
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); err != nil || n == 0 {
			return errors.Join(err, finding.Failed(NoPerson, finding.Values{"who": who}))
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := s.engine.Forget(s.write); err != nil {
		return s.notKept(err)
	}
	return nil
}
