package way
import ("testing";"math/rand/v2";"drawdown/geometry/family")
func TestDbg(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	n:=0
	for _, kind := range []string{"perimeter", "oval"} {
		for _, off := range []float64{0, 0.1, 0.3} {
			for range 300 {
				p := randomPerimeter(r)
				if kind == "oval" { p = randomOval(r) }
				p.points = jittered(p.points, r, off)
				o := Places(p.points, Auto, TurnDefault)
				f := p.figures(o)
				if f.pull>1.2 || f.run>2 {
					s := family.Of(p.points)
					t.Log(kind, off, len(p.points), f.pull, f.run, s.Family, len(s.Inner), len(s.Corners), s.Parts, o); n++
				}
			}
		}
	}
}
