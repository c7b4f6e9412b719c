package files

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// What no file may replace is refused and not looked into: a link to a device that
// never ends, a pipe that nobody writes to.
func TestDevicesAreRefused(t *testing.T) {
	for name, put := range map[string]func(path string) error{
		"link to a device": func(path string) error { return os.Symlink("/dev/zero", path) },
		"pipe":             func(path string) error { return syscall.Mkfifo(path, 0o666) },
	} {
		folder := t.TempDir()
		if err := put(filepath.Join(folder, "a.pdf")); err != nil {
			t.Fatal(err)
		}
		if _, err := Write(folder, set("a.pdf=new", "b.pdf=new")); !errors.Is(err, NotRegular) {
			t.Errorf("%s: error %v, want %v", name, err, NotRegular)
		}
	}
}

// A file of 3 GB with nothing in it is replaced without being read: a process that
// read it would grow by as much.
func TestLargeFileIsNotRead(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.pdf")
	write(t, path, "")
	if err := os.Truncate(path, 3<<30); err != nil {
		t.Skip(err)
	}
	before := peakKB(t)
	if _, err := Write(folder, set("a.pdf=new", "b.pdf=new")); err != nil {
		t.Fatal(err)
	}
	if grown := peakKB(t) - before; grown > 50<<10 {
		t.Errorf("the process grew by %d kB", grown)
	}
}

// peakKB is the most memory that the process has had.
func peakKB(t *testing.T) int64 {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return used.Maxrss
}

// A disk that fills up: what stood there stands, and nothing hidden is left.
func TestFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=200k"); err != nil {
		t.Logf("no disk can be made here: %v", err)
		return
	}
	defer syscall.Unmount(disk, syscall.MNT_DETACH)
	if _, err := Write(disk, set("a.pdf=1", "b.pdf=1")); err != nil {
		t.Fatal(err)
	}
	files := set("a.pdf=2", "b.pdf=2")
	files[1].Data = make([]byte, 300_000)
	if _, err := Write(disk, files); !errors.Is(err, NotWritten) || !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("error %v", err)
	}
	if got, want := folderText(t, disk), "a.pdf=1 b.pdf=1"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

// A folder that may not be written to, as root too: a disk that is mounted so.
func TestReadOnlyDisk(t *testing.T) {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=200k"); err != nil {
		t.Logf("no disk can be made here: %v", err)
		return
	}
	defer syscall.Unmount(disk, syscall.MNT_DETACH)
	write(t, filepath.Join(disk, "a.pdf"), "old")
	if err := syscall.Mount("tmpfs", disk, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{"a.pdf=new", "b.pdf=new"} {
		if _, err := Write(disk, set(file)); !errors.Is(err, NotWritten) {
			t.Errorf("%s: error %v", file, err)
		}
	}
	if got, want := folderText(t, disk), "a.pdf=old"; got != want {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}
