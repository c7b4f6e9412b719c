package job

import "sync"

// Together does the pieces of a work, numbered from 0, so many at a time, and
// comes back when all are done. After each piece it tells, one call at a time,
// how many are done.
func Together(pieces, atATime int, do func(piece int), told func(done int)) {
	var (
		next  = make(chan int)
		crew  sync.WaitGroup
		turn  sync.Mutex
		ended int
	)
	for range min(max(atATime, 1), pieces) {
		crew.Go(func() {
			for piece := range next {
				do(piece)
				turn.Lock()
				ended++
				told(ended)
				turn.Unlock()
			}
		})
	}
	for piece := range pieces {
		next <- piece
	}
	close(next)
	crew.Wait()
}
