package record

import (
	"database/sql"
	"encoding/json"
	"time"

	"drawdown/sequence/run"
)

// refused is the stored answer to a refused entry.
type refused struct {
	Version int          `json:"version"`
	Head    string       `json:"head"`
	Finding run.Findings `json:"finding"`
	By      string       `json:"by,omitempty"` // hash of the name
	At      time.Time    `json:"at,omitzero"`
}

// keepRefusal stores the answer for an entry that is sent twice, outside the
// chain. The refusal of an unreadable entry is not stored: it would be judged
// the same way again.
func keepRefusal(tx *sql.Tx, subject int64, next body, answer Answer) error {
	r := answer.Refusal
	if r.Malformed {
		return nil
	}
	kept := refused{Version: answer.Version, Head: answer.Head, Finding: run.Findings{r.Finding}, By: r.By, At: r.At}
	if _, err := hideNames(tx, &kept.By); err != nil {
		return err
	}
	text, err := next.bytes()
	if err != nil {
		return err
	}
	data, err := json.Marshal(kept)
	if err != nil {
		return err
	}
	_, err = tx.Exec("INSERT INTO refusal (subject, id, body, answer) VALUES ($1, $2, $3, $4)", subject, next.id(), text, data)
	return err
}

// readRefusal reads what keepRefusal stored.
func readRefusal(tx *sql.Tx, data []byte) (Answer, error) {
	var kept refused
	if err := json.Unmarshal(data, &kept); err != nil {
		return Answer{}, err
	}
	if err := readingFrom(tx).show(&kept.By); err != nil {
		return Answer{}, err
	}
	r := &run.Refusal{By: kept.By, At: kept.At}
	for _, f := range kept.Finding {
		r.Finding = f
	}
	return Answer{Version: kept.Version, Head: kept.Head, Refusal: r}, nil
}
