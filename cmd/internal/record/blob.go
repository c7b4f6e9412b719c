package record

import (
	"crypto/rand"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"

	"drawdown/geometry/finding"
)

// Kinds of data that are stored by their SHA-256.
const (
	frozenBlob = "plan"
	fileBlob   = "file"
	photoBlob  = "photo"
)

func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// keepBlob stores data once, and returns the SHA-256 under which it is found.
func keepBlob(tx *sql.Tx, kind string, data []byte) (sum string, err error) {
	sum = sumOf(data)
	_, err = tx.Exec("INSERT INTO blob (sum, kind, data) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING", sum, kind, data)
	return sum, err
}

// PutPhoto stores a picture and returns its SHA-256, which an entry names.
func (s *Store) PutPhoto(data []byte) (sum string, err error) {
	err = s.written(func(tx *sql.Tx, _ *Head) error {
		sum, err = keepBlob(tx, photoBlob, data)
		return err
	})
	return sum, err
}

// PutFiles stores files and returns the SHA-256 of each by its name.
func (s *Store) PutFiles(files map[string][]byte) (sums map[string]string, err error) {
	sums = map[string]string{}
	err = s.written(func(tx *sql.Tx, _ *Head) error {
		for name, data := range files {
			if sums[name], err = keepBlob(tx, fileBlob, data); err != nil {
				return err
			}
		}
		return nil
	})
	return sums, err
}

// checkPhoto refuses an entry that names a missing picture.
func checkPhoto(tx *sql.Tx, sum string) error {
	var there int
	if sum == "" {
		return nil
	}
	err := tx.QueryRow("SELECT 1 FROM blob WHERE sum = $1 AND kind = $2", sum, photoBlob).Scan(&there)
	if errors.Is(err, sql.ErrNoRows) {
		return finding.Failed(NoPhoto, finding.Values{"sum": sum})
	}
	return err
}

// Photo returns a picture by its SHA-256.
func (s *Store) Photo(sum string) ([]byte, error) { return s.blob(sum, photoBlob) }

// File returns a file of a started record by its SHA-256.
func (s *Store) File(sum string) ([]byte, error) { return s.blob(sum, fileBlob) }

func (s *Store) blob(sum, kind string) (data []byte, err error) {
	err = s.read.QueryRow("SELECT data FROM blob WHERE sum = $1 AND kind = $2", sum, kind).Scan(&data)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, finding.Failed(NoPhoto, finding.Values{"sum": sum})
	}
	if err != nil {
		return nil, s.notRead(err)
	}
	return data, nil
}

// randomID identifies a store: the first link of its chain contains it.
func randomID() string {
	id := make([]byte, 16)
	rand.Read(id) // never fails
	return hex.EncodeToString(id)
}
