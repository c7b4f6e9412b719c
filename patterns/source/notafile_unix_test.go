//go:build !windows

package source

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// An endless device, a pipe without a writer, and links to them are rejected at
// once, under their own name and when named by another file.
func TestWhatIsNoFileIsRefused(t *testing.T) {
	folder := t.TempDir()
	pipe := filepath.Join(folder, "pipe.yaml")
	if err := syscall.Mkfifo(pipe, 0o666); err != nil {
		t.Fatal(err)
	}
	for name, target := range map[string]string{"device.yaml": "/dev/zero", "link.yaml": pipe} {
		if err := os.Symlink(target, filepath.Join(folder, name)); err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	beside := Source{files: true, folder: folder}
	for _, name := range []string{"device.yaml", "pipe.yaml", "link.yaml"} {
		_, byPath := Open(filepath.Join(folder, name), nil, MostBytes)
		_, byOther := beside.Beside(name)
		for how, err := range map[string]error{"by its path": byPath, "by another file": byOther} {
			if !errors.Is(err, NoFile) || !errors.Is(err, fs.ErrInvalid) {
				t.Errorf("%s %s: %v", name, how, err)
			}
		}
		if _, err := openIn(root, name); err == nil {
			t.Errorf("%s in its folder: no error", name)
		}
	}
}
