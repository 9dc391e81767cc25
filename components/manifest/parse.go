package manifest

import "doorpocket/components/problem"

// Parse reads a TOML file. The table is nil only if the file is too broken to
// say which keys it has; then the list holds at least one error. The name is
// used in places and may be anything that helps to find the file.
func Parse(name string, data []byte) (*Table, problem.List) { return parse(name, data, usual) }

// ParseKept is Parse for a file that the program keeps for the whole fleet,
// which may be far larger than one that a person writes.
func ParseKept(name string, data []byte) (*Table, problem.List) { return parse(name, data, kept) }

func parse(name string, data []byte, most limits) (*Table, problem.List) {
	var found problem.List
	source, ok := open(name, data, most.bytes, &found)
	if !ok {
		return nil, found
	}
	p := &parser{source: source, most: most, text: append([]byte(nil), source.Data...), found: &found, broken: map[int]int{}}
	table := p.run()
	found.Dedupe()
	return table, found
}

// parser reads a text, and where it is broken mends its own copy so that the
// rest can be read too.
type parser struct {
	source *Source
	most   limits
	text   []byte // same length and lines as the source
	found  *problem.List
	broken map[int]int // see builder
	lost   bool        // a key was lost, so the table would be incomplete
}

// run scans, decodes and mends until the library accepts the text.
func (p *parser) run() *Table {
	for range maxReported {
		scanned := scan(p.text, p.most.keys)
		if scanned.limit != nil {
			p.reportLimit(scanned.limit)
			return nil
		}
		if len(scanned.conflicts) > 0 {
			p.leaveOut(scanned.conflicts)
			continue
		}
		values, err := decode(p.text)
		if err == nil {
			return p.build(scanned, values)
		}
		if !p.mend(scanned, err.(*fault)) {
			return nil
		}
	}
	return nil
}

// build makes the table, unless keys were lost on the way.
func (p *parser) build(scanned *scanner, values map[string]any) *Table {
	if p.lost {
		return nil
	}
	b := &builder{source: p.source, found: p.found, broken: p.broken}
	return b.table(scanned.root, p.source.Span(0, 0), values)
}

// report adds an error that quotes its line.
func (p *parser) report(start, end int, code, summary, detail string) {
	span := p.source.Span(start, end)
	p.found.Add(problem.New(problem.Error, span, code, summary, detail).
		WithLine(p.source.quoted(span.Start.Line)))
}
