package main

import "runtime"

// workers are as many as there are processors: a call of the core does nothing but
// compute, so that more at once would only be slower, and hold more memory.
type workers chan struct{}

func newWorkers() workers { return make(workers, runtime.GOMAXPROCS(0)) }

// busy reports whether all are at work now.
func (w workers) busy() bool { return len(w) == cap(w) }

// take engages a worker, if one is free.
func (w workers) take() bool {
	select {
	case w <- struct{}{}:
		return true
	default:
		return false
	}
}

func (w workers) giveBack() { <-w }
