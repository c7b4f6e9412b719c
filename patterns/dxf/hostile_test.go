package dxf_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/patterns/dxf"
	"drawdown/render/stopwatch"
)

// Errors are reported with the line of the drawing.
func TestSlips(t *testing.T) {
	block := func(inside ...string) []byte {
		return groups(append(append([]string{"0 SECTION", "2 BLOCKS", "0 BLOCK", "2 A"}, inside...),
			"0 ENDBLK", "0 ENDSEC", "0 SECTION", "2 ENTITIES", "0 INSERT", "2 A", "10 0", "20 0", "0 ENDSEC", "0 EOF")...)
	}
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"empty":           {nil, "the file is not a DXF drawing"},
		"another file":    {[]byte("drawdown: 1\ntitle: x\n"), `d.dxf:1:1: error: "drawdown: 1" is not a group code`},
		"no number":       {entities("0 CIRCLE", "10 1,5,5", "20 0", "40 1"), `d.dxf:8:1: error: group code 10: "1,5,5" is not a valid number`},
		"NaN":             {entities("0 POINT", "10 nan", "20 0"), `group code 10: "nan" is not a valid number`},
		"infinite":        {entities("0 POINT", "10 1e400", "20 0"), `group code 10`},
		"huge":            {entities("0 POINT", "10 1e15", "20 0"), `up to 1e12`},
		"no radius":       {entities("0 CIRCLE", "10 0", "20 0"), "d.dxf:6:1: error: the CIRCLE has no group code 40"},
		"bad code":        {[]byte("0\nSECTION\n2\nENTITIES\n99999\nx\n"), `d.dxf:5:1: error: "99999" is not a group code`},
		"cut short":       {[]byte("0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n"), "d.dxf:7:1: error: the drawing ends after the group code 10"},
		"cut at a group":  {[]byte("0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n1\n20\n1\n40\n1\n"), "ENDSEC is expected"},
		"no EOF":          {[]byte("0\nSECTION\n2\nENTITIES\n0\nENDSEC\n"), "the file is incomplete"},
		"no entities":     {groups("0 SECTION", "2 HEADER", "0 ENDSEC", "0 EOF"), "no section ENTITIES"},
		"block in itself": {block("0 INSERT", "2 a", "10 0", "20 0"), `the block "a" contains itself`},
		"late table":      {groups("0 SECTION", "2 ENTITIES", "0 ENDSEC", "0 SECTION", "2 TABLES", "0 ENDSEC", "0 EOF"), "TABLES comes after"},
		"many copies":     {block("0 CIRCLE", "10 0", "20 0", "40 1", "0 ENDBLK", "0 BLOCK", "2 B", "0 INSERT", "2 A", "10 0", "20 0", "70 2000000", "71 2000000", "0 ENDBLK", "0 BLOCK", "2 A", "0 INSERT", "2 B", "10 0", "20 0"), "contains"},
	} {
		drawing, problems := dxf.Read("d.dxf", c.data, dxf.Options{})
		if !problems.Stops() || !strings.Contains(said(problems).Error(), c.want) || len(drawing.Circles) > 0 {
			t.Errorf("%s: %v, want %q", name, problems, c.want)
		}
	}
}

// Nested blocks, each containing ten of the next, ten deep, stop at a limit.
func TestUnfoldingBlocksStop(t *testing.T) {
	all := []string{"0 SECTION", "2 BLOCKS"}
	for depth := range 10 {
		all = append(all, "0 BLOCK", fmt.Sprintf("2 B%d", depth))
		for range 10 {
			all = append(all, "0 INSERT", fmt.Sprintf("2 B%d", depth+1), "10 0", "20 0")
		}
		all = append(all, "0 ENDBLK")
	}
	all = append(all, "0 BLOCK", "2 B10", "0 CIRCLE", "10 0", "20 0", "40 1", "0 ENDBLK", "0 ENDSEC",
		"0 SECTION", "2 ENTITIES", "0 INSERT", "2 B0", "10 0", "20 0", "0 ENDSEC", "0 EOF")
	if _, problems := dxf.Read("d.dxf", groups(all...), dxf.Options{}); !strings.Contains(said(problems).Error(), "entities") || !problems.Stops() {
		t.Error(problems)
	}
	huge := groups("0 SECTION", "2 BLOCKS", "0 BLOCK", "2 A", "0 ENDBLK", "0 ENDSEC", "0 SECTION", "2 ENTITIES",
		"0 INSERT", "2 A", "10 0", "20 0", "70 2000000000", "71 2000000000", "0 ENDSEC", "0 EOF")
	if _, problems := dxf.Read("d.dxf", huge, dxf.Options{}); !strings.Contains(said(problems).Error(), "rows are too many") {
		t.Error(problems)
	}
}

