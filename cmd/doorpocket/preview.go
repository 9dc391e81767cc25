package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"sync"
	"syscall"

	"doorpocket/build/preview"
	"doorpocket/build/publication"
	"doorpocket/components"
	"doorpocket/components/problem"
)

// previewing shows a fleet while it is being written.
type previewing struct {
	Folder string `arg:"" optional:"" offers:"@folders"`
	Out    string `name:"out" offers:"@folders"`
	Port   int    `name:"port"`
}

// usualPort is taken where it is free, so that an open page finds the next
// preview.
const usualPort = 8637

// Run is called by the command line.
func (c *previewing) Run(out *speaker) error {
	s, err := findSource(c.Folder, true)
	if err != nil {
		return err
	}
	if c.Out != "" {
		if err := s.apart(c.Folder, c.Out); err != nil {
			return err
		}
	}
	listener, err := c.listen()
	if err != nil {
		return err
	}
	site, err := c.site()
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	p := preview.Preview{Folder: c.folder(s), Site: site}
	first := true
	library := sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })
	p.Publish = func(ctx context.Context) preview.Result {
		made, found, err := publication.Run(publication.Job{
			Files: s.files, Prefix: s.prefix, Target: site, Version: programIdentity(), Library: library, Abandoned: ctx.Done(),
		})
		return preview.Result{Made: made, Problems: found, Err: err}
	}
	p.Told = func(r preview.Result) {
		c.tell(out, r, first)
		if first {
			out.say("Open http://%s/ and change the fleet's files: open pages follow. Ctrl+C ends it.", listener.Addr())
			first = false
		}
	}
	p.Polling = func(err error) {
		out.warn("Changes are looked for every second, since %v.", err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return p.Run(ctx, listener)
}

// folder is what to watch; the demonstration fleet never changes.
func (c *previewing) folder(s source) string {
	switch {
	case s.demo:
		return ""
	case c.Folder == "":
		return "."
	}
	return filepath.Clean(c.Folder)
}

// listen takes a port of this computer that nobody else can reach.
func (c *previewing) listen() (net.Listener, error) {
	port := c.Port
	if port == 0 {
		port = usualPort
	}
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil && c.Port == 0 {
		listener, err = net.Listen("tcp", "127.0.0.1:0")
	}
	if err != nil {
		return nil, fmt.Errorf("cannot serve on port %d: %w. Name another with --port", port, err)
	}
	return listener, nil
}

// site is a folder of the preview's own, kept so that the next one begins
// quickly: what is half written is no site to be put on a host. Nobody else can look
// into it, since it holds what is for staff.
func (c *previewing) site() (string, error) {
	if c.Out != "" {
		return c.Out, nil
	}
	folder, err := filepath.Abs(c.Folder)
	if err != nil {
		return "", err
	}
	cache, err := os.UserCacheDir()
	if err == nil {
		cache = filepath.Join(cache, "doorpocket")
		err = os.MkdirAll(cache, 0o700)
	}
	if err != nil {
		return "", fmt.Errorf("there is no place for the pages of a preview: %w. Name a folder for them with --out", err)
	}
	sum := sha256.Sum256([]byte(folder))
	return filepath.Join(cache, fmt.Sprintf("preview-%x", sum[:6])), nil
}

// tell says what came of a publish.
func (c *previewing) tell(out *speaker, r preview.Result, first bool) {
	if first || !r.Good() {
		out.problems(r.Problems)
	}
	switch {
	case r.Err != nil:
		out.failure(r.Err)
	case !r.Good():
		out.warn("The pages stay as they were.")
	case first:
		out.say("%s: %s, %s", r.Made.Name, count(r.Made.Vans, "van"), count(r.Made.Pages, "page"))
	default:
		explain(out, r.Made.Reasons)
		out.say("%s", news(r.Made))
	}
}
