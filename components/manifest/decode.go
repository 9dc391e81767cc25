package manifest

import (
	"errors"
	"fmt"

	"github.com/BurntSushi/toml"
)

// fault is a mistake in a text, as the TOML library sees it.
type fault struct {
	offset  int // where reading stopped, or the value or key at fault
	length  int
	message string
}

// Error makes a fault an error.
func (f *fault) Error() string { return f.message }

// decode hands a text to the TOML library. Whatever goes wrong in there comes
// back as an error, since a mistake in a file must never stop the program.
func decode(text []byte) (values map[string]any, err error) {
	defer func() {
		if r := recover(); r != nil {
			values, err = nil, &fault{message: fmt.Sprint(r)}
		}
	}()
	values = map[string]any{}
	if err := toml.Unmarshal(text, &values); err != nil {
		return nil, asFault(err, len(text))
	}
	return values, nil
}

// asFault keeps of a library error what can be relied on: the byte offset. Its
// columns count bytes, and its line is one off at the end of a line.
func asFault(err error, size int) *fault {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return &fault{message: err.Error()}
	}
	return &fault{
		offset:  min(max(parse.Position.Start, 0), size),
		length:  max(parse.Position.Len, 1),
		message: parse.Message,
	}
}
