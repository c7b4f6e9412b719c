package job

import "sync"

// Together does the pieces of a work, numbered from 0, so many at a time, and
// comes back when all are done. After each piece it tells, one call at a time,
// how many are done.
func Together(pieces, atATime int, do func(piece int), told func(done int)) {
	var crew sync.WaitGroup
	var turn sync.Mutex
	ended := 0
	places := make(chan struct{}, max(atATime, 1))
	for piece := range pieces {
		places <- struct{}{}
		crew.Go(func() {
			do(piece)
			turn.Lock()
			ended++
			told(ended)
			turn.Unlock()
			<-places
		})
	}
	crew.Wait()
}
