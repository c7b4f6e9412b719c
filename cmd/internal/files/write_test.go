package files

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/render"
)

// write puts a file into a folder for a test.
func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// folderText writes a folder out as name=text, hidden files counted.
func folderText(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, e := range entries {
		if e.IsDir() {
			lines = append(lines, e.Name()+"/")
			continue
		}
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		lines = append(lines, e.Name()+"="+string(data))
	}
	return strings.Join(lines, " ")
}

func set(texts ...string) (files []render.File) {
	for _, text := range texts {
		name, data, _ := strings.Cut(text, "=")
		files = append(files, render.File{Name: name, Data: []byte(data)})
	}
	return files
}

func TestWriteFilesReplacesWhole(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "a.pdf"), "a long old text")
	write(t, filepath.Join(folder, "z.txt"), "mine")
	paths, err := Write(folder, set("a.pdf=new", "b.png=b"))
	if err != nil || len(paths) != 2 || !strings.HasSuffix(paths[1], "/b.png") {
		t.Fatalf("paths %q, error %v", paths, err)
	}
	if got, want := folderText(t, folder), "a.pdf=new b.png=b z.txt=mine"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// The place of the last file is taken by a folder after all were written, as when
// another program is at work there.
func TestAllGiveUpTogether(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "old.pdf"), "old")
	write(t, filepath.Join(folder, "rest.pdf"), "rest")
	s, err := newStaging(folder)
	if err != nil {
		t.Fatal(err)
	}
	for part, name := range map[string]string{"first": "old.pdf", "rest": "rest.pdf"} {
		if err := s.write(part, name, []byte("new"), forAll); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.MkdirAll(filepath.Join(folder, "taken.png", "below"), 0o777); err != nil {
		t.Fatal(err)
	}
	failed, err := s.move("old.pdf", []string{"rest.pdf", "taken.png"})
	s.discard()
	if !errors.Is(err, IsFolder) || failed != "taken.png" {
		t.Errorf("%q, error %v, want one for taken.png", failed, err)
	}
	if got, want := folderText(t, folder), "old.pdf=old rest.pdf=rest taken.png/"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// A file that cannot be prepared leaves nothing of those before it.
func TestWriteFilesLeavesNothingAfterAFailure(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "a.pdf"), "old")
	_, err := Write(folder, set("a.pdf=new", "gone/b.png=b"))
	if !errors.Is(err, NotWritten) || !strings.Contains(err.Error(), "b.png") {
		t.Errorf("error %v, want one that names b.png", err)
	}
	if got, want := folderText(t, folder), "a.pdf=old"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// ended is what a test ends a writer with, as a kill does.
type ended struct{}

// writeUntil writes a set and ends before the renaming of that number; whether it
// came so far.
func writeUntil(t *testing.T, folder string, number int, files []render.File) (came bool) {
	t.Helper()
	done := 0
	rename = func(from, to string) error {
		if done++; done == number {
			panic(ended{})
		}
		return os.Rename(from, to)
	}
	defer func() {
		rename = os.Rename
		if v := recover(); v != nil {
			if _, ok := v.(ended); !ok {
				panic(v)
			}
			came = true
		}
	}()
	s, err := newStaging(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { // the system lets go of the lock of a process that ends
		s.lock.Close()
		delete(live, s)
	}()
	var rest []string
	for i, f := range files {
		part := "first"
		if i > 0 {
			part, rest = "rest", append(rest, f.Name)
		}
		if err := s.write(part, f.Name, f.Data, forAll); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := s.move(files[0].Name, rest); err != nil {
		t.Fatal(err)
	}
	return false
}

// Ended before any renaming of a set of three: nobody sees an old file beside a new
// one, and the next run makes all old or all new, with nothing hidden left.
func TestEndedBetweenFiles(t *testing.T) {
	old, fresh := set("a=1", "b=1", "c=1"), set("a=2", "b=2", "c=2")
	for _, before := range [][]render.File{nil, old} {
		for number := 1; ; number++ {
			folder := t.TempDir()
			if before != nil {
				if _, err := Write(folder, before); err != nil {
					t.Fatal(err)
				}
			}
			came := writeUntil(t, folder, number, fresh)
			if seen := visible(t, folder); strings.Contains(seen, "=1") && strings.Contains(seen, "=2") {
				t.Errorf("ended before renaming %d: old beside new: %s", number, seen)
			}
			settleAll(folder)
			got := folderText(t, folder)
			if want := []string{"", "a=1 b=1 c=1"}[min(len(before), 1)]; got != want && got != "a=2 b=2 c=2" {
				t.Errorf("ended before renaming %d: %q after the next run", number, got)
			}
			if !came {
				if number < 4 {
					t.Errorf("only %d renamings", number-1)
				}
				break
			}
		}
	}
}

// visible returns what stands in a folder but for what is hidden.
func visible(t *testing.T, folder string) string {
	t.Helper()
	hidden, err := filepath.Glob(filepath.Join(folder, stagingPrefix+"*"))
	if err != nil {
		t.Fatal(err)
	}
	text := folderText(t, folder)
	for _, path := range hidden {
		text = strings.ReplaceAll(text, filepath.Base(path)+"/", "")
	}
	return text
}

// What someone has put into a place since is not written over by what was left.
func TestLeftFilesReplaceNothing(t *testing.T) {
	folder := t.TempDir()
	writeUntil(t, folder, 4, set("a=2", "b=2", "c=2")) // two looks at empty places, and a is in its own
	write(t, filepath.Join(folder, "b"), "mine")
	settleAll(folder)
	if got, want := folderText(t, folder), "a=2 b=mine c=2"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// The staging of a process that is at work is left alone, and so is a folder that
// only looks like one, but for what a staging holds.
func TestOthersStagingsStay(t *testing.T) {
	folder := t.TempDir()
	s, err := newStaging(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer s.discard()
	foreign := filepath.Join(folder, stagingPrefix+"mine")
	if err := os.Mkdir(foreign, 0o777); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(foreign, "notes"), "mine")
	settleAll(folder)
	for _, path := range []string{filepath.Join(s.path, "first"), filepath.Join(foreign, "notes")} {
		if _, err := os.Stat(path); err != nil {
			t.Error(err)
		}
	}
}

// Two writers of one set, many times at once: what is there in the end is of one
// of them.
func TestTwoWritersOfOneSet(t *testing.T) {
	folder := t.TempDir()
	done := make(chan error)
	for writer := range 2 {
		go func() {
			var err error
			for round := 0; round < 20 && err == nil; round++ {
				text := fmt.Sprint(writer, ".", round)
				_, err = Write(folder, set("a="+text, "b="+text, "c="+text))
			}
			done <- err
		}()
	}
	if err := errors.Join(<-done, <-done); err != nil {
		t.Fatal(err)
	}
	got := strings.Fields(folderText(t, folder))
	if len(got) != 3 || got[0][2:] != got[1][2:] || got[1][2:] != got[2][2:] {
		t.Errorf("folder holds %q", got)
	}
}

func TestReadOnlyFileStays(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "b.pdf")
	write(t, path, "old")
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	if _, err := Write(folder, set("a.pdf=new", "b.pdf=new")); !errors.Is(err, ReadOnly) {
		t.Errorf("error %v, want %v", err, ReadOnly)
	}
	if got, want := folderText(t, folder), "b.pdf=old"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}
