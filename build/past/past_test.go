package past_test

import (
	"context"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"doorpocket/build/past"
)

// repository makes a Git repository with commands in it and gives its folder.
func repository(t *testing.T) (folder string, git func(words ...string)) {
	t.Helper()
	folder = t.TempDir()
	git = func(words ...string) {
		t.Helper()
		cmd := exec.Command("git", append([]string{"-C", folder, "-c", "user.name=Test", "-c", "user.email=test@fleet.example", "-c", "commit.gpgsign=false"}, words...)...)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("git %v: %v\n%s", words, err, out)
		}
	}
	git("init", "-q", "-b", "main")
	return folder, git
}

func put(t *testing.T, folder string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func names(t *testing.T, files fs.FS) []string {
	t.Helper()
	var all []string
	err := fs.WalkDir(files, ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			all = append(all, name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A fleet is read as it was stored: in the folder of a larger repository, with
// names that need care, whatever attributes say, and nothing that does not belong.
func TestOpen(t *testing.T) {
	folder, git := repository(t)
	put(t, folder, map[string]string{
		".gitattributes":             "*.toml text eol=crlf\nnorth/vans/hidden.toml export-ignore\n",
		"elsewhere/fleet.toml":       "not this",
		"north/fleet.toml":           "name = 1\n",
		"north/vans/one.toml":        "first\n",
		"north/vans/hidden.toml":     "seen\n",
		"north/vans/two \"é\".toml":  "spaces\n",
		"north/pages/a.en.md":        "# A\n",
		"north/pictures/one.jpg":     "JPEG",
		"north/pictures/RW/bed.jpg":  "A BED",
		"north/pictures/RW/a/b.jpg":  "no",
		"north/site/index.html":      "no",
		"north/notes/deep/more.toml": "no",
	})
	git("add", ".")
	git("commit", "-qm", "one")
	git("tag", "v1")
	put(t, folder, map[string]string{"north/vans/one.toml": "second\n", "north/pictures/one.jpg": "OTHER"})
	git("rm", "-q", "--cached", "north/vans/hidden.toml")
	git("commit", "-qam", "two")
	tree, err := past.Open(context.Background(), filepath.Join(folder, "north"), "v1")
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"fleet.toml", "pages/a.en.md", "pictures/RW/bed.jpg", "pictures/one.jpg", "vans/hidden.toml", "vans/one.toml", "vans/two \"é\".toml"}
	if got := names(t, tree.Files); !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	if data, err := fs.ReadFile(tree.Files, "vans/one.toml"); err != nil || string(data) != "first\n" {
		t.Errorf("%q, %v", data, err)
	}
	now, err := past.Open(context.Background(), filepath.Join(folder, "north"), "HEAD")
	if err != nil {
		t.Fatal(err)
	}
	if data, err := fs.ReadFile(now.Files, "vans/one.toml"); err != nil || string(data) != "second\n" {
		t.Errorf("%q, %v", data, err)
	}
	was, err := tree.Pictures()
	is, err2 := now.Pictures()
	here, err3 := past.PicturesOf(os.DirFS(filepath.Join(folder, "north")))
	if err != nil || err2 != nil || err3 != nil {
		t.Fatal(err, err2, err3)
	}
	if len(was) != 2 || !maps.Equal(is, here) || is["RW/bed.jpg"] == "" || was["one.jpg"] == is["one.jpg"] || is["one.jpg"] != here["one.jpg"] {
		t.Errorf("%v %v %v", was, is, here)
	}
}

// A picture that the repository keeps elsewhere is the one in the folder.
func TestPicturesKeptElsewhere(t *testing.T) {
	folder, git := repository(t)
	put(t, folder, map[string]string{"fleet.toml": "", "pictures/one.jpg": "version https://git-lfs.github.com/spec/v1\n" +
		"oid sha256:f4dc1c96a30fbdeb2a15cb6d4229469fff36c0266dc0c346599093c24d4c0a01\nsize 4\n"})
	git("add", ".")
	git("commit", "-qm", "one")
	tree, err := past.Open(context.Background(), folder, "HEAD")
	if err != nil {
		t.Fatal(err)
	}
	put(t, folder, map[string]string{"pictures/one.jpg": "JPEG"})
	was, err := tree.Pictures()
	is, err2 := past.PicturesOf(os.DirFS(folder))
	if err != nil || err2 != nil || was["one.jpg"] != is["one.jpg"] {
		t.Errorf("%v %v %v %v", was, is, err, err2)
	}
}

func TestRefused(t *testing.T) {
	folder, git := repository(t)
	put(t, folder, map[string]string{"fleet.toml": ""})
	git("add", ".")
	git("commit", "-qm", "one")
	outside := t.TempDir()
	for _, test := range []struct{ folder, revision, want string }{
		{folder, "nonsense", "no Git revision of that name"},
		{folder, "--help", "no Git revision of that name"},
		{folder, "HEAD:fleet.toml", "no Git revision of that name"},
		{outside, "HEAD", "is in no Git repository"},
	} {
		if _, err := past.Open(context.Background(), test.folder, test.revision); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v", test.revision, err)
		}
	}
	t.Setenv("PATH", "")
	if _, err := past.Open(context.Background(), folder, "HEAD"); err != past.ErrNoGit {
		t.Error(err)
	}
}
