package past

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"regexp"
	"strings"
)

// Pictures gives the SHA-256 sums of the pictures by their files. A picture that
// the repository keeps elsewhere is known by the sum in the file that stands for
// it.
func (t *Tree) Pictures() (map[string]string, error) {
	sums := map[string]string{}
	err := t.git.each(t.pictures, func(b blob, size int64, content io.Reader) error {
		sum, err := sumOf(content, size)
		sums[strings.TrimPrefix(b.name, pictureFolder)] = sum
		return err
	})
	return sums, err
}

// PicturesOf gives the same of a folder.
func PicturesOf(files fs.FS) (map[string]string, error) {
	sums := map[string]string{}
	for _, pattern := range []string{pictureFolder + "*", pictureFolder + "*/*"} {
		names, err := fs.Glob(files, pattern)
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			info, err := fs.Stat(files, name)
			if err != nil || !info.Mode().IsRegular() {
				continue
			}
			sum, err := sumOfFile(files, name, info.Size())
			if err != nil {
				return nil, err
			}
			sums[strings.TrimPrefix(name, pictureFolder)] = sum
		}
	}
	return sums, nil
}

func sumOfFile(files fs.FS, name string, size int64) (string, error) {
	f, err := files.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	return sumOf(f, size)
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
