package record

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"drawdown/sequence/run"
)

// A file that may not grow replaces a full disk where no small disk can be
// made: the error is reported, and what was confirmed before is kept.
func TestFileThatCannotGrow(t *testing.T) {
	t.Parallel()
	at := inTempFolder(t)
	s := opened(t, at)
	added(t, s, headRun)
	closed(t, s)
	c, lines := started(t, at, "f", child+"_MOST=400000")
	var confirmed []string
	said := ""
	for lines.Scan() {
		if said = lines.Text(); !strings.HasPrefix(said, "error") {
			confirmed = append(confirmed, said)
		}
	}
	c.Wait()
	if !strings.HasPrefix(said, "error "+string(DiskFull)) || len(confirmed) < 10 {
		t.Errorf("%d confirmed, then %q", len(confirmed), said)
	}
	checkKept(t, at, confirmed)
	again, lines := started(t, at, "g") // there is room again
	if !lines.Scan() || strings.HasPrefix(lines.Text(), "error") {
		t.Error(lines.Text())
	}
	again.Process.Kill()
	again.Wait()
	checkKept(t, at, append(confirmed, lines.Text()))
}

// A disk of 1 MB that fills up, if the system lets this test make one;
// otherwise the test above has to do.
func TestFullDisk(t *testing.T) {
	t.Parallel()
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=1m"); err != nil {
		t.Logf("no disk can be made here: %v", err)
		return
	}
	defer syscall.Unmount(disk, syscall.MNT_DETACH)
	s := opened(t, Place{Folder: filepath.Join(disk, "records")})
	id := added(t, s, headRun)
	filler := filepath.Join(disk, "filler")
	if err := os.WriteFile(filler, make([]byte, 300_000), 0o600); err != nil {
		t.Fatal(err)
	}
	var confirmed []string
	var err error
	for i := 0; err == nil && i < 10_000; i++ {
		e := run.Entry{ID: fmt.Sprint("d", i), Act: run.Remark, Who: "RA", Note: strings.Repeat("seen ", 100), Time: noon}
		if _, err = s.Append(id, e, nil); err == nil {
			confirmed = append(confirmed, e.ID)
		}
	}
	if !errors.Is(err, DiskFull) || len(confirmed) < 10 {
		t.Fatalf("%d confirmed, then %v", len(confirmed), err)
	}
	sound(t, s) // it can still be read
	if err := os.Remove(filler); err != nil {
		t.Fatal(err)
	}
	confirmed = append(confirmed, "after")
	appended(t, s, id, run.Entry{ID: "after", Act: run.Remark, Who: "RA", Time: noon})
	closed(t, s)
	checkKept(t, Place{Folder: filepath.Join(disk, "records")}, confirmed)
}
