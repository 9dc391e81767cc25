package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestProgressLine(t *testing.T) {
	for _, tt := range []struct {
		done, total int
		took        time.Duration
		want        string
	}{
		{50, 200, 5 * time.Second, "50 of 200 vans, 10 a second, 15s left"},
		{1, 1, time.Second, "1 of 1 van, 1 a second, 0s left"},
		{0, 1000, 0, "0 of 1000 vans, 0 a second, 277h46m40s left"},
	} {
		if got := progressLine(tt.done, tt.total, tt.took); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// In a pipe nothing is said of progress; on a terminal the line goes away at
// the end.
func TestProgressOnATerminal(t *testing.T) {
	for _, tty := range []bool{false, true} {
		var told bytes.Buffer
		p := newProgress(&speaker{err: &told, tty: tty})
		p.step(1, 2)
		p.step(2, 2)
		p.end()
		if got := told.String(); (got != "") != tty || tty && !strings.HasSuffix(got, "\r\x1b[K") {
			t.Errorf("terminal %v: %q", tty, got)
		}
	}
}
