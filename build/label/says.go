package label

import (
	"fmt"
	"strings"
)

// Says is all that the register says of a van's labels and of what has taken the
// place of those that are gone, but for what was printed when and where in the
// file it stands: while it is the same, so are the van's pages.
func (r *Register) Says(van string) string {
	var b strings.Builder
	told := map[string]bool{}
	tell := func(code string) {
		if v := r.Van(code); v != nil && !told[code] {
			told[code] = true
			fmt.Fprintf(&b, "%q %q %v %q %v\n", v.Code, v.Name, v.Since, v.Became, v.On)
		}
	}
	tell(van)
	for _, e := range r.Of(van) {
		for range len(r.Entries) + 1 { // a register has no circles
			fmt.Fprintf(&b, "%v %q %q %v %q %v %v\n", e.Ref, e.Fitted, e.System, e.Since, e.Became, e.Now, e.On)
			if e = r.Find(e.Now); e == nil {
				break
			}
			tell(e.Van)
		}
	}
	return b.String()
}
