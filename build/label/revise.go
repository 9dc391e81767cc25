package label

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

// opening is what a new register begins with.
const opening = `# Every label code that this fleet has given out, and what it stands for.
#
# doorpocket labels keeps this file. It changes only the values it must: write
# comments where you like, and move lines as you like. Keep it with the specs.
# Never delete the line of a label that was printed: its sticker may still be
# about, and its page says what became of the thing.

`

// piece is a change of the text: data takes the place of the bytes from..to.
type piece struct {
	from, to int
	data     string
}

// Revise gives the text of a register that says what next says: the text of the
// register, nil for none yet, with as little changed as possible. Comments, order
// and layout stay. The result has been read back and says what it should; an
// error means a mistake of ours, and nothing may be written.
func Revise(register, next *Register) ([]byte, error) {
	r := reviser{register: register, next: next}
	text, pieces := r.run()
	revised, err := replace(text, pieces)
	if err != nil {
		return nil, err
	}
	if err := prove(text, revised, pieces, next); err != nil {
		return nil, err
	}
	if register != nil && register.written != nil {
		mark := register.written[:len(register.written)-len(text)] // a byte order mark
		revised = append(slices.Clone(mark), revised...)
	}
	return revised, nil
}

type reviser struct {
	register, next *Register
	source         *manifest.Source
	table          *manifest.Table
	pieces         []piece
	newline        string
}

func (r *reviser) run() ([]byte, []piece) {
	if r.register != nil && r.register.written != nil {
		r.table, _ = manifest.ParseKept(r.register.File, r.register.written) // as ParseRegister did
	} else {
		r.register = nil
		r.table, _ = manifest.Parse(RegisterFile, []byte(opening)) // it is ours
	}
	r.source, r.newline = r.table.Source(), "\n"
	text := r.source.Data
	if bytes.Contains(text, []byte("\r\n")) {
		r.newline = "\r\n"
	}
	r.address()
	r.vans()
	r.labels()
	return text, r.pieces
}

// address writes the address at the top, above the first table.
func (r *reviser) address() {
	if r.next.Address == r.register.addressOf() {
		return
	}
	value := strconv.Quote(r.next.Address)
	if e, ok := r.table.Get("address"); ok {
		r.put(e.ValueSpan, value)
		return
	}
	at, text := len(r.source.Data), "address = "+value+"   # under which the printed labels lead to the guides"+r.newline+r.newline
	if entries := r.table.Entries(); len(entries) > 0 {
		at = r.source.LineStart(headerLine(entries[0]))
	}
	if at > 0 && r.source.Data[at-1] != '\n' {
		text = r.newline + text
	}
	r.insert(at, text)
}

func (r *Register) addressOf() string {
	if r == nil {
		return ""
	}
	return r.Address
}

// headerLine is the line on which an entry of the file begins.
func headerLine(e manifest.Entry) int { return e.KeySpan.Start.Line }

func (r *reviser) vans() {
	entries := r.entries("van")
	var fresh []string
	for _, v := range r.next.Vans {
		old := r.register.Van(v.Code)
		if old == nil {
			fresh = append(fresh, fmt.Sprintf("%s = { name = %s, since = %s%s }", v.Code, strconv.Quote(v.Name), v.Since, fateOf(v.Became, Ref{}, v.On)))
			continue
		}
		r.revise(entries[v.Code], field{"name", quoted(old.Name), quoted(v.Name)},
			field{"became", quoted(string(old.Became)), quoted(string(v.Became))}, field{"on", date(old.On), date(v.On)})
	}
	if len(fresh) > 0 {
		r.section("van", fresh)
	}
}

func (r *reviser) labels() {
	entries := r.entries("label")
	fresh := map[string][]*Entry{}
	var order []string
	for _, e := range r.next.Entries {
		old := r.register.Find(e.Ref)
		if old == nil {
			if fresh[e.Van] == nil {
				order = append(order, e.Van)
			}
			fresh[e.Van] = append(fresh[e.Van], e)
			continue
		}
		r.revise(entries[e.Ref.String()],
			field{"fitted", quoted(old.Fitted), quoted(e.Fitted)},
			field{"system", quoted(old.System), quoted(e.System)},
			field{"former_printed", date(old.FormerPrinted), date(e.FormerPrinted)},
			field{"printed", date(old.Printed), date(e.Printed)},
			field{"became", quoted(string(old.Became)), quoted(string(e.Became))},
			field{"now", quoted(old.Now.String()), quoted(e.Now.String())},
			field{"on", date(old.On), date(e.On)})
	}
	r.newLabels(order, fresh)
}

