package patterns

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"drawdown/patterns/source"
	"drawdown/render/words"
)

func writeFile(t *testing.T, folder, name, text string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestOpenTellsNamesFromTheDisk(t *testing.T) {
	folder := t.TempDir()
	_, err := Open("p4-haed", nil)
	if said := words.English().Error(err); !errors.Is(err, source.NotThere) || !errors.Is(err, fs.ErrNotExist) ||
		!strings.Contains(said, "did you mean p4-head?") || !strings.Contains(said, "p4-sump") {
		t.Errorf("unknown name: %v", err)
	}
	if _, err = Open(filepath.Join(folder, "none.yaml"), nil); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("missing file: %v", err)
	}
	if _, err = Open(folder, nil); !errors.Is(err, fs.ErrInvalid) {
		t.Errorf("folder: %v", err)
	}
	broken := errors.New("the line went dead")
	if _, err = Open("-", iotest.ErrReader(broken)); !errors.Is(err, broken) || errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		t.Errorf("stdin: %v", err)
	}
	if runtime.GOOS == "windows" || os.Getuid() == 0 {
		return // permissions stop neither root nor the test folder of Windows
	}
	shut := writeFile(t, folder, "shut.yaml", "drawdown: 1\n")
	if err := os.Chmod(shut, 0); err != nil {
		t.Fatal(err)
	}
	if _, err = Open(shut, nil); !errors.Is(err, fs.ErrPermission) || errors.Is(err, fs.ErrNotExist) {
		t.Errorf("permission: %v", err)
	}
}

func TestOpenReadsStreamsFilesAndBuiltins(t *testing.T) {
	text := "drawdown: 1\nextends: p4-head\ntitle: Zylinderköpfe, Bank 2\n"
	from, err := Open("-", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	in, problems := Read(from)
	if len(problems) > 0 || in.Name != "zylinderkopfe-bank-2" || len(in.Joint.Fasteners) != 14 {
		t.Errorf("%q, %v", in.Name, problems)
	}

	// A file with the name of a built-in pattern beside the extending one takes
	// precedence; the bare name always means the built-in one.
	folder := t.TempDir()
	writeFile(t, folder, "p4-head.yaml", "drawdown: 1\nextends: p4-head\ntitle: Mine\n")
	child := writeFile(t, folder, "child.YAML", "drawdown: 1\nextends: p4-head.yaml\n")
	if in := mustRead(t, child); in.Title != "Mine" || in.Name != "child" {
		t.Errorf("%q %q", in.Title, in.Name)
	}
	writeFile(t, folder, "other.yaml", "drawdown: 1\nextends: p4-sump.yaml\n")
	if in := mustRead(t, filepath.Join(folder, "other.yaml")); in.Title != "Oil sump" {
		t.Errorf("%q", in.Title)
	}

	if _, err := Open("-", bytes.NewReader(make([]byte, 2*source.MostBytes))); !errors.Is(err, source.TooLarge) {
		t.Error(err)
	}
}

func TestLongChainsAreRefused(t *testing.T) {
	const mostFiles = 16 // of a chain
	folder := t.TempDir()
	for i := range mostFiles + 1 {
		writeFile(t, folder, fmt.Sprintf("%d.yaml", i), fmt.Sprintf("extends: %d.yaml\n", i+1))
	}
	writeFile(t, folder, fmt.Sprintf("%d.yaml", mostFiles+1), "drawdown: 1\nextends: p4-head\n")
	for first, want := range map[int]bool{0: true, 1: true, 2: true, 3: false} {
		source, err := Open(filepath.Join(folder, fmt.Sprintf("%d.yaml", first)), nil)
		if err != nil {
			t.Fatal(err)
		}
		_, problems := Read(source)
		if problems.Stops() != want {
			t.Errorf("from %d: %v", first, problems)
		}
	}
}

func TestTextFromElsewhereOpensNoFile(t *testing.T) {
	path := writeFile(t, t.TempDir(), "secret.yaml", "drawdown: 1\ntitle: Secret\n")
	_, problems := Read(FromBytes("page", []byte("drawdown: 1\nextends: "+filepath.ToSlash(path)+"\n")))
	if len(problems) != 1 || strings.Contains(said(problems)[0].String(), "Secret") || !strings.Contains(said(problems)[0].What, "there is no file") {
		t.Errorf("%v", problems)
	}
}

func TestFingerprint(t *testing.T) {
	const text = "drawdown: 1\ntitle: Lid\nfasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{torque: 5 N·m}]}\n"
	in, _ := readText(text)
	// First principles: the first four bytes of SHA-256 over the file.
	sum := sha256.Sum256([]byte(text))
	if want := fmt.Sprintf("%x %x", sum[:2], sum[2:4]); in.Fingerprint != want {
		t.Errorf("%q, want %q", in.Fingerprint, want)
	}
	dos, problems := readText(strings.ReplaceAll(text, "\n", "\r\n"))
	if dos.Fingerprint != in.Fingerprint {
		t.Errorf("CRLF: %q, LF: %q %v", dos.Fingerprint, in.Fingerprint, problems)
	}
	if other, _ := readText(text + "view: x\n"); other.Fingerprint == in.Fingerprint {
		t.Error("another file has the same fingerprint")
	}
	child := []byte("drawdown: 1\nextends: p4-head\n")
	base, _ := BuiltinText("p4-head")
	got, _ := Read(FromBytes("text", child))
	sum = sha256.Sum256(append(child, base...))
	if want := fmt.Sprintf("%x %x", sum[:2], sum[2:4]); got.Fingerprint != want {
		t.Errorf("chain: %q, want %q", got.Fingerprint, want)
	}
}

func TestBuiltinText(t *testing.T) {
	if _, ok := BuiltinText("p4-head.yaml"); ok {
		t.Error("a built-in pattern is named without its ending")
	}
	text, ok := BuiltinText("p4-head")
	if !ok || bytes.Contains(text, []byte("\r")) {
		t.Error("p4-head is not there, or has other line ends")
	}
}
