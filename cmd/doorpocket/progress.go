package main

import (
	"fmt"
	"sync"
	"time"
)

// progress keeps one line of standard error up to date while vans are
// published: how many are done, how fast, and how long it will take. Where
// standard error is no terminal it says nothing.
type progress struct {
	out   *speaker
	mu    sync.Mutex
	begun time.Time
	last  time.Time
	shown bool
}

func newProgress(out *speaker) *progress { return &progress{out: out, begun: time.Now()} }

// between is how often the line changes.
const between = 200 * time.Millisecond

// step tells that so many vans are done. It is safe for concurrent use.
func (p *progress) step(done, total int) {
	if !p.out.tty {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if now.Sub(p.last) < between {
		return
	}
	p.last, p.shown = now, true
	p.out.overwrite(progressLine(done, total, now.Sub(p.begun)))
}

// end clears the line.
func (p *progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.shown {
		p.out.overwrite("")
	}
}

// progressLine says how far the work is, at the rate so far.
func progressLine(done, total int, took time.Duration) string {
	rate := float64(done) / max(took.Seconds(), 0.001)
	left := time.Duration(float64(total-done) / max(rate, 0.001) * float64(time.Second))
	return fmt.Sprintf("%d of %s, %.0f a second, %s left", done, count(total, "van"), rate, left.Round(time.Second))
}
