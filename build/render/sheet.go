package render

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"regexp"
	"strings"
)

// Tokens that stand in a page until its sheet is known. No text can hold them:
// the noncharacters are refused in specs and pages.
const (
	sheetToken = "\ufdd0sheet\ufdd0"
	staffToken = "\ufdd0staff\ufdd0"
	sumToken   = "\ufdd0sum\ufdd0"
	earlyToken = "\ufdd0early\ufdd0"
)

// policy lets exactly one sheet and one script stand in a page, and nobody else's
// anything.
const policy = "default-src 'none'; script-src 'self' 'sha256-" + earlyToken + "'; style-src 'sha256-" + sumToken +
	"'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'none'; base-uri 'none'"

// sheet is a style sheet of which each page gets what it uses: so all that a
// page needs for its first view is in one round trip.
type sheet struct {
	rules []rule
	// always are the words in quotation marks of the scripts: among them are all
	// classes that they give to elements.
	always map[string]bool
}

// rule is a rule or, with rules in it, a condition such as @media.
type rule struct {
	head, body string
	needs      [][]string // for each selector the classes and parts of tables that it names
	rules      []rule
}

var (
	classNamed = regexp.MustCompile(`\.([a-zA-Z][\w-]*)`)
	partNamed  = regexp.MustCompile(`(?:^|[\s>+~(])(table|caption|thead|th|td|details|summary)\b`)
	partGiven  = regexp.MustCompile(`<(table|caption|thead|th|td|details|summary)\b`)
	classGiven = regexp.MustCompile(`class="([^"]*)"`)
	quoted     = regexp.MustCompile(`"([a-z][a-z -]*)"`)
)

// newSheet reads a sheet of ours, which has neither braces nor comment signs
// inside strings. scripts are those that may give classes.
func newSheet(text string, scripts ...string) sheet {
	s := sheet{rules: rulesOf(compact(text)), always: map[string]bool{}}
	for _, script := range scripts {
		for _, m := range quoted.FindAllStringSubmatch(script, -1) {
			for _, word := range strings.Fields(m[1]) {
				s.always[word] = true
			}
		}
	}
	return s
}

func rulesOf(text string) []rule {
	var all []rule
	for {
		head, rest, found := strings.Cut(text, "{")
		if !found {
			return all
		}
		depth, end := 1, 0
		for ; depth > 0 && end < len(rest); end++ {
			switch rest[end] {
			case '{':
				depth++
			case '}':
				depth--
			}
		}
		r := rule{head: head, body: rest[:end-1]}
		if strings.HasPrefix(head, "@media") {
			r.rules = rulesOf(r.body)
		} else if !strings.HasPrefix(head, "@") {
			for _, selector := range strings.Split(head, ",") {
				var classes []string
				for _, m := range classNamed.FindAllStringSubmatch(selector, -1) {
					classes = append(classes, m[1])
				}
				for _, m := range partNamed.FindAllStringSubmatch(selector, -1) {
					classes = append(classes, "<"+m[1])
				}
				r.needs = append(r.needs, classes)
			}
		}
		all = append(all, r)
		text = rest[end:]
	}
}

// used is what of the sheet a page with these classes uses.
func (s sheet) used(page []byte) string {
	classes := map[string]bool{}
	for _, m := range classGiven.FindAllSubmatch(page, -1) {
		for _, class := range strings.Fields(string(m[1])) {
			classes[class] = true
		}
	}
	for _, m := range partGiven.FindAllSubmatch(page, -1) {
		classes["<"+string(m[1])] = true
	}
	has := func(class string) bool { return classes[class] || s.always[class] }
	var b strings.Builder
	write(&b, s.rules, has)
	return b.String()
}

func write(b *strings.Builder, rules []rule, has func(class string) bool) {
	for _, r := range rules {
		switch {
		case r.rules != nil:
			var inner strings.Builder
			if write(&inner, r.rules, has); inner.Len() > 0 {
				b.WriteString(r.head + "{" + inner.String() + "}")
			}
		case r.wanted(has):
			b.WriteString(r.head + "{" + r.body + "}")
		}
	}
}

func (r rule) wanted(has func(class string) bool) bool {
	if r.needs == nil {
		return true
	}
	for _, classes := range r.needs {
		all := true
		for _, class := range classes {
			all = all && has(class)
		}
		if all {
			return true
		}
	}
	return false
}

// dress puts the sheet that a page uses into it, and its sum into the policy.
func (r *Renderer) dress(page []byte) []byte {
	s := r.sheet
	if bytes.Contains(page, []byte(staffToken)) {
		s = r.staffSheet
	}
	used := s.used(page)
	page = bytes.Replace(page, []byte(sumToken), sourceSum(used), 1)
	page = bytes.Replace(page, []byte(earlyToken), sourceSum(string(r.early)), 1)
	page = bytes.Replace(page, []byte(staffToken), []byte(used), 1)
	return bytes.Replace(page, []byte(sheetToken), []byte(used), 1)
}

// sourceSum is how a policy names what may stand in a page.
func sourceSum(text string) []byte {
	sum := sha256.Sum256([]byte(text))
	return []byte(base64.StdEncoding.EncodeToString(sum[:]))
}
