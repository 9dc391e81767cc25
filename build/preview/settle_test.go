package preview

import (
	"context"
	"testing"
	"testing/synctest"
	"time"
)

// A burst gives one signal at its end; a stream without end gives one after the
// longest wait, and more.
func TestSettle(t *testing.T) {
	for name, tt := range map[string]struct {
		every time.Duration
		times int
		want  []time.Duration // when a signal comes
	}{
		"one change":          {0, 1, []time.Duration{100 * time.Millisecond}},
		"a burst":             {50 * time.Millisecond, 10, []time.Duration{550 * time.Millisecond}},
		"two far apart":       {300 * time.Millisecond, 2, []time.Duration{100 * time.Millisecond, 400 * time.Millisecond}},
		"a stream":            {50 * time.Millisecond, 30, []time.Duration{time.Second, 1550 * time.Millisecond}},
		"as quick as it gets": {time.Microsecond, 5000, []time.Duration{104999 * time.Microsecond}},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				ctx, stop := context.WithCancel(t.Context())
				in := make(chan struct{}, 1)
				out := settle(ctx, in, 100*time.Millisecond, time.Second)
				begun := time.Now()
				go func() {
					for i := range tt.times {
						if i > 0 {
							time.Sleep(tt.every)
						}
						in <- struct{}{}
					}
				}()
				var got []time.Duration
				end := time.After(10 * time.Second)
				for waiting := true; waiting; {
					select {
					case <-out:
						got = append(got, time.Since(begun))
					case <-end:
						waiting = false
					}
				}
				stop()
				synctest.Wait()
				if len(got) != len(tt.want) {
					t.Fatalf("signals at %v, want %v", got, tt.want)
				}
				for i := range got {
					if d := got[i] - tt.want[i]; d < -60*time.Millisecond || d > 60*time.Millisecond {
						t.Errorf("signals at %v, want %v", got, tt.want)
					}
				}
			})
		})
	}
}
