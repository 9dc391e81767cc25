package past

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"regexp"
)

// Pictures gives the SHA-256 sums of the pictures by their files. A picture that
// the repository keeps elsewhere is known by the sum in the file that stands for
// it.
func (t *Tree) Pictures() (map[string]string, error) {
	sums := map[string]string{}
	err := t.git.each(t.pictures, func(b blob, size int64, content io.Reader) error {
		sum, err := sumOf(content, size)
		sums[b.name[len("pictures/"):]] = sum
		return err
	})
	return sums, err
}

// PicturesOf gives the same of a folder.
func PicturesOf(files fs.FS) (map[string]string, error) {
	entries, err := fs.ReadDir(files, "pictures")
	if err != nil {
		return nil, nil // a fleet without pictures
	}
	sums := map[string]string{}
	for _, e := range entries {
		info, err := e.Info()
		if err != nil || !info.Mode().IsRegular() {
			continue
		}
		f, err := files.Open("pictures/" + e.Name())
		if err != nil {
			return nil, err
		}
		sum, err := sumOf(f, info.Size())
		_ = f.Close()
		if err != nil {
			return nil, err
		}
		sums[e.Name()] = sum
	}
	return sums, nil
}

// standIn is the file that stands for one kept elsewhere, by its open
// specification: a few lines, one of them with the sum of the content.
var standIn = regexp.MustCompile(`\Aversion https://git-lfs\.[^\n]+\n(?:[^\n]*\n)*?oid sha256:([0-9a-f]{64})\n`)

const standInMost = 1024 // bytes

func sumOf(content io.Reader, size int64) (string, error) {
	if size <= standInMost {
		data, err := io.ReadAll(content)
		if err != nil {
			return "", err
		}
		if m := standIn.FindSubmatch(data); m != nil {
			return string(m[1]), nil
		}
		content = bytes.NewReader(data)
	}
	sum := sha256.New()
	if _, err := io.Copy(sum, content); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
