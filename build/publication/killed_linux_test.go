package publication_test

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"testing/fstest"
	"time"

	"github.com/google/go-cmp/cmp"

	"doorpocket/build/publication"
	"doorpocket/build/sample"
)

// A test that wants to see a publish end badly runs itself again: these say
// what the child publishes and where to.
const (
	childInto    = "PUBLISH_CHILD_INTO"
	childVersion = "PUBLISH_CHILD_VERSION"
)

// child publishes if this process is to; the test then ends.
func child(t *testing.T) bool {
	t.Helper()
	into := os.Getenv(childInto)
	if into == "" {
		return false
	}
	if _, err := fmt.Println("begun"); err != nil {
		t.Fatal(err)
	}
	version := os.Getenv(childVersion)
	_, found, err := publishFiles(smallFleet(version), into, func(j *publication.Job) { j.Version = version[:1] })
	if err != nil || found.HasErrors() {
		t.Fatal(err, found)
	}
	return true
}

// smallFleet is a fleet of which one van differs from version to version. The
// first letter of a version is that of the program.
func smallFleet(version string) fstest.MapFS {
	lib, _ := theLibrary()
	files := sample.Many(lib, 5, 2)
	name := "vans/van-0002.toml"
	files[name] = file(strings.Replace(string(files[name].Data), `"Van 2"`, `"Van of `+version+`"`, 1))
	return files
}

// partsOf cuts a tree into what belongs to one van, both trees and the record
// apart, and the rest.
func partsOf(tree map[string]string) map[string]map[string]string {
	parts := map[string]map[string]string{}
	for path, data := range tree {
		at := strings.SplitN(path, "/", 3)
		part := at[0]
		if len(at) > 2 && at[0] != "ledger" {
			part += "/" + at[1]
		}
		if at[0] == "ledger" {
			part = path
		}
		if parts[part] == nil {
			parts[part] = map[string]string{}
		}
		parts[part][path] = data
	}
	return parts
}

// However a publish is killed, the site is a whole one, and the next publish
// ends with what a clean one gives and leaves nothing beside it. Where all vans
// change the site is at every moment exactly the old or the new one; where one
// van does, each van's folder is.
func TestKilled(t *testing.T) {
	if child(t) {
		return
	}
	random := rand.New(rand.NewPCG(1, 2))
	states := map[string]map[string]string{}
	for _, version := range []string{"a1", "a2", "b1", "b2"} {
		clean := filepath.Join(t.TempDir(), "site")
		if _, _, err := publishFiles(smallFleet(version), clean, func(j *publication.Job) { j.Version = version[:1] }); err != nil {
			t.Fatal(err)
		}
		states[version] = files(t, clean)
	}
	parent := t.TempDir()
	site := filepath.Join(parent, "site")
	now := "a1"
	if _, _, err := publishFiles(smallFleet(now), site, func(j *publication.Job) { j.Version = now[:1] }); err != nil {
		t.Fatal(err)
	}
	took := 700 * time.Millisecond
	killed := 0
	const steps = 20
	for step := range steps {
		next := []string{"a2", "b2", "b1", "a1"}[step%4] // by turns one van and all of them
		begun := time.Now()
		ended := runChild(t, site, next, time.Duration(random.Float64()*1.2*float64(took)))
		if ended {
			took = time.Since(begun) * 2 / 3
		} else {
			took += took / 8
			killed++
		}
		checkWhole(t, fmt.Sprintf("%s to %s", now, next), files(t, site), states[now], states[next], now[0] != next[0])
		if _, _, err := publishFiles(smallFleet(next), site, func(j *publication.Job) { j.Version = next[:1] }); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(states[next], files(t, site)); diff != "" {
			t.Fatalf("the publish after a killed one gives\n%s", diff)
		}
		if entries, err := os.ReadDir(parent); err != nil || len(entries) != 1 {
			t.Fatalf("left beside the site: %v", entries)
		}
		now = next
	}
	t.Logf("%d publishes were killed at work", killed)
	if killed == 0 || killed == steps {
		t.Error("the test proves nothing: none was killed, or all at once")
	}
}

// runChild publishes in a process of its own and kills that after a time from
// when it has begun. It reports whether it had ended by then.
func runChild(t *testing.T, site, version string, after time.Duration) bool {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), childInto+"="+site, childVersion+"="+version)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	var line [6]byte
	if _, err := out.Read(line[:]); err != nil {
		t.Fatal(err)
	}
	time.Sleep(after)
	_ = cmd.Process.Signal(syscall.SIGKILL) // which fails where it has ended
	err = cmd.Wait()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() > 0 {
		t.Fatalf("the child failed by itself: %v", err)
	}
	return err == nil
}

func checkWhole(t *testing.T, what string, got, before, after map[string]string, all bool) {
	t.Helper()
	if all {
		if !maps.Equal(got, before) && !maps.Equal(got, after) {
			t.Errorf("%s: the site is neither the old nor the new one:\n%s", what, cmp.Diff(before, got))
		}
		return
	}
	was, is := partsOf(before), partsOf(after)
	there := partsOf(got)
	for _, part := range slices.Sorted(maps.Keys(is)) {
		if !maps.Equal(there[part], was[part]) && !maps.Equal(there[part], is[part]) {
			t.Errorf("%s: %s is neither the old nor the new one", what, part)
		}
	}
}

