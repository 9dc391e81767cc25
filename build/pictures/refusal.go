package pictures

import "fmt"

// Refusal says why a file cannot be used. Summary is a short noun phrase
// without a final stop; Detail is whole sentences, of which the last says what
// to do.
type Refusal struct {
	Summary, Detail string
	NeedsProgram    bool // the file may be in order: a program that reads it is missing here
}

func (r *Refusal) Error() string { return r.Summary + ". " + r.Detail }

// again is what to do about a file that is not whole.
const again = "Copy it again from the phone or computer that it came from."

// smaller is what to do about a file that is too large.
const smaller = "Save a smaller copy as JPEG, 2000 pixels across are plenty, and use that."

// still is what to do about something that moves.
const still = "Save one picture of it as JPEG, and use that."

// jpegCopy is what to do about a file of another kind.
const jpegCopy = "Open it on a phone or computer, save a copy as JPEG, and use that."

func (s source) refuse(what, detail string, args ...any) *Refusal {
	return &Refusal{Summary: fmt.Sprintf("Picture %q %s", s.name, what), Detail: fmt.Sprintf(detail, args...)}
}

// megapixels counts whole millions of pixels.
func megapixels(width, height int) int64 { return int64(width) * int64(height) / 1_000_000 }
