package spec

import (
	"fmt"
	"strings"

	"doorpocket/components/fact"
	"doorpocket/components/manifest"
	"doorpocket/components/quantity"
)

// mostMarks is how many marks a picture on a phone has room for.
const mostMarks = 20

// marks reads the places on a picture that are numbered.
func (l *loader) marks(picture *manifest.Reader) []Mark {
	var all []Mark
	for i, r := range picture.Tables("marks") {
		text, _ := r.Text("text", manifest.Required, manifest.Example(`"The master switch"`))
		mark := Mark{Across: l.share(r, "across"), Down: l.share(r, "down"), Text: strings.TrimSpace(text)}
		if i == mostMarks {
			r.ProblemAt(r.At(), "out-of-range", fmt.Sprintf("More than %d marks on one picture", mostMarks), "Nobody can tell them apart on a phone. Show the rest on a second picture.")
			break
		}
		all = append(all, mark)
	}
	return all
}

// share reads how far across or down a picture something is.
func (l *loader) share(r *manifest.Reader, key string) float64 {
	e, ok := r.Raw(key)
	if !ok {
		r.Problem(key, "missing-key", fmt.Sprintf("Missing key %q", key), `Say how far it is from the left (across) and from the top (down) of the upright picture, as in across = "30 %", down = "45 %".`)
		return 0
	}
	d := fact.Decl{Name: key, Type: fact.Type{Kind: fact.Quantity, Dimension: quantity.Ratio}}
	v := d.Decode(e, &l.problems)
	if v.IsZero() {
		return 0
	}
	part, err := quantity.As[quantity.Fraction](v.Quantity)
	if err != nil || part < 0 || part > 1 {
		r.Problem(key, "out-of-range", fmt.Sprintf("%q is beside the picture", v.Quantity), "Give 0 % to 100 %.")
		return 0
	}
	return float64(part)
}
