package compare

import (
	"crypto/sha256"
	"fmt"
	"io"
	"strings"

	"doorpocket/build/guide"
)

// editionLong is how many hexadecimal digits name an edition: with 48 bits two
// states of one van's guide have not the same by chance.
const editionLong = 12

// Edition names what a guide says, whatever it looks like: a guide with the same
// edition would be printed in the same words.
func Edition(g *guide.Guide) string {
	sum := sha256.New()
	put := func(heading string, content []string) {
		fmt.Fprintf(sum, "%q\n", heading)
		_, _ = io.WriteString(sum, strings.Join(content, "\x00")) // a sum takes everything
	}
	call := g.Operator.Call
	put("van", []string{g.Van.Code, g.Van.Name, g.Lang, call.Helpline, call.Hours, call.Mail, call.Emergency})
	for _, p := range g.Pages {
		put(p.Path, contentOf(g, p))
	}
	for _, r := range g.Routines {
		put(r.Path, stepsOf(g, r))
	}
	for _, s := range g.Symptoms {
		put(s.Path, checksOf(g, s))
	}
	for _, own := range g.Operator.Pages {
		put(own.Name, ownContent(own.Words[g.Lang]))
	}
	return fmt.Sprintf("%x", sum.Sum(nil))[:editionLong]
}
