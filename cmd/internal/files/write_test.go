package files

import (
	"errors"
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

func TestWriteFilesReplacesWhole(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "a.pdf"), "a long old text")
	write(t, filepath.Join(folder, "z.txt"), "mine")
	paths, err := Write(folder, []render.File{{Name: "a.pdf", Data: []byte("new")}, {Name: "b.png", Data: []byte("b")}})
	if err != nil || len(paths) != 2 || !strings.HasSuffix(paths[1], "/b.png") {
		t.Fatalf("paths %q, error %v", paths, err)
	}
	if got, want := folderText(t, folder), "a.pdf=new b.png=b z.txt=mine"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// The place of the last file is taken by a folder after all were prepared, as
// when another program is at work there.
func TestReplaceAllGivesUpTogether(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "old.pdf"), "old")
	var set []*placed
	for _, name := range []string{"old.pdf", "fresh.png", "taken.png"} {
		one, err := prepare(filepath.Join(folder, name), []byte("new "+name))
		if err != nil {
			t.Fatal(err)
		}
		set = append(set, one)
	}
	if err := os.MkdirAll(filepath.Join(folder, "taken.png", "below"), 0o777); err != nil {
		t.Fatal(err)
	}
	err := replaceAll(set)
	for _, one := range set {
		one.discard()
	}
	if !errors.Is(err, NotWritten) || !strings.Contains(err.Error(), "taken.png") {
		t.Errorf("error %v, want one that names taken.png", err)
	}
	if got, want := folderText(t, folder), "old.pdf=old taken.png/"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// A file that cannot be prepared leaves nothing of those before it.
func TestWriteFilesLeavesNothingAfterAFailure(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "a.pdf"), "old")
	_, err := Write(folder, []render.File{{Name: "a.pdf", Data: []byte("new")}, {Name: "gone/b.png", Data: []byte("b")}})
	if !errors.Is(err, NotWritten) || !strings.Contains(err.Error(), "b.png") {
		t.Errorf("error %v, want one that names b.png", err)
	}
	if got, want := folderText(t, folder), "a.pdf=old"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}
