package main

import (
	"runtime/debug"
	"runtime/metrics"
	"sync"
)

// headroom is by how many bytes the memory in use may grow above what is kept
// before it is cleared. Pages are made and forgotten by the thousand: the more
// room, the seldomer that is; but it is the same for a small fleet and a large
// one, so that memory does not grow by several times of what is kept of a van.
const headroom = 128 << 20

// The least and most that memory may grow, in percent of what is kept.
const (
	leastGrowth = 50
	mostGrowth  = 400
)

// clearing is how often memory is cleared while vans are published.
type clearing struct {
	mu      sync.Mutex
	percent int
}

// adjust looks at what is kept now. It is cheap and safe for concurrent use.
func (c *clearing) adjust() {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(sample)
	percent := growth(sample[0].Value.Uint64())
	c.mu.Lock()
	defer c.mu.Unlock()
	if percent < c.percent*9/10 || percent > c.percent*11/10 { // each setting stops all work for a moment
		c.percent = percent
		debug.SetGCPercent(percent)
	}
}

// growth is the percentage that gives the headroom above so many bytes kept.
func growth(kept uint64) int {
	return int(min(max(headroom*100/max(kept, 1), leastGrowth), mostGrowth))
}