// newLabels puts new lines behind the last of the same van, or at the end.
func (r *reviser) newLabels(order []string, fresh map[string][]*Entry) {
	var end []string
	for _, van := range order {
		slices.SortFunc(fresh[van], func(a, b *Entry) int { return a.Compare(b.Ref) })
		var lines []string
		for _, e := range fresh[van] {
			lines = append(lines, e.line())
		}
		last := r.lastOf(van)
		if last == nil {
			end = append(end, lines...)
			continue
		}
		r.behind(last.body, lines)
	}
	if len(end) > 0 {
		r.section("label", end)
	}
}

// lastOf is the lowest line of a van in the file.
func (r *reviser) lastOf(van string) *Entry {
	var last *Entry
	for _, e := range r.register.Of(van) {
		if last == nil || e.At.Start.Line > last.At.Start.Line {
			last = e
		}
	}
	return last
}

// line is an entry as a new line.
func (e *Entry) line() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-*s = { fitted = %s, system = %s, since = %s", len(e.Van)+6, strconv.Quote(e.Ref.String()), strconv.Quote(e.Fitted), strconv.Quote(e.System), e.Since)
	if !e.FormerPrinted.IsZero() {
		b.WriteString(", former_printed = " + e.FormerPrinted.String())
	}
	if !e.Printed.IsZero() {
		b.WriteString(", printed = " + e.Printed.String())
	}
	return b.String() + fateOf(e.Became, e.Now, e.On) + " }"
}

func fateOf(fate Fate, now Ref, on manifest.Date) string {
	text := ""
	if fate != Stands {
		text += ", became = " + strconv.Quote(string(fate))
	}
	if now != (Ref{}) {
		text += ", now = " + strconv.Quote(now.String())
	}
	if !on.IsZero() {
		text += ", on = " + on.String()
	}
	return text
}

// entries gives the tables of a section by their names.
func (r *reviser) entries(section string) map[string]*manifest.Table {
	all := map[string]*manifest.Table{}
	e, _ := r.table.Get(section)
	if table, ok := e.Value.(*manifest.Table); ok {
		for _, e := range table.Entries() {
			if t, ok := e.Value.(*manifest.Table); ok {
				all[e.Key] = t
			}
		}
	}
	return all
}

// field is one value of an entry, before and after, as it is written; "" for
// none.
type field struct{ key, before, after string }

// revise changes values of a table between braces: they are written over, added
// behind the last, or taken out with a comma.
func (r *reviser) revise(table *manifest.Table, fields ...field) {
	if table == nil {
		return
	}
	entries := table.Entries()
	gone := make([]bool, len(entries))
	for _, f := range fields {
		if f.before == f.after {
			continue
		}
		i := slices.IndexFunc(entries, func(e manifest.Entry) bool { return e.Key == f.key })
		switch {
		case i < 0:
			_, end := r.source.Offsets(entries[len(entries)-1].ValueSpan)
			r.insert(end, ", "+f.key+" = "+f.after)
		case f.after == "":
			gone[i] = true
		default:
			r.put(entries[i].ValueSpan, f.after)
		}
	}
	for from := 0; from < len(gone); from++ {
		to := from
		for to < len(gone) && gone[to] {
			to++
		}
		if to > from {
			r.drop(entries, from, to)
			from = to
		}
	}
}

// drop takes entries out: with the comma before them, or, where they are the
// first, with the one behind.
func (r *reviser) drop(entries []manifest.Entry, from, to int) {
	start, _ := r.source.Offsets(entries[from].KeySpan)
	_, end := r.source.Offsets(entries[to-1].ValueSpan)
	switch {
	case from > 0:
		_, start = r.source.Offsets(entries[from-1].ValueSpan)
	case to < len(entries):
		end, _ = r.source.Offsets(entries[to].KeySpan)
	}
	r.pieces = append(r.pieces, piece{start, end, ""})
}

