package sheets

import (
	"iter"
	"runtime"

	"doorpocket/build/label"
)

type symbolOrError struct {
	label.Symbol
	err error
}

// encoded makes the symbols, several at a time since that takes far longer than
// drawing them, and gives them in order. No more wait than there are workers.
func encoded(stickers iter.Seq[Sticker]) iter.Seq2[Sticker, symbolOrError] {
	return func(yield func(Sticker, symbolOrError) bool) {
		type work struct {
			sticker Sticker
			done    chan symbolOrError
		}
		queue := make(chan work, 2*runtime.GOMAXPROCS(0))
		stop := make(chan struct{})
		defer close(stop)
		go func() {
			defer close(queue)
			for s := range stickers {
				w := work{s, make(chan symbolOrError, 1)}
				select {
				case queue <- w:
				case <-stop:
					return
				}
				go func() {
					symbol, err := label.PrintSymbol(s.Address, s.Level)
					w.done <- symbolOrError{symbol, err}
				}()
			}
		}()
		for w := range queue {
			if !yield(w.sticker, <-w.done) {
				return
			}
		}
	}
}
