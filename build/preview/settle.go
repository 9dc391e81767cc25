package preview

import (
	"context"
	"time"
)

// Editors write a file in pieces, or several files at once: only when nothing
// has changed for quiet is it read, but a stream of changes holds it up for no
// longer than longest.
const (
	quiet   = 120 * time.Millisecond
	longest = 2 * time.Second
)

// settle passes a burst of signals on as one, at its end.
func settle(ctx context.Context, in <-chan struct{}, quiet, longest time.Duration) <-chan struct{} {
	out := make(chan struct{}, 1)
	go func() {
		for {
			select {
			case <-ctx.Done():
				return
			case <-in:
				if !lull(ctx, in, quiet, longest) {
					return
				}
				select {
				case out <- struct{}{}:
				default: // one is waiting already, and will see this change too
				}
			}
		}
	}()
	return out
}

// lull waits for the end of a burst. It reports false where the context ends
// first.
func lull(ctx context.Context, in <-chan struct{}, quiet, longest time.Duration) bool {
	end := time.After(longest)
	for {
		select {
		case <-ctx.Done():
			return false
		case <-in:
		case <-time.After(quiet):
			return true
		case <-end:
			return true
		}
	}
}
