//go:build linux

package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
)

// A program that is killed while it writes leaves files that are whole, or none.
func TestKilledWhileWriting(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program, folder := built(t), t.TempDir()
	args := []string{"card", "p4-head", "--format", "pdf,svg", "-o", folder}
	whole := cold(t, 1, program, args...) // its time on this machine
	r := rand.New(rand.NewPCG(9, 9))
	for range testkit.Samples(6, 200) {
		command := exec.Command(program, args...)
		if err := command.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(r.Float64() * float64(whole)))
		_ = command.Process.Kill() // fails where it has ended
		_ = command.Wait()
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if strings.HasPrefix(e.Name(), ".") {
				continue // what was being written
			}
			data, err := os.ReadFile(filepath.Join(folder, e.Name()))
			if err != nil {
				t.Fatal(err)
			}
			end := map[string]string{".pdf": "%%EOF", ".svg": "</svg>"}[filepath.Ext(e.Name())]
			if end == "" || !bytes.HasSuffix(bytes.TrimSpace(data), []byte(end)) {
				t.Errorf("%s of %d bytes is not whole", e.Name(), len(data))
			}
		}
	}
}
