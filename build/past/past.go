// Package past reads a fleet folder as it was at a Git revision. It asks the git
// program, which whoever has revisions has: a library that reads repositories
// would be larger than all else of this program, and would still not know every
// kind of repository that the git beside it can read. Files are read as they
// are stored, whatever git would do to them on the way to a folder or an archive.
package past

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"strconv"
	"strings"
)

// ErrNoGit says that the git program cannot be found.
var ErrNoGit = errors.New("git is not installed here, and only it can read revisions: install it, or name two folders")

// Tree is a fleet folder at a revision.
type Tree struct {
	Files    fs.FS  // of which pictures are empty
	Revision string // the commit, in short
	git      git
	pictures []blob
}

type blob struct{ id, name string }

// git runs the program in a folder.
type git struct {
	ctx     context.Context
	program string
	folder  string
}

// Open reads the fleet folder at a revision: a commit, a branch, a tag, HEAD~1.
func Open(ctx context.Context, folder, revision string) (*Tree, error) {
	program, err := exec.LookPath("git")
	if err != nil {
		return nil, ErrNoGit
	}
	g := git{ctx, program, folder}
	prefix, err := g.line("rev-parse", "--show-prefix")
	if err != nil {
		return nil, fmt.Errorf("%s is in no Git repository, and there is no folder %s", shown(folder), revision)
	}
	commit, err := g.line("rev-parse", "--verify", "--quiet", "--end-of-options", revision+"^{commit}")
	if err != nil {
		return nil, fmt.Errorf("there is no folder %s, and no Git revision of that name in %s", revision, shown(folder))
	}
	short, err := g.line("rev-parse", "--short", commit)
	if err != nil {
		return nil, err
	}
	t := &Tree{Revision: short, git: g}
	list, err := g.run(nil, "ls-tree", "-r", "-z", "--full-tree", commit, "--", ":(literal)"+nonEmpty(prefix))
	if err != nil {
		return nil, err
	}
	var texts []blob
	for entry := range strings.SplitSeq(string(list), "\x00") {
		// 100644 blob 83baae61804e65cc73a7201a7252750c76066a30<tab>vans/rowan.toml
		about, name, ok := strings.Cut(entry, "\t")
		fields := strings.Fields(about)
		if !ok || len(fields) != 3 || fields[1] != "blob" || fields[0] == symbolicLink {
			continue
		}
		b := blob{id: fields[2], name: strings.TrimPrefix(name, prefix)}
		switch {
		case !fs.ValidPath(b.name): // no operator means such a name
		case isPicture(b.name):
			t.pictures = append(t.pictures, b)
		case belongs(b.name):
			texts = append(texts, b)
		}
	}
	t.Files, err = g.archive(texts, t.pictures)
	return t, err
}

const symbolicLink = "120000"

func shown(folder string) string {
	if folder == "." {
		return "the folder that you stand in"
	}
	return folder
}

func nonEmpty(prefix string) string {
	if prefix == "" {
		return "."
	}
	return prefix
}

// isPicture reports whether a file lies in the folder pictures, or in the folder
// of a van or build sheet there.
func isPicture(name string) bool {
	below, ok := strings.CutPrefix(name, pictureFolder)
	return ok && strings.Count(below, "/") <= 1
}

const pictureFolder = "pictures/"

// belongs reports whether a file can be part of a fleet.
func belongs(name string) bool {
	folder, _, below := strings.Cut(name, "/")
	switch folder {
	case "vans", "builds", "pages", "systems":
		return true
	}
	return !below && path.Ext(name) == ".toml"
}

// run runs git and gives what it prints.
func (g git) run(input io.Reader, words ...string) ([]byte, error) {
	cmd := exec.CommandContext(g.ctx, g.program, append([]string{"-C", g.folder, "-c", "core.quotepath=off"}, words...)...)
	cmd.Env = append(os.Environ(), "GIT_OPTIONAL_LOCKS=0", "LC_ALL=C", "GIT_TERMINAL_PROMPT=0")
	cmd.Stdin = input
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("git %s: %w: %s", words[0], err, strings.TrimSpace(said.String()))
	}
	return out, nil
}

func (g git) line(words ...string) (string, error) {
	out, err := g.run(nil, words...)
	return strings.TrimRight(string(out), "\r\n"), err
}

// each gives the content of blobs, one after the other.
func (g git) each(blobs []blob, take func(b blob, size int64, content io.Reader) error) error {
	var ids strings.Builder
	for _, b := range blobs {
		ids.WriteString(b.id + "\n")
	}
	ctx, cancel := context.WithCancel(g.ctx)
	defer cancel()
	cmd := exec.CommandContext(ctx, g.program, "-C", g.folder, "cat-file", "--batch")
	cmd.Stdin = strings.NewReader(ids.String())
	out, err := cmd.StdoutPipe()
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil {
		return err
	}
	err = eachOf(bufio.NewReader(out), blobs, take)
	if err != nil {
		cancel()
		_ = cmd.Wait() // what went wrong first is told
		return err
	}
	return cmd.Wait()
}

// eachOf reads what git cat-file --batch prints: a line with id, type and size,
// the content, and a new line.
func eachOf(r *bufio.Reader, blobs []blob, take func(b blob, size int64, content io.Reader) error) error {
	for _, b := range blobs {
		head, err := r.ReadString('\n')
		if err != nil {
			return fmt.Errorf("git cat-file: %s: %w", b.name, err)
		}
		fields := strings.Fields(head)
		if len(fields) != 3 || fields[1] != "blob" {
			return fmt.Errorf("git cat-file: %s: %s", b.name, strings.TrimSpace(head))
		}
		size, err := strconv.ParseInt(fields[2], 10, 64)
		if err != nil {
			return fmt.Errorf("git cat-file: %s: %w", b.name, err)
		}
		content := io.LimitReader(r, size)
		if err := take(b, size, content); err != nil {
			return err
		}
		if _, err := io.Copy(io.Discard, content); err != nil {
			return err
		}
		if _, err := r.Discard(1); err != nil {
			return fmt.Errorf("git cat-file: %s: %w", b.name, err)
		}
	}
	return nil
}

// archive holds texts in memory as a file system. Pictures are there, and empty:
// they are large, and their sums tell what there is to tell.
func (g git) archive(texts, pictures []blob) (fs.FS, error) {
	var data bytes.Buffer
	w := zip.NewWriter(&data)
	err := g.each(texts, func(b blob, _ int64, content io.Reader) error {
		f, err := w.CreateHeader(&zip.FileHeader{Name: b.name, Method: zip.Store})
		if err == nil {
			_, err = io.Copy(f, content)
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	for _, b := range pictures {
		if _, err := w.Create(b.name); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return zip.NewReader(bytes.NewReader(data.Bytes()), int64(data.Len()))
}
