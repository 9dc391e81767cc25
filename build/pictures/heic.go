package pictures

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// The decoders of HEIC that need no C compiler are under the LGPL, so none is
// linked in. Where the machine has a program that reads HEIC, that one is asked.
// What it makes may differ between its versions.

// heicPrograms are the program of libheif and its older name.
var heicPrograms = []string{"heif-dec", "heif-convert"}

// heicPackage is the Debian package that has it.
const heicPackage = "libheif-examples"

// ReadsHEIC reports whether this machine has a program that reads HEIC.
func ReadsHEIC() bool { return heicProgram() != "" }

func heicProgram() string {
	for _, name := range heicPrograms {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// heicLimit is how long the program may take: a photograph of 48 megapixels takes
// a slow machine about ten seconds.
const heicLimit = time.Minute

// decodable gives the source in a format that is decoded here: a HEIC becomes a
// JPEG first. Of that only the image counts.
func (s source) decodable(limit time.Duration) (source, error) {
	if !isHEIC(s.data) || len(s.data) > MaxBytes {
		return s, nil
	}
	claimed := boxClaims(s.data)
	for _, size := range claimed.sizes {
		if err := s.measure(image.Config{Width: size.X, Height: size.Y}, false); err != nil {
			return s, err
		}
	}
	program := heicProgram()
	if program == "" {
		return s, s.withoutProgram()
	}
	if len(claimed.sizes) == 0 {
		return s, s.refuse("holds no photograph that can be read", "It is a HEIC that does not say how large its image is: it is not whole, or it is a film. %s", jpegCopy)
	}
	data, err := converted(program, s.data, limit)
	if err != nil {
		return s, s.unconverted(program, err, limit)
	}
	return source{name: s.name, data: data, upright: claimed.turned}, nil
}

// withoutProgram says how to read a HEIC all the same.
func (s source) withoutProgram() error {
	r := s.refuse("is a HEIC photograph", "That is what is in it, whatever its name ends in. %s HEIC can be read where the program %s is installed, on Debian with: "+
		"apt install %s. Or open it on the phone or computer, save a copy as JPEG, and use that. Or set the phone's camera to store JPEG.", readable, heicPrograms[0], heicPackage)
	r.NeedsProgram = true
	return r
}

var errTooLong = errors.New("it takes too long")

func (s source) unconverted(program string, err error, limit time.Duration) error {
	name := filepath.Base(program)
	if errors.Is(err, errTooLong) {
		return s.refuse("cannot be read in time", "%s has worked on this HEIC for %s without an end. %s", name, limit, jpegCopy)
	}
	return s.refuse("cannot be decoded", "It is a HEIC, and %s says: %v. %s If that does not help: %s", name, err, again, jpegCopy)
}

// converted has the program make a JPEG of a HEIC, in a folder that goes
// afterwards.
func converted(program string, data []byte, limit time.Duration) (made []byte, err error) {
	folder, err := os.MkdirTemp("", "doorpocket-")
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	const from, to = "photo.heic", "photo.jpg"
	if err := os.WriteFile(filepath.Join(folder, from), data, 0o600); err != nil {
		return nil, err
	}
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	cmd := exec.CommandContext(ctx, program, "-q", "95", from, to)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "LC_ALL=C")
	cmd.WaitDelay = time.Second // for what the program itself has started
	said := &firstBytes{most: 2000}
	cmd.Stdout, cmd.Stderr = said, said
	err = cmd.Run()
	if ctx.Err() != nil {
		return nil, errTooLong
	}
	if err != nil {
		if last := said.lastLine(); last != "" {
			err = errors.New(last)
		}
		return nil, err
	}
	return oneOf(folder, to)
}

// oneOf reads what the program made: of a file with several images the first,
// which it numbers.
func oneOf(folder, name string) ([]byte, error) {
	stem, end, _ := strings.Cut(name, ".")
	for _, file := range []string{name, stem + "-1." + end} {
		info, err := os.Stat(filepath.Join(folder, file))
		switch {
		case err != nil:
			continue
		case info.Size() > 4*MaxBytes:
			return nil, fmt.Errorf("it makes a JPEG of %d MB", info.Size()/1_000_000)
		}
		return os.ReadFile(filepath.Join(folder, file))
	}
	return nil, errors.New("it makes no JPEG")
}

// firstBytes keeps the first bytes that are written to it, and lets the rest go.
type firstBytes struct {
	bytes.Buffer
	most int
}

func (b *firstBytes) Write(data []byte) (int, error) {
	b.Buffer.Write(data[:min(len(data), max(0, b.most-b.Len()))])
	return len(data), nil
}

// lastLine is the last thing that was said, "" for nothing.
func (b *firstBytes) lastLine() string {
	lines := strings.Split(strings.TrimSpace(b.String()), "\n")
	return strings.TrimRight(strings.TrimSpace(lines[len(lines)-1]), ".")
}
