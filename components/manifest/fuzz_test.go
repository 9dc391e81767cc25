package manifest

import (
	"io"
	"strings"
	"testing"

	"doorpocket/components/problem"
)

// seeds are texts of every sort, well formed and not, from which fuzzing starts.
var seeds = []string{
	"",
	"code = \"RW\"\nspec_date = 2026-10-02\n[body]\nlength = \"6.36 m\"\n",
	"at = { side = \"nearside\", along = \"5.1 m\", up.from = 'ground' } # where\n",
	"[fitted.gas-locker]\nsystem = \"gas/cylinder-locker\"\n[fitted.panel]\nx.y.z = 1\nx.y.w = 2\n",
	"[[caution]]\na = 1\n[caution.more]\nb = [ [1, 2], [\"x\", { c = 3 }], ]\n[[caution]]\n[[caution.part]]\n",
	"a = \"\"\"\none \\\n   two \\\"\"\" three\"\"\"\"\"\nb = '''x''y'''''\nc = \"\\u00e9\\t\\\\\"\n",
	"\"key with \\\"quotes\\\"\" = 1\n'literal'.\"\" . bare = 2\n",
	"i = [0x1F, 0o17, 0b11, 1_000, +5, -6]\nf = [1.5, 1e3, -0.0, 6.02e+23]\nt = [true, false]\n",
	"d = 2026-10-02\ne = 2026-10-02T10:00:00Z\nf = 2026-10-02 10:00:00\ng = 10:00:00.5\n",
	"\xef\xbb\xbfname = \"Grün\"\r\n\tlänge = 1\r\n",
	"x = nan\ny = -inf\nz = 1e1000\nw = 12345678901234567890123456\n",
	"a = 1\nb = 2\na = 3\n[t]\n[t]\nc = 4\n[t.u]\n[[t]]\nB = {c = 1, c = 2}\nb.c = 5\n",
	"name = “Rowan”\ngas = propane\nlength = 2,5\nsafe: \"x\"\nl = [1,,2\nm = [\"a\" \"b\"]\nn = \"open\n",
	"key safe = 3\n= 4\nfoo\nk =\n[body\na = 1\n[b c]\n// comment\n",
	"a = [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]\n",
	"a.b.c.d.e.f.g.h.i.j.k.l.m.n.o.p.q.r.s.t.u.v.w.x.y.z.a.b.c.d.e.f.g.h = 1\n",
	"a = {\n b = 1, # c\n\n c = [\n 1 # d\n ,\n 2,\n ],\n}\n",
	"\xff\xfea\x00=\x001\x00", "a\x00 = 1", "a = 1\rb = 2", "a = \"\xff\"", "a = \"\"\"x", "a = '''", "a = [", "a = {", "\"a", "[[a]", "a = \"\\",
}

func addSeeds(f *testing.F) {
	for _, s := range seeds {
		f.Add([]byte(s))
	}
}

// TestSeeds runs what the fuzz targets check on every seed, and on every seed
// with its end cut off.
func TestSeeds(t *testing.T) {
	for _, s := range seeds {
		for i := range len(s) + 1 {
			checkAgreement(t, []byte(s[:i]))
			readAll(t, []byte(s[:i]))
		}
	}
}

// FuzzPositions proves that scanner and library agree.
func FuzzPositions(f *testing.F) {
	addSeeds(f)
	f.Fuzz(checkAgreement)
}

// FuzzParse proves that no text stops the reading or the printing.
func FuzzParse(f *testing.F) {
	addSeeds(f)
	f.Fuzz(readAll)
}

// readAll asks a table for everything in every way.
func readAll(t *testing.T, data []byte) {
	table, found := Parse("file.toml", data)
	r := NewReader(table, &found)
	readEvery(r, 0)
	r.Done()
	before := len(found)
	if r.Done(); len(found) != before {
		t.Error("a second Done reports again")
	}
	found.Sort()
	found.Dedupe()
	if err := problem.Write(io.Discard, found, problem.Style{Codes: true}); err != nil {
		t.Error(err)
	}
	for _, p := range found {
		if text := p.Text(problem.Style{}); strings.ContainsAny(text, "\x00\x1b\r") {
			t.Errorf("control characters in %q", text)
		}
	}
}

// readEvery asks for each key as every type but its own, and leaves some out.
func readEvery(r *Reader, level int) {
	for i, key := range r.Keys() {
		switch (i + level) % 8 {
		case 0:
			r.Text(key.Name, Required)
		case 1:
			r.Int(key.Name, 0, 9)
		case 2:
			r.Float(key.Name, Between(0, 1))
			r.Bool(key.Name)
		case 3:
			r.Date(key.Name)
			r.Texts(key.Name, OrSingle, Required)
		case 4:
			readEvery(r.Table(key.Name), level+1)
		case 5:
			for _, item := range r.Tables(key.Name) {
				readEvery(item, level+1)
			}
		case 6:
			for _, item := range r.Each(key.Name) {
				readEvery(item, level+1)
			}
		}
	}
	r.Text("absent", Required)
}