// A disk that is full, or that turns read-only, in the middle of a publish
// leaves the last site whole, and the message says what to do.
func TestDiskFull(t *testing.T) {
	if child(t) {
		return
	}
	disk := t.TempDir()
	if err := syscall.Mount("doorpocket", disk, "tmpfs", 0, "size=64m"); err != nil {
		if errors.Is(err, fs.ErrPermission) {
			inOwnNamespace(t)
			return
		}
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(disk, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	site := filepath.Join(disk, "site")
	publish := func(version string) error {
		_, _, err := publishFiles(smallFleet(version), site, func(j *publication.Job) { j.Version = version[:1] })
		return err
	}
	if err := publish("a1"); err != nil {
		t.Fatal(err)
	}
	before := files(t, site)
	var used syscall.Statfs_t
	if err := syscall.Statfs(disk, &used); err != nil {
		t.Fatal(err)
	}
	whole := int64(used.Blocks-used.Bfree) * used.Bsize
	for _, spare := range []int64{4096, whole / 10, whole / 2, whole * 9 / 10} {
		for _, version := range []string{"a2", "b1"} {
			if version == "a2" && spare > whole/10 {
				continue // one van has room enough
			}
			limit(t, disk, fmt.Sprintf("size=%d", whole+spare), 0)
			err := publish(version)
			if err == nil || !strings.Contains(err.Error(), "no space left") || !strings.Contains(err.Error(), "Make room") {
				t.Errorf("%s with %d bytes to spare: %v", version, spare, err)
			}
			limit(t, disk, "size=64m", 0)
			if diff := cmp.Diff(before, files(t, site)); diff != "" {
				t.Fatalf("the last site changed:\n%s", diff)
			}
		}
	}
	if _, _, err := publishFiles(smallFleet("b1"), disk, nil); err == nil || !strings.Contains(err.Error(), filepath.Join(disk, "site")) {
		t.Errorf("onto the disk itself: %v", err)
	}
	limit(t, disk, "size=64m", syscall.MS_RDONLY)
	if err := publish("b1"); err == nil || !strings.Contains(err.Error(), "read-only") || !strings.Contains(err.Error(), "--out") {
		t.Errorf("read-only: %v", err)
	}
	limit(t, disk, "size=64m", 0)
	if err := publish("b1"); err != nil {
		t.Errorf("with room again: %v", err)
	}
	if entries, err := os.ReadDir(disk); err != nil || len(entries) != 1 {
		t.Errorf("left beside the site: %v", entries)
	}
}

func limit(t *testing.T, disk, size string, flags uintptr) {
	t.Helper()
	if err := syscall.Mount("doorpocket", disk, "tmpfs", syscall.MS_REMOUNT|flags, size); err != nil {
		t.Fatal(err)
	}
}

// inOwnNamespace runs the test again where it may mount: as root of a user
// namespace.
func inOwnNamespace(t *testing.T) {
	t.Helper()
	const inside = "PUBLISH_IN_NAMESPACE"
	if os.Getenv(inside) != "" {
		t.Fatal("this test needs to mount a small disk, as root or in a user namespace, and may do neither here")
	}
	cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$", "-test.v")
	cmd.Env = append(os.Environ(), inside+"=1")
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{HostID: os.Getgid(), Size: 1}},
	}
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
}

// A folder in which one may no longer write leaves the last site whole.
func TestPermissionLost(t *testing.T) {
	if os.Getuid() == 0 { // root may write anywhere: somebody else tries
		asNobody(t)
		return
	}
	parent := t.TempDir()
	site := filepath.Join(parent, "site")
	if _, _, err := publishFiles(smallFleet("a1"), site, nil); err != nil {
		t.Fatal(err)
	}
	clean := filepath.Join(t.TempDir(), "site")
	if _, _, err := publishFiles(smallFleet("a2"), clean, nil); err != nil {
		t.Fatal(err)
	}
	before, after := files(t, site), files(t, clean)
	for _, locked := range []string{parent, filepath.Join(site, "hirers"), filepath.Join(site, "ledger")} {
		if err := os.Chmod(locked, 0o555); err != nil {
			t.Fatal(err)
		}
		_, _, err := publishFiles(smallFleet("a2"), site, nil)
		if err == nil || !strings.Contains(err.Error(), "permission") {
			t.Errorf("%s: got %v", locked, err)
		}
		if err := os.Chmod(locked, 0o755); err != nil {
			t.Fatal(err)
		}
		checkWhole(t, locked, files(t, site), before, after, locked == parent)
	}
	if _, _, err := publishFiles(smallFleet("a2"), site, nil); err != nil {
		t.Error(err)
	}
	if diff := cmp.Diff(after, files(t, site)); diff != "" {
		t.Error(diff)
	}
}

// asNobody runs the test again as a user without any rights.
func asNobody(t *testing.T) {
	t.Helper()
	const nobody = 65534
	dir, err := os.MkdirTemp("", "nobody")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := os.RemoveAll(dir); err != nil {
			t.Error(err)
		}
	})
	program := filepath.Join(dir, "test")
	data, err := os.ReadFile(os.Args[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.WriteFile(program, data, 0o755), os.Chown(dir, nobody, nobody), os.Chmod(dir, 0o755)); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(program, "-test.run=^"+t.Name()+"$", "-test.v")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "TMPDIR="+dir, "HOME="+dir)
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
}
