// Package preview shows a fleet while somebody writes it: it publishes, serves
// the result to this computer alone, watches the fleet's files, publishes again
// what has changed and lets open pages know.
package preview

import (
	"context"
	"errors"
	"net"
	"net/http"
	"strings"
	"time"

	"doorpocket/build/publication"
	"doorpocket/build/site"
	"doorpocket/components/problem"
)

// Result is what came of one publish.
type Result struct {
	Made     publication.Made
	Problems problem.List
	Err      error // anything but problems of the fleet
}

// Good reports whether the site shows the fleet as it is now.
func (r Result) Good() bool { return r.Err == nil && !r.Problems.HasErrors() }

// Preview is what to show and whom to tell.
type Preview struct {
	Folder string // the fleet folder, "" for one that never changes
	Site   string // where Publish writes
	// Publish publishes what has changed. Once the context ends nobody waits for it.
	Publish func(context.Context) Result
	Told    func(Result) // is told of every publish, the first one too
	Polling func(error)  // is told that the folder is looked through again and again, and why

	watch func(folder string) error // takes the place of a watch of the system; nil but for tests
}

// Run serves on a listener of this computer until the context ends.
func (p Preview) Run(ctx context.Context, listener net.Listener) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	board := newBoard()
	server := &http.Server{
		Handler:           &server{site: p.Site, board: board, hosts: hostsOf(listener.Addr())},
		ReadHeaderTimeout: 10 * time.Second,
		BaseContext:       func(net.Listener) context.Context { return ctx },
	}
	served := make(chan error, 1)
	go func() { served <- server.Serve(listener) }()

	changed := make(chan struct{}, 1)
	watched := make(chan error, 1)
	if p.Folder == "" {
		watched <- nil
	} else {
		w := newWatch(p.Folder, changed, p.Polling, p.watch)
		go func() { watched <- w.run(ctx) }()
	}
	p.show(ctx, board)
	err := p.follow(ctx, changed, board, served)
	stop()
	patience, enough := context.WithTimeout(context.Background(), 2*time.Second)
	defer enough()
	if shut := server.Shutdown(patience); shut != nil {
		err = errors.Join(err, server.Close())
	}
	return errors.Join(err, <-watched)
}

// follow publishes after every change until the context ends.
func (p Preview) follow(ctx context.Context, changed <-chan struct{}, board *board, served <-chan error) error {
	settled := settle(ctx, changed, quiet, longest)
	for {
		select {
		case <-ctx.Done():
			return nil
		case err := <-served:
			return err
		case <-settled:
			p.show(ctx, board)
		}
	}
}

// show publishes and tells what came of it. Where somebody else is writing the site,
// such as a second preview of the fleet, it says so once and waits.
func (p Preview) show(ctx context.Context, board *board) {
	told := false
	for {
		r := p.Publish(ctx)
		if ctx.Err() != nil {
			return // nobody wants to know any more
		}
		busy := errors.Is(r.Err, site.ErrBusy)
		if !busy || !told {
			p.Told(r)
			board.put(r, site.State(p.Site))
		}
		if !busy {
			return
		}
		told = true
		select {
		case <-ctx.Done():
			return
		case <-time.After(again):
		}
	}
}

// again is how long to wait for a site that somebody else is writing.
const again = 300 * time.Millisecond

// text is what is wrong, as the terminal shows it.
func (r Result) text() string {
	if r.Good() {
		return ""
	}
	var b strings.Builder
	var errs problem.List
	for _, found := range r.Problems {
		if found.Severity == problem.Error {
			errs = append(errs, found)
		}
	}
	_ = problem.Write(&b, errs, problem.Style{}) // a strings.Builder takes everything
	if r.Err != nil {
		b.WriteString(r.Err.Error() + "\n")
	}
	return b.String()
}