// section adds lines at the end of a section, and the section where there is
// none.
func (r *reviser) section(name string, lines []string) {
	e, ok := r.table.Get(name)
	table, isTable := e.Value.(*manifest.Table)
	switch {
	case ok && isTable && table.Len() > 0:
		last := table.Entries()[0]
		for _, e := range table.Entries() {
			if e.KeySpan.Start.Line > last.KeySpan.Start.Line {
				last = e
			}
		}
		r.behind(last.ValueSpan, lines)
	case ok:
		r.behind(e.ValueSpan, lines)
	case name == "van" && r.has("label"): // [label] is there, with nothing below it
		label, _ := r.table.Get("label")
		r.insert(r.source.LineStart(headerLine(label)), "[van]"+r.newline+strings.Join(lines, r.newline)+r.newline+r.newline)
	default:
		text := "[" + name + "]" + r.newline + strings.Join(lines, r.newline) + r.newline
		data := r.source.Data
		if len(data) > 0 && data[len(data)-1] != '\n' {
			text = r.newline + text
		}
		if name == "label" || len(r.pieces) == 0 && len(r.table.Entries()) > 0 {
			text = r.newline + text
		}
		r.insert(len(data), text)
	}
}

func (r *reviser) has(section string) bool {
	_, ok := r.table.Get(section)
	return ok
}

// behind adds lines below the value that begins at a place.
func (r *reviser) behind(at problem.Span, lines []string) {
	text := strings.Join(lines, r.newline) + r.newline
	start := r.source.LineStart(at.Start.Line + 1 + strings.Count(r.source.Text(at), "\n"))
	if start == len(r.source.Data) && (start == 0 || r.source.Data[start-1] != '\n') {
		text = r.newline + strings.TrimSuffix(text, r.newline)
	}
	r.insert(start, text)
}

func (r *reviser) put(at problem.Span, value string) {
	from, to := r.source.Offsets(at)
	r.pieces = append(r.pieces, piece{from, to, value})
}

func (r *reviser) insert(at int, text string) { r.pieces = append(r.pieces, piece{at, at, text}) }

func quoted(text string) string {
	if text == "" {
		return ""
	}
	return strconv.Quote(text)
}

func date(d manifest.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}

// replace puts the pieces into a text.
func replace(text []byte, pieces []piece) ([]byte, error) {
	slices.SortStableFunc(pieces, func(a, b piece) int {
		if a.from != b.from {
			return a.from - b.from
		}
		return a.to - b.to
	})
	var b bytes.Buffer
	at := 0
	for _, p := range pieces {
		if p.from < at || p.to < p.from || p.to > len(text) {
			return nil, fmt.Errorf("the register was not revised: two changes want the same place, byte %d", p.from)
		}
		b.Write(text[at:p.from])
		b.WriteString(p.data)
		at = p.to
	}
	b.Write(text[at:])
	return b.Bytes(), nil
}

// prove reads the revised text back: it must say what the next register says,
// and without the pieces be what it was.
func prove(text, revised []byte, pieces []piece, next *Register) error {
	if !bytes.Equal(restored(text, revised, pieces), text) {
		return fmt.Errorf("the register was not revised: more than what had to change would have")
	}
	read, found := ParseRegister(RegisterFile, revised)
	if found.HasErrors() {
		return fmt.Errorf("the register was not revised: it could not be read back: %s", found[0])
	}
	if said, should := read.saying(), next.saying(); said != should {
		return fmt.Errorf("the register was not revised: it would say something else than it should")
	}
	return nil
}

// restored takes the pieces out of a revised text again.
func restored(text, revised []byte, pieces []piece) []byte {
	var b bytes.Buffer
	at, from := 0, 0
	for _, p := range pieces {
		same := p.from - from
		if at+same+len(p.data) > len(revised) {
			return nil
		}
		b.Write(revised[at : at+same])
		b.Write(text[p.from:p.to])
		at, from = at+same+len(p.data), p.to
	}
	b.Write(revised[at:])
	return b.Bytes()
}

// saying is all that a register says, whatever its layout.
func (r *Register) saying() string {
	var lines []string
	for _, v := range r.Vans {
		lines = append(lines, fmt.Sprint("van ", v.Code, " ", v.Name, " ", v.Since, " ", v.Became, " ", v.On))
	}
	for _, e := range r.Entries {
		lines = append(lines, fmt.Sprint("label ", e.line()))
	}
	slices.Sort(lines)
	return r.Address + "\n" + strings.Join(lines, "\n")
}
