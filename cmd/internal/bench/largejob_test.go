package bench

import (
	"fmt"
	"net/http"
	"testing"
	"time"
)

// BenchmarkLargeJob compares a job of 60 joints, with a run of each and about 5,000
// steps, with one of a single joint, tapped alternately:
//
//	go test ./cmd/internal/bench -run XXX -bench LargeJob -benchtime 200x
//
// A tap must not take longer; the page of the job lists what is there.
func BenchmarkLargeJob(b *testing.B) {
	s := served(b)
	rows := "  - row: {count: 42, pitch: 30, from: [0, 0], kind: bolt, id: A}\n"
	for n := range 60 {
		s.write(fmt.Sprintf("joint%d.yaml", n), fmt.Sprintf("drawdown: 1\ntitle: Joint %d\nmachine: Test pump\nkinds: {bolt: {thread: M8}}\nfasteners:\n%stighten:\n  stages:\n    - {torque: 10 N·m}\n    - {torque: 20 N·m}\n  source: invented\n", n, rows))
	}
	machine := func(joints int) string {
		text := "drawdown: 1\ntitle: Pump\nmachine: Test pump\nstrip:\n"
		for n := range joints {
			text += fmt.Sprintf("  - joint%d.yaml\n", n)
		}
		return text
	}
	s.write("small.yaml", machine(1))
	s.write("large.yaml", machine(60))
	jobs, runs := map[string]string{}, map[string]string{}
	for of, joints := range map[string]int{"small": 1, "large": 60} {
		jobs[of] = s.job(fmt.Sprintf(`{"of":%q,"who":"RA"}`, of))
		for n := range joints {
			runs[of] = s.run(fmt.Sprintf(`{"of":"joint%d","work":"loosen","job":%q}`, n, jobs[of]))
		}
	}
	took := map[string]time.Duration{}
	timed := func(what string, do func()) {
		from := time.Now()
		do()
		took[what] += time.Since(from)
	}
	for n := 0; b.Loop(); n++ {
		for _, of := range []string{"small", "large"} {
			timed(of, func() {
				s.want(http.StatusOK, s.enter(runs[of], fmt.Sprintf(`{"entry":"%s%d","act":"note","note":"n","who":"RA"}`, of, n)))
			})
			if n < 20 {
				timed("page of "+of, func() { s.want(http.StatusOK, s.ask("GET", "/jobs/"+jobs[of], "")) })
			}
		}
	}
	for _, what := range []string{"", "page of "} {
		b.ReportMetric(float64(took[what+"large"])/float64(took[what+"small"]), map[string]string{"": "tap-ratio", "page of ": "page-ratio"}[what])
	}
	b.ReportMetric(float64(took["page of large"].Milliseconds())/20, "large-page-ms")
}
