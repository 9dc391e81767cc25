package manifest

import (
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// fewNames is up to how many valid names are listed if none is near.
const fewNames = 12

// Done reports every key that was never asked for, in this table and in all
// tables that this reader handed out. Call it once, when everything was read.
func (r *Reader) Done() {
	if r == nil || r.done {
		return
	}
	r.done = true
	unknown := 0
	for _, e := range r.table.entries {
		if r.asked[e.Key] || e.reported {
			continue
		}
		if unknown++; unknown > maxReported {
			r.ProblemAt(e.KeySpan, "unknown-key", "More unknown keys", "From here on they are not listed. Correct those that are, and try again.")
			break
		}
		r.unknown(e)
	}
	for _, c := range r.children {
		c.Done()
	}
}

// unknown reports a key that means nothing here.
func (r *Reader) unknown(e Entry) {
	kind := "key"
	if _, isTable := e.Value.(*Table); isTable {
		kind = "table"
	}
	r.Report(problem.New(problem.Error, e.KeySpan, "unknown-key", "Unknown "+kind+" "+quote(e.Key), r.remedy(e.Key)))
}

// remedy says what to write instead of an unknown key. A name that is in the
// table already is no likely remedy, so the free ones come first.
func (r *Reader) remedy(key string) string {
	free := slices.DeleteFunc(slices.Clone(r.names), func(name string) bool {
		_, there := r.table.Get(name)
		return there
	})
	if near := problem.Nearest(key, free); near != "" {
		return "This name is not known here. Did you mean " + quote(near) + "?"
	}
	if near := problem.Nearest(key, r.names); near != "" {
		return "This name is not known here. " + quote(near) + " is, and it is already written. Remove this one, or correct it."
	}
	if len(r.names) == 0 {
		return "No name is known here. Remove it."
	}
	if len(r.names) > fewNames {
		return "This name is not known here. Remove it, or correct it."
	}
	return "This name is not known here. Use one of: " + strings.Join(r.names, ", ") + "."
}
