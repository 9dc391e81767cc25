package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A preview for which the system has no watches left says so, and pages follow all
// the same. The limits are those of a user namespace of its own.
func TestPreviewWithoutWatches(t *testing.T) {
	for limit, words := range map[string]string{
		"max_inotify_watches":   "Changes are looked for every second, since the system has no watches left for so many folders",
		"max_inotify_instances": "Changes are looked for every second, since the system lets no more programs watch folders",
	} {
		t.Run(limit, func(t *testing.T) {
			t.Parallel()
			p := startLimited(t, limit)
			if said := p.await(p.stderr, regexp.MustCompile(`Changes are looked for.*`)); !strings.HasPrefix(said, words) {
				t.Errorf("it says %q", said)
			}
			address := strings.TrimSuffix(p.await(p.stdout, regexp.MustCompile(`http://[0-9.:]+/`)), "/")
			pages := p.follow(address + "/-preview/events")
			p.await(pages, regexp.MustCompile(`"site":1\b`))
			p.edit("fleet.toml", "+44 1632 960000", "+44 1632 960999")
			p.await(pages, regexp.MustCompile(`"site":2\b`))
			if page := p.get(address + "/hirers/A1/"); !strings.Contains(page, "960999") {
				t.Error("the page is not that of the edited fleet")
			}
			p.end()
		})
	}
}

// limited is a preview at work.
type limited struct {
	t              *testing.T
	fleet          string
	command        *exec.Cmd
	stdout, stderr <-chan string
}

// startLimited begins a fleet and shows it where a limit of the system is all but 0:
// one folder can be watched, where folders can be watched at all.
func startLimited(t *testing.T, limit string) *limited {
	t.Helper()
	folder := t.TempDir()
	self, err := os.Executable()
	program := filepath.Join(folder, "doorpocket") // by which name this is the command
	if err := errors.Join(err, os.Symlink(self, program)); err != nil {
		t.Fatal(err)
	}
	p := &limited{t: t, fleet: filepath.Join(folder, "fleet")}
	if out, err := exec.Command(program, "begin", p.fleet).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	most := map[bool]string{true: "1", false: "0"}[limit == "max_inotify_watches"]
	p.command = exec.Command("sh", "-c", `echo "$2" >"/proc/sys/user/$1" && exec "$0" preview "$3" --out "$4"`, program, limit, most, p.fleet, filepath.Join(folder, "shown"))
	p.command.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
		Pdeathsig:   syscall.SIGKILL,
	}
	stdout, outErr := p.command.StdoutPipe()
	stderr, errErr := p.command.StderrPipe()
	if err := errors.Join(outErr, errErr); err != nil {
		t.Fatal(err)
	}
	if err := p.command.Start(); errors.Is(err, syscall.EPERM) || errors.Is(err, syscall.ENOSPC) {
		t.Skipf("this system lends nobody limits of his own: %v. TestNoWatchesLeft of build/preview has a watcher that fails instead", err)
	} else if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.command.Process.Kill() })
	p.stdout, p.stderr = lines(stdout), lines(stderr)
	return p
}

// lines passes on what is read, line by line.
func lines(r io.Reader) <-chan string {
	all := make(chan string, 1000)
	go func() {
		defer close(all)
		for scan := bufio.NewScanner(r); scan.Scan(); {
			all <- scan.Text()
		}
	}()
	return all
}

// await gives what is wanted of a line as soon as it comes.
func (p *limited) await(from <-chan string, wanted *regexp.Regexp) string {
	p.t.Helper()
	late := time.After(time.Minute)
	for {
		select {
		case line, more := <-from:
			if found := wanted.FindString(line); found != "" {
				return found
			}
			if !more {
				p.t.Fatalf("no line has %s", wanted)
			}
		case <-late:
			p.t.Fatalf("no line had %s in a minute", wanted)
		}
	}
}

// follow listens to what open pages are told.
func (p *limited) follow(address string) <-chan string {
	p.t.Helper()
	ctx, stop := context.WithCancel(p.t.Context())
	p.t.Cleanup(stop)
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		p.t.Fatal(err)
	}
	answer, err := http.DefaultClient.Do(request)
	if err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() { _ = answer.Body.Close() })
	return lines(answer.Body)
}

func (p *limited) get(address string) string {
	p.t.Helper()
	answer, err := http.Get(address)
	if err != nil {
		p.t.Fatal(err)
	}
	defer answer.Body.Close()
	page, err := io.ReadAll(answer.Body)
	if err != nil {
		p.t.Fatal(err)
	}
	return string(page)
}

// edit replaces words in a file of the fleet.
func (p *limited) edit(name, before, after string) {
	p.t.Helper()
	name = filepath.Join(p.fleet, name)
	data, err := os.ReadFile(name)
	if err == nil && !strings.Contains(string(data), before) {
		err = fmt.Errorf("%s has no %q", name, before)
	}
	if err == nil {
		err = os.WriteFile(name, []byte(strings.Replace(string(data), before, after, 1)), 0o644)
	}
	if err != nil {
		p.t.Fatal(err)
	}
}

// end stops the preview, which must end well.
func (p *limited) end() {
	p.t.Helper()
	if err := errors.Join(p.command.Process.Signal(syscall.SIGINT), p.command.Wait()); err != nil {
		p.t.Error(err)
	}
}
