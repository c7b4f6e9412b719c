package job

import "sync"

// Together does the pieces of a work, numbered from 0, up to atATime in
// parallel, and returns when all are done. After each piece it calls told with
// the number done, one call at a time.
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
