package source

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// endless is a stream of zeros.
type endless struct{ read int64 }

func (e *endless) Read(data []byte) (int, error) {
	clear(data)
	e.read += int64(len(data))
	return len(data), nil
}

// A stream is read up to its limit and one byte, and no more is kept: the
// chunks of 20 MB are never in memory twice.
func TestStreamIsBounded(t *testing.T) {
	const most = 20 << 20
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	e := &endless{}
	if _, err := Open("-", e, most); !errors.Is(err, TooLarge) {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if e.read > most+1 {
		t.Errorf("%d bytes are read", e.read)
	}
	if made := after.TotalAlloc - before.TotalAlloc; made > 3*most/2 {
		t.Errorf("%d MB are made for a bound of %d", made>>20, most>>20)
	}
	within := bytes.Repeat([]byte("ab"), most/2)
	if got, err := Open("-", bytes.NewReader(within), most); err != nil || !bytes.Equal(got.Data, within) {
		t.Errorf("%d bytes of %d: %v", len(got.Data), len(within), err)
	}
}

// A file of 3 GB is rejected by its size.
func TestLargeFileIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "large.yaml")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(path, 3<<30); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(path, nil, MostBytes); !errors.Is(err, TooLarge) {
		t.Error(err)
	}
}
