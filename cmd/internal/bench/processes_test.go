package bench

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/record/servertest"
)

// perBolt is the time between two taps of a tablet: a bolt that is turned
// quickly.
const perBolt = 3 * time.Second

// BenchmarkThreeProcesses measures the time until a tap is on the disk of the
// database, with 300 tablets at three processes, each with its own run and
// reading its events:
//
//	go test ./cmd/internal/bench -run XXX -bench ThreeProcesses -benchtime 6000x
func BenchmarkThreeProcesses(b *testing.B) {
	const processes, tablets = 3, 300
	server := servertest.Start(b)
	address := server.Address("postgres")
	program := filepath.Join(b.TempDir(), "drawdown")
	if said, err := exec.Command("go", "build", "-o", program, "drawdown/cmd/drawdown").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, said)
	}
	var shops []*shopfloor
	for range processes {
		shops = append(shops, process(b, program, address))
	}
	taps := tapped(b, tablets, perBolt, func(k int) *shopfloor { return shops[k%processes] }, func(s *shopfloor, run string) {
		go io.Copy(io.Discard, s.events("/api/runs/"+run+"/events", "").lines)
	})
	for name, percent := range map[string]int{"median-ms": 50, "p95-ms": 95, "p99-ms": 99} {
		b.ReportMetric(float64(taps[len(taps)*percent/100].Microseconds())/1000, name)
	}
	b.ReportMetric(0, "ns/op")
	checkAll(b, address, len(taps))
}

// process starts the page as a user does.
func process(b *testing.B, program, address string) *shopfloor {
	b.Helper()
	c := exec.Command(program, "bench", b.TempDir(), "--data", b.TempDir(), "--port", "0", "--no-open", "--store", address)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { c.Process.Signal(os.Interrupt); c.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		b.Fatal(err)
	}
	s := &shopfloor{t: b, client: &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 200}}}
	s.base, s.key, _ = strings.Cut(strings.TrimSpace(line), "/?key=")
	return s
}

// checkAll checks that every tap is in the record and the chain is valid.
func checkAll(b *testing.B, address string, taps int) {
	b.Helper()
	s, err := record.OpenToRead(record.Place{Address: address})
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	list, err := s.Runs(record.Filter{Most: 100_000})
	kept := 0
	for _, one := range list {
		kept += one.Version
	}
	if err != nil || kept != taps {
		b.Errorf("%d entries are kept of %d taps: %v", kept, taps, err)
	}
	if v, err := s.Verify(""); err != nil || len(v.Faults) > 0 {
		b.Error(v, err)
	}
}
