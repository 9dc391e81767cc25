package render

import (
	"regexp"
	"strings"
)

// sheet is a style sheet of which each page gets what it uses: so all that a
// page needs for its first view is in one round trip. It is safe for concurrent
// use.
type sheet struct {
	rules []rule
	names names
	// scripts are the words in quotation marks of the scripts, by their names:
	// among them are all classes and elements that they give to a page. The one
	// without a name stands in every page.
	scripts map[string][]string
	kept    *kept[string, []byte]
}

// rule is a rule or, with rules in it, a condition such as @media.
type rule struct {
	head, body string
	selectors  []selector // none for one that every page gets, such as @page
	rules      []rule
}

// selector is one of those of a rule, with the classes and elements that it names.
type selector struct {
	text  string
	needs nameSet
}

var (
	classNamed   = regexp.MustCompile(`\.([a-zA-Z][\w-]*)`)
	elementNamed = regexp.MustCompile(`(?:^|[\s>+~(])([a-z][a-z0-9]*)`)
	denied       = regexp.MustCompile(`:(?:not|is)\([^)]*\)`)
	quoted       = regexp.MustCompile(`"([a-z][a-z0-9 -]*)"`)
)

// newSheet reads a sheet of ours, which has neither braces nor comment signs
// inside strings. scripts are those that may give classes, by their names.
func newSheet(text string, scripts map[string]string) sheet {
	s := sheet{names: names{classes: map[string]int{}, elements: map[string]int{}}, scripts: map[string][]string{}, kept: &kept[string, []byte]{most: keptSheets}}
	s.rules = s.names.rulesOf(compact(text))
	for name, script := range scripts {
		for _, m := range quoted.FindAllStringSubmatch(script, -1) {
			s.scripts[name] = append(s.scripts[name], strings.Fields(m[1])...)
		}
	}
	return s
}

func (n *names) rulesOf(text string) []rule {
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
			r.rules = n.rulesOf(r.body)
		} else if !strings.HasPrefix(head, "@") {
			for _, text := range selectorsOf(head) {
				r.selectors = append(r.selectors, selector{text, n.named(text)})
			}
		}
		all = append(all, r)
		text = rest[end:]
	}
}

// selectorsOf splits the head of a rule at the commas that stand in no
// parentheses.
func selectorsOf(head string) []string {
	var all []string
	depth, from := 0, 0
	for i, c := range head {
		switch {
		case c == '(':
			depth++
		case c == ')':
			depth--
		case c == ',' && depth == 0:
			all = append(all, head[from:i])
			from = i + 1
		}
	}
	return append(all, head[from:])
}

// named are the classes and elements that a selector needs: not those that it
// denies, nor those among which it lets choose.
func (n *names) named(selector string) nameSet {
	selector = denied.ReplaceAllString(selector, "")
	var all nameSet
	for _, m := range classNamed.FindAllStringSubmatch(selector, -1) {
		all.add(n.of(n.classes, m[1]))
	}
	for _, m := range elementNamed.FindAllStringSubmatch(selector, -1) {
		all.add(n.of(n.elements, m[1]))
	}
	return all
}

// used is what of the sheet a page uses: by its elements, their classes, and
// what its scripts may add to them.
func (s sheet) used(page []byte) []byte {
	there := s.there(page)
	text, _ := s.kept.of(there.key(), func() ([]byte, error) {
		var b strings.Builder
		write(&b, s.rules, there)
		return []byte(withoutIdleColours(b.String())), nil
	})
	return text
}

// there are the names that a page has, or that its scripts give.
func (s sheet) there(page []byte) nameSet {
	seen := nameSet{}
	script := func(name string) {
		for _, word := range s.scripts[name] {
			s.names.class(&seen, word)
			s.names.element(&seen, word)
		}
	}
	script("")
	s.names.scan(&seen, page, script)
	return seen
}

var (
	colourStated = regexp.MustCompile(`--([a-z-]+):[^;}]*;?`)
	colourTaken  = regexp.MustCompile(`var\(--([a-z-]+)\)`)
)

// withoutIdleColours takes the colours out of a sheet that none of its rules
// takes.
func withoutIdleColours(text string) string {
	taken := map[string]bool{}
	for _, m := range colourTaken.FindAllStringSubmatch(text, -1) {
		taken[m[1]] = true
	}
	return colourStated.ReplaceAllStringFunc(text, func(stated string) string {
		if taken[colourStated.FindStringSubmatch(stated)[1]] {
			return stated
		}
		return ""
	})
}

func write(b *strings.Builder, rules []rule, there nameSet) {
	for _, r := range rules {
		switch {
		case r.rules != nil:
			var inner strings.Builder
			if write(&inner, r.rules, there); inner.Len() > 0 {
				b.WriteString(r.head + "{" + inner.String() + "}")
			}
		case r.selectors == nil:
			b.WriteString(r.head + "{" + r.body + "}")
		default:
			if head := r.wanted(there); head != "" {
				b.WriteString(head + "{" + r.body + "}")
			}
		}
	}
}

// wanted are the selectors of a rule that a page can use, "" for none.
func (r rule) wanted(there nameSet) string {
	var all []string
	for _, s := range r.selectors {
		if there.hasAll(s.needs) {
			all = append(all, s.text)
		}
	}
	return strings.Join(all, ",")
}
