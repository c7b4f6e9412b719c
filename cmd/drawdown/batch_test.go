//go:build linux

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
	"time"
)

// copies writes the same pattern under many names.
func copies(t testing.TB, program string, count int) []string {
	t.Helper()
	folder := t.TempDir()
	if out, err := exec.Command(program, "patterns", "p4-head", "-o", folder).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	text, err := os.ReadFile(filepath.Join(folder, "p4-head.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	files := make([]string, count)
	for k := range files {
		files[k] = filepath.Join(folder, fmt.Sprintf("head-%04d.yaml", k))
		if err := os.WriteFile(files[k], text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

// BenchmarkBatch draws cards, both sides as PDF and as pictures at 300 dpi, 50
// at a time: one after another on one core, then together on all cores, by
// turns, so that the load of the machine falls on both. -benchtime 20x makes it
// 1,000 cards. share is the rate together over the rate of one core times the
// cores; wanted is 0.7 at least.
func BenchmarkBatch(b *testing.B) {
	const count = 50
	program, cores := built(b), runtime.NumCPU()
	files, folder := copies(b, program, count), b.TempDir()
	run := func(cores int) time.Duration {
		args := append([]string{"card", "-o", folder, "--jobs", strconv.Itoa(cores)}, files...)
		command := exec.Command(program, args...)
		command.Env = append(os.Environ(), "GOMAXPROCS="+strconv.Itoa(cores))
		begin := time.Now()
		if out, err := command.CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, out)
		}
		return time.Since(begin)
	}
	var alone, together time.Duration
	for b.Loop() {
		alone += run(1)
		together += run(cores)
	}
	cards := float64(count * b.N)
	b.ReportMetric(cards/alone.Seconds(), "cards/s/core")
	b.ReportMetric(cards/together.Seconds(), "cards/s")
	b.ReportMetric(float64(alone)/float64(together)/float64(cores), "share")
}
