package compliance

import "slices"

// cellCover is how much of each cell of a mesh the part and its gasket cover.
type cellCover struct{ part, gasket [][]float64 }

func (m mesh) cover(p Plate) cellCover {
	c := cellCover{grid(m.countX, m.countY), grid(m.countX, m.countY)}
	for i := range m.countX {
		for j := range m.countY {
			c.part[i][j], c.gasket[i][j] = cover(m.cell(i, j), p.Part, p.Gasket)
		}
	}
	return c
}

func grid(countX, countY int) [][]float64 {
	rows := make([][]float64, countX)
	for i := range rows {
		rows[i] = make([]float64, countY)
	}
	return rows
}

// dropLoose removes every island of cells without gasket under it: nothing
// supports it, so its position is undefined.
func (c cellCover) dropLoose() {
	seen := make(map[[2]int]bool)
	for i, row := range c.part {
		for j := range row {
			if c.part[i][j] == 0 || seen[[2]int{i, j}] {
				continue
			}
			island := c.island([2]int{i, j}, seen)
			if slices.ContainsFunc(island, func(at [2]int) bool { return c.gasket[at[0]][at[1]] > 0 }) {
				continue
			}
			for _, at := range island {
				c.part[at[0]][at[1]] = 0
			}
		}
	}
}

// island lists the cells connected with one, by sides or corners.
func (c cellCover) island(from [2]int, seen map[[2]int]bool) [][2]int {
	list := [][2]int{from}
	seen[from] = true
	for n := 0; n < len(list); n++ {
		for di := -1; di <= 1; di++ {
			for dj := -1; dj <= 1; dj++ {
				at := [2]int{list[n][0] + di, list[n][1] + dj}
				inside := at[0] >= 0 && at[0] < len(c.part) && at[1] >= 0 && at[1] < len(c.part[0])
				if inside && c.part[at[0]][at[1]] > 0 && !seen[at] {
					seen[at] = true
					list = append(list, at)
				}
			}
		}
	}
	return list
}
