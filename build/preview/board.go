package preview

import (
	"encoding/json"
	"sync"
)

// board is what open pages are told: the number of the site that is shown, and
// what keeps a newer one from it.
type board struct {
	mu    sync.Mutex
	state state
	next  chan struct{} // closed when the state changes
}

type state struct {
	Site   int    `json:"site"`
	Wrong  string `json:"wrong"`
	notYet bool
	shown  string // the state of the site, as site.State tells it
}

func newBoard() *board { return &board{next: make(chan struct{}), state: state{notYet: true}} }

// put shows what came of a publish, and in which state the site is. Where nothing new
// was written, neither by this publish nor by somebody else, no page needs to be
// loaded again.
func (b *board) put(r Result, site string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	before := b.state
	b.state.notYet = false
	if r.Good() && (r.Made.Files > 0 || site != b.state.shown) {
		b.state.Site++
		b.state.shown = site
	}
	b.state.Wrong = r.text()
	if b.state != before {
		close(b.next)
		b.next = make(chan struct{})
	}
}

// get gives the state as JSON, and a channel that is closed when it changes.
func (b *board) get() (state, []byte, <-chan struct{}) {
	b.mu.Lock()
	defer b.mu.Unlock()
	data, err := json.Marshal(b.state)
	if err != nil {
		panic(err) // a number and a text can always be encoded
	}
	return b.state, data, b.next
}
