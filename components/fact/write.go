package fact

import (
	"strconv"
	"strings"

	"doorpocket/components/manifest"
)

// TOML writes a value as a spec states it, "" for one that is not stated. Decode
// reads the same value back.
func (v Value) TOML() string {
	switch v.Kind {
	case Quantity:
		return manifest.Quote(v.Quantity.String())
	case Choice:
		return manifest.Quote(v.Options[0])
	case Choices:
		var all []string
		for _, o := range v.Options {
			all = append(all, manifest.Quote(o))
		}
		return "[" + strings.Join(all, ", ") + "]"
	case Count:
		return strconv.Itoa(v.Count)
	case YesNo:
		return strconv.FormatBool(v.Yes)
	case Date:
		return v.Date.String()
	case Text:
		return manifest.Quote(v.Text)
	}
	return ""
}
