package compliance

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// Plate is a plate with its real edges on a gasket with its real shape, as
// finite elements (bicubic Hermite; Bogner, Fox and Schmit 1965).
type Plate struct {
	RigidityNmm float64
	Poisson     float64
	Box         geometry.Box // bounding box of the part
	Part        Region       // nil: the whole box
	Gasket      Region       // nil: all of the part
	NarrowestMm float64      // strip of the gasket; 0: as wide as the part
	MeshMm      float64      // size of an element; 0: automatic
}

// Compliance returns the deflection of the plate at each bolt for a unit load
// at each other, in mm/N.
func (p Plate) Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error) {
	if err := p.check(at, foundationMPaPerMm); err != nil {
		return nil, err
	}
	m := p.mesh(at, foundationMPaPerMm)
	h := m.stiffness(p, foundationMPaPerMm)
	loads := make([]aLoad, len(at))
	for i, point := range at {
		loads[i] = h.load(m.load(point))
		if slices.ContainsFunc(loads[i].shares, func(s share) bool { return h.bare(loads[i].half, s.unknown) }) {
			return nil, offThePart(i, point)
		}
	}
	return h.compliance(loads)
}

// offThePart is the error for a fastener with no part under it, or on a piece
// without gasket.
func offThePart(i int, at geometry.Point) error {
	return finding.Failed(OffThePart, finding.Values{"number": i + 1, "x": at.X, "y": at.Y})
}

func (p Plate) check(at []geometry.Point, foundationMPaPerMm float64) error {
	if len(at) == 0 {
		return errNoFasteners
	}
	if err := positive(quantity{"plate rigidity", p.RigidityNmm, "N·mm"}, foundation(foundationMPaPerMm),
		quantity{"width of the part", p.Box.Width(), "mm"}, quantity{"height of the part", p.Box.Height(), "mm"}); err != nil {
		return err
	}
	for i, point := range at {
		inside := point.X >= p.Box.Min.X && point.X <= p.Box.Max.X && point.Y >= p.Box.Min.Y && point.Y <= p.Box.Max.Y
		if !inside {
			return offThePart(i, point)
		}
	}
	return checkPoisson(p.Poisson)
}

// stiffness adds up the stiffness of all cells of the mesh.
func (m mesh) stiffness(p Plate, foundationMPaPerMm float64) *halves {
	bend, hold := plateElement(m.cellX, m.cellY, p.Poisson)
	both := m.halves()
	covered := m.cover(p)
	covered.dropLoose()
	for i := range m.countX {
		for j := range m.countY {
			bending, held := covered.part[i][j]*p.RigidityNmm, covered.gasket[i][j]*foundationMPaPerMm
			if bending == 0 {
				continue
			}
			at := m.unknowns(i, j)
			half := both.halfOf(at[0])
			for r := range at {
				for c := range at {
					both.half[half].add(both.in(half, at[r]), both.in(half, at[c]), bending*bend[c][r]+held*hold[c][r])
				}
			}
		}
	}
	return both
}

// plateElement returns the element's stiffness for bending with a rigidity of
// 1, and on springs of 1: Kronecker products of one-dimensional ones.
func plateElement(width, height, poisson float64) (bend, hold [16][16]float64) {
	var x, y [3][3][4][4]float64
	for a := range 3 {
		for b := range 3 {
			x[a][b], y[a][b] = hermiteProducts(a, b, width), hermiteProducts(a, b, height)
		}
	}
	for r := range bend {
		for c := range bend {
			p, q, s, t := r/4, r%4, c/4, c%4 // along x and y, of row and column
			// Timoshenko and Woinowsky-Krieger, eq. (44), as a sum of squares of the curvatures
			bend[r][c] = x[0][0][p][s]*y[2][2][q][t] + x[2][2][p][s]*y[0][0][q][t] +
				poisson*(x[2][0][p][s]*y[0][2][q][t]+x[0][2][p][s]*y[2][0][q][t]) +
				2*(1-poisson)*x[1][1][p][s]*y[1][1][q][t]
			hold[r][c] = x[0][0][p][s] * y[0][0][q][t]
		}
	}
	return bend, hold
}

// mesh is a regular grid of cells over the bounding box of the part.
type mesh struct {
	from           geometry.Point
	cellX, cellY   float64
	countX, countY int
}

const (
	// mostCells limits the work. Finer meshes change the figures by far less
	// than the uncertainty of the gasket's stiffness.
	mostCells  = 3200
	leastCells = 4 // in each direction, for a part that hardly bends
)

// mesh uses cells of a third of the reach of a load and of the gasket's strip,
// and six between bolts.
func (p Plate) mesh(at []geometry.Point, foundationMPaPerMm float64) mesh {
	size := p.MeshMm
	if size == 0 {
		size = p.usualMeshMm(at, foundationMPaPerMm)
	}
	width, height := p.Box.Width(), p.Box.Height()
	m := mesh{from: p.Box.Min, countX: cells(width, size), countY: cells(height, size)}
	m.cellX, m.cellY = width/float64(m.countX), height/float64(m.countY)
	return m
}

func cells(length, size float64) int {
	return max(leastCells, int(math.Ceil(length/size-1e-9)))
}

func (p Plate) usualMeshMm(at []geometry.Point, foundationMPaPerMm float64) float64 {
	size := CharacteristicLengthMm(p.RigidityNmm, foundationMPaPerMm) / 3
	if p.NarrowestMm > 0 {
		size = math.Min(size, p.NarrowestMm/3)
	}
	if len(at) > 1 {
		if pitch := geometry.Spacing(at); pitch > 0 {
			size = math.Min(size, pitch/6)
		}
	}
	return math.Max(size, math.Sqrt(p.Box.Width()*p.Box.Height()/mostCells))
}

// node numbers the nodes along the side with fewer of them first, so that the
// band is narrow.
func (m mesh) node(i, j int) int {
	if m.countX < m.countY {
		return j*(m.countX+1) + i
	}
	return i*(m.countY+1) + j
}

// reach is the half-width of the band.
func (m mesh) reach() int { return 4*(min(m.countX, m.countY)+2) + 3 }

// unknowns returns those of a cell: four along x for each of four along y. A
// node has a deflection, both slopes and twist.
func (m mesh) unknowns(i, j int) (at [16]int) {
	for r := range at {
		p, q := r/4, r%4
		at[r] = 4*m.node(i+p/2, j+q/2) + 2*(p%2) + q%2
	}
	return at
}

func (m mesh) cell(i, j int) geometry.Box {
	min := m.from.Add(geometry.Point{X: float64(i) * m.cellX, Y: float64(j) * m.cellY})
	return geometry.Box{Min: min, Max: min.Add(geometry.Point{X: m.cellX, Y: m.cellY})}
}

// load distributes a unit load to the unknowns of its cell.
func (m mesh) load(p geometry.Point) (cell [16]int, shares []share) {
	x, y := (p.X-m.from.X)/m.cellX, (p.Y-m.from.Y)/m.cellY
	i, j := min(int(x), m.countX-1), min(int(y), m.countY-1)
	alongX, alongY := hermiteAt(x-float64(i)), hermiteAt(y-float64(j))
	cell = m.unknowns(i, j)
	for r, unknown := range cell {
		if of := alongX[r/4] * alongY[r%4]; of != 0 {
			shares = append(shares, share{unknown, of})
		}
	}
	return cell, shares
}
