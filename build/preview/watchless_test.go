package preview

import (
	"bufio"
	"context"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"doorpocket/build/publication"
)

// Where the system has no watches left, at once or for a folder that is new, the whole
// preview says why and pages follow all the same.
func TestNoWatchesLeft(t *testing.T) {
	for name, enough := range map[string]int{"at once": 0, "for a new folder": 2} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			root := t.TempDir()
			save := func(name string) {
				name = filepath.Join(root, name)
				if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(name, []byte(time.Now().String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			save("fleet.toml")
			save("vans/rowan.toml")
			told := make(chan error, 10)
			address := run(t, Preview{
				Folder: root, Site: filepath.Join(t.TempDir(), "site"),
				Publish: func(context.Context) Result { return Result{Made: publication.Made{Files: 1}} },
				Told:    func(Result) {},
				Polling: func(why error) { told <- why },
				watch: func(string) error {
					if enough--; enough < 0 {
						return &os.SyscallError{Syscall: "inotify_add_watch", Err: syscall.ENOSPC}
					}
					return nil
				},
			})
			pages := events(t, address)
			await(t, pages, `"site":1`)
			save("builds/ridge.toml") // in a folder that is new
			await(t, pages, `"site":2`)
			select {
			case why := <-told:
				if !strings.Contains(why.Error(), "no watches left") {
					t.Errorf("it says %v", why)
				}
			case <-time.After(patience):
				t.Fatal("nothing is told")
			}
			save("vans/rowan.toml")
			await(t, pages, `"site":3`)
			if len(told) > 0 {
				t.Error("it is told twice")
			}
		})
	}
}

// run shows a preview and gives its address.
func run(t *testing.T, p Preview) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- p.Run(ctx, listener) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	return "http://" + listener.Addr().String()
}

// events are what an open page is told.
func events(t *testing.T, address string) <-chan string {
	t.Helper()
	answer, err := http.Get(address + own + "events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = answer.Body.Close() })
	all := make(chan string, 100)
	go func() {
		for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
			all <- lines.Text()
		}
	}()
	return all
}

func await(t *testing.T, events <-chan string, want string) {
	t.Helper()
	for end := time.After(patience); ; {
		select {
		case got := <-events:
			if strings.Contains(got, want) {
				return
			}
		case <-end:
			t.Fatalf("no page is told of %s", want)
		}
	}
}