func TestDeepBlocksStop(t *testing.T) {
	all := []string{"0 SECTION", "2 BLOCKS"}
	for depth := range 100 {
		all = append(all, "0 BLOCK", fmt.Sprintf("2 B%d", depth), "0 INSERT", fmt.Sprintf("2 B%d", depth+1), "10 0", "20 0", "0 ENDBLK")
	}
	all = append(all, "0 ENDSEC", "0 SECTION", "2 ENTITIES", "0 INSERT", "2 B0", "10 0", "20 0", "0 ENDSEC", "0 EOF")
	if _, problems := dxf.Read("d.dxf", groups(all...), dxf.Options{}); !strings.Contains(said(problems).Error(), "more than 32 blocks") {
		t.Error(problems)
	}
}

// Every drawing that ends too soon is refused, text and binary.
func TestTorn(t *testing.T) {
	for _, name := range []string{"R12", "R2010", "R12-binary", "R2010-binary"} {
		data, err := os.ReadFile("testdata/cover-" + name + ".dxf")
		if err != nil {
			t.Fatal(err)
		}
		whole := bytes.LastIndex(data, []byte("EOF"))
		for at := 0; at < whole; at += 97 {
			if _, problems := dxf.Read("d.dxf", data[:at], dxf.Options{}); !problems.Stops() {
				t.Fatalf("%s: the first %d bytes of %d are taken for a drawing", name, at, len(data))
			}
		}
	}
}

// many returns a drawing of count lines and as many circles.
func many(count int) []byte {
	var b bytes.Buffer
	b.WriteString("0\nSECTION\n2\nENTITIES\n")
	for i := range count {
		fmt.Fprintf(&b, "0\nLINE\n8\n0\n10\n%d\n20\n%d\n11\n%d\n21\n%d\n", i%1000, i/1000, i%1000+1, i/1000)
		fmt.Fprintf(&b, "0\nCIRCLE\n8\n0\n10\n%d.5\n20\n%d.5\n40\n0.25\n", i%1000, i/1000)
	}
	b.WriteString("0\nENDSEC\n0\nEOF\n")
	return b.Bytes()
}

func TestMany(t *testing.T) {
	count := testkit.Samples(50_000, 500_000)
	drawing, problems := dxf.Read("d.dxf", many(count), dxf.Options{})
	if problems.Stops() || len(drawing.Circles) != count {
		t.Errorf("%d circles of %d: %v", len(drawing.Circles), count, problems)
	}
}

// BenchmarkSpeedLimit: a million things may take ten times as long as a hundred
// thousand, and three times that to allow for noise and memory; quadratic work
// takes a hundred times as long.
func BenchmarkSpeedLimit(b *testing.B) {
	const most = 30
	small, large := many(50_000), many(500_000)
	read := func(data []byte) time.Duration {
		return stopwatch.Worked(func() { dxf.Read("d.dxf", data, dxf.Options{}) })
	}
	few, more, ratio := time.Hour, time.Hour, 1e9
	for round := 0; round < 8 && (round < 2 || ratio > most); round++ {
		few, more = min(few, read(small)), min(more, read(large))
		ratio = float64(more) / float64(few)
	}
	b.Logf("%v for 100,000 things, %v for 1,000,000", few, more)
	if ratio > most {
		b.Errorf("a million things take %.1f times as long as a hundred thousand: at most %d is allowed", ratio, most)
	}
}

func FuzzRead(f *testing.F) {
	for _, name := range []string{"R12", "R12-binary"} {
		data, err := os.ReadFile("testdata/cover-" + name + ".dxf")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add(entities("0 LWPOLYLINE", "70 1", "10 0", "20 0", "42 1", "10 9", "20 0", "42 1"))
	f.Add(entities("0 ELLIPSE", "10 0", "20 0", "11 5", "21 0", "40 0.5", "230 -1"))
	f.Add(entities("0 POLYLINE", "66 1", "70 1", "0 VERTEX", "10 0", "20 0", "0 VERTEX", "10 5", "20 0", "0 SEQEND"))
	f.Fuzz(func(t *testing.T, data []byte) {
		drawing, problems := dxf.Read("d.dxf", data, dxf.Options{})
		for _, p := range drawing.Paths {
			if len(p.Points) < 3 {
				t.Fatalf("a closed line of %d points", len(p.Points))
			}
		}
		for _, c := range drawing.Circles {
			if !(c.DiameterMm > 0) {
				t.Fatalf("a circle of diameter %g", c.DiameterMm)
			}
		}
		_ = said(problems).Detail()
	})
}
