package label

import (
	"bytes"
	"strings"
	"testing"

	"doorpocket/components/manifest"
)

// registers are texts from which fuzzing starts: as people write them, and broken.
var registers = []string{
	"",
	"# nothing yet",
	opening,
	"address = \"https://guide.example\"\n[van]\nRW = { name = \"Rowan\", since = 2026-10-02 } # green\n\n[label]\n# gas\n\"RW G1\" = { fitted = \"locker\", system = \"gas/cylinder-locker\", since = 2026-10-02, printed = 2026-10-05 }\n\"RW W1\" = { fitted = \"pump\", system = \"water/pump\", since = 2026-10-02 }",
	"\xef\xbb\xbf[van]\r\nRW={name='Rowan',since=2026-10-02}\r\n[label]\r\n\"RW G1\"={became='removed',on=2026-10-03,fitted=\"läden\",system=\"gas/x\",since=2026-10-02}\r\n",
	"[label]\n'RW K1' = {\n  fitted = \"hob\", # the hob\n  system = \"kitchen/hob\",\n  since = 2026-10-02,\n}\n\"RW K2\" = { fitted = \"oven\", system = \"kitchen/oven\", since = 2026-10-02, became = \"replaced\", now = \"RW K1\", on = 2027-01-01 }\n[van]\nRW = { name = \"R\\\"n\", since = 2026-10-02, became = \"sold\", on = 2027-02-02 }\n",
	"[van]\nRW = { name = \"Rowan\", since = 2026-10-02 }\n[label]\n\"RW K1\" = { fitted = \"a\", system = \"b\", since = 2026-10-02, became = \"moved\", now = \"RW K2\", on = 2027-01-01 }\n\"RW K2\" = { fitted = \"a\", system = \"b\", since = 2026-10-02, became = \"moved\", now = \"RW K1\", on = 2027-01-01 }\n",
	"<<<<<<< HEAD\n[label]\n=======\n>>>>>>> other\n", ">>>>>>> other\n", "<<<<<<< a\n",
	"van.RW = { name = \"Rowan\", since = 2026-10-02 }\nlabel = {}\n",
}

// Whatever a register looks like: it is read or refused, and every revision of
// one that is read keeps all bytes that it need not change, says what it should,
// and needs nothing more the second time.
func FuzzRegister(f *testing.F) {
	for _, text := range registers {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) { reviseAnyhow(t, data) })
}

// TestRevisions runs the same on every beginning of every seed.
func TestRevisions(t *testing.T) {
	read := 0
	for _, text := range registers {
		for end := 0; end <= len(text); end += 1 + end/40 {
			if reviseAnyhow(t, []byte(text[:end])) {
				read++
			}
		}
		if reviseAnyhow(t, []byte(text)) {
			read++
		}
	}
	if read < 40 {
		t.Errorf("only %d registers could be read: the test proves little", read)
	}
}

func reviseAnyhow(t *testing.T, data []byte) bool {
	t.Helper()
	samePieces(t, data)
	r, found := ParseRegister(RegisterFile, data)
	if r == nil {
		if !found.HasErrors() {
			t.Errorf("refused without an error: %q", data)
		}
		return false
	}
	same, err := Revise(r, r.clone())
	if err != nil || !bytes.Equal(same, data) {
		t.Errorf("nothing to change, but %q became %q (%v)", data, same, err)
	}
	for _, next := range futures(r) {
		text, err := Revise(r, next)
		if err != nil {
			t.Errorf("%v: %q", err, data)
			continue
		}
		keepsLines(t, data, text, next)
		again, found := ParseRegister(RegisterFile, text)
		if again == nil {
			t.Errorf("%v: %q", found, text)
			continue
		}
		if once, err := Revise(again, next); err != nil || !bytes.Equal(once, text) {
			t.Errorf("a second revision changes more (%v): %q", err, once)
		}
	}
	return true
}

// futures are registers that a register may become.
func futures(r *Register) []*Register {
	day := manifest.Date{Year: 2027, Month: 3, Day: 14}
	more := r.clone()
	more.Address = "https://new.example"
	for _, van := range []string{"RW", "ZZ"} {
		if more.Van(van) == nil {
			more.addVan(&VanEntry{Code: van, Name: "A \"new\" one", Since: day})
		}
		if ref := (Ref{van, "X7"}); more.Find(ref) == nil {
			more.add(&Entry{Ref: ref, Fitted: "new-thing", System: "new/thing", Since: day, Printed: day})
		}
	}
	gone := r.clone()
	for _, e := range gone.Entries {
		if e.Became == Stands {
			e.Became, e.On = Removed, day
		}
		e.Printed, e.FormerPrinted = manifest.Date{}, day
	}
	for _, v := range gone.Vans {
		v.Became, v.On, v.Name = Sold, day, "Renamed"
	}
	back := r.clone()
	for _, e := range back.Entries {
		e.Fitted = "thing-of-" + e.Van + e.Code // else two may stand for one
		e.Became, e.Now, e.On, e.Printed, e.FormerPrinted = Stands, Ref{}, manifest.Date{}, manifest.Date{}, manifest.Date{}
	}
	return []*Register{more, gone, back}
}

// keepsLines looks whether every line is still there that holds no entry: comments
// and blank lines, in their order.
func keepsLines(t *testing.T, before, after []byte, next *Register) {
	t.Helper()
	var kept []string
	for _, line := range strings.Split(string(before), "\n") {
		if trimmed := strings.TrimSpace(line); strings.HasPrefix(trimmed, "#") {
			kept = append(kept, line)
		}
	}
	rest := string(after)
	for _, line := range kept {
		i := strings.Index(rest, line)
		if i < 0 {
			t.Errorf("lost the line %q: %q", line, after)
			return
		}
		rest = rest[i+len(line):]
	}
}
