package fact

import (
	"strings"
	"testing"

	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// decl is a fact of a named type.
func decl(t *testing.T, name, typeName string, options ...string) Decl {
	t.Helper()
	kind, ok := TypeNamed(typeName)
	if !ok {
		t.Fatalf("no type %q", typeName)
	}
	return Decl{Name: name, Type: kind, Of: options}
}

// ranged is a fact with limits, as TOML writes them.
func ranged(t *testing.T, d Decl, low, high string) Decl {
	t.Helper()
	limit := func(text string) Value {
		if text == "" {
			return Value{}
		}
		open := d
		v, problems := decode(t, &open, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return v
	}
	low2, high2 := limit(low), limit(high)
	d.Low, d.High = low2, high2
	return d
}

// decode reads a value as a file states it.
func decode(t *testing.T, d *Decl, text string) (Value, problem.List) {
	t.Helper()
	table, found := manifest.Parse("spec.toml", []byte("x = "+text+"\n"))
	var problems problem.List
	r := manifest.NewReader(table, &problems)
	e, ok := r.Raw("x")
	if len(found) > 0 || !ok {
		t.Fatalf("%s: %v", text, found)
	}
	return d.Decode(e, &problems), problems
}

// What can be stated is told with every option of a choice, and with dots where
// a value would be a guess.
func TestForm(t *testing.T) {
	for _, c := range []struct {
		decl        Decl
		form, blank string
	}{
		{decl(t, "shut_off", "choice", "valve", "switch"), `"valve" or "switch"`, `shut_off = "valve" or "switch"`},
		{decl(t, "tools", "choices", "jack", "kit", "rope"), `a list of any of "jack", "kit" or "rope"`, `tools = [...] of "jack", "kit" or "rope"`},
		{ranged(t, decl(t, "net", "mass"), `"2 kg"`, `"47 kg"`), "a mass with its unit in quotes, from 2 kg to 47 kg", `net = "... kg" (from 2 kg to 47 kg)`},
		{ranged(t, decl(t, "front", "pressure"), `"40 psi"`, ``), "a pressure with its unit in quotes, 40 psi or more", `front = "... psi" (40 psi or more)`},
		{decl(t, "floor", "area"), "an area with its unit in quotes", `floor = "... ` + quantity.Units(quantity.Area)[0].Name() + `"`},
		{decl(t, "gap", "temperature-difference"), "a temperature difference with its unit in quotes", `gap = "... ` + quantity.Units(quantity.TemperatureDifference)[0].Name() + `"`},
		{ranged(t, decl(t, "cylinders", "count"), "1", "4"), "a whole number, from 1 to 4", "cylinders = ... (from 1 to 4)"},
		{ranged(t, decl(t, "seats", "count"), "", "9"), "a whole number, 9 or less", "seats = ... (9 or less)"},
		{decl(t, "lamp", "yes-no"), "true or false", "lamp = true or false"},
		{decl(t, "due", "date"), "a day, year-month-day, without quotes", "due = a day, year-month-day"},
		{decl(t, "key", "text"), "your own words in quotes", `key = "..."`},
	} {
		if got := c.decl.Form(); got != c.form {
			t.Errorf("form of %s: %s, not %s", c.decl.Name, got, c.form)
		}
		if got := c.decl.Blank(); got != c.blank {
			t.Errorf("blank of %s: %s, not %s", c.decl.Name, got, c.blank)
		}
	}
}

// Every type takes what is meant for it and says of all else what is expected.
func TestDecode(t *testing.T) {
	net := ranged(t, decl(t, "net", "mass"), `"2 kg"`, `"47 kg"`)
	count := ranged(t, decl(t, "cylinders", "count"), "1", "4")
	choice := decl(t, "shut_off", "choice", "valve", "switch")
	choices := decl(t, "tools", "choices", "jack", "kit", "rope")
	for _, c := range []struct {
		decl        Decl
		text        string
		summary     string // "" where it is right
		detail, say string // part of the detail; the value
	}{
		{net, `"6 kg"`, "", "", "6 kg"},
		{net, `"6000 g"`, "", "", "6000 g"},
		{net, `6`, "Value of net is", "Write a mass with its unit in quotes", ""},
		{net, `"6"`, "Value of net: ", "units of mass", ""},
		{net, `"6 bar"`, "Value of net: ", "", ""},
		{net, `"1.9 kg"`, "net 1.9 kg is out of range", "It can be from 2 kg to 47 kg.", ""},
		{net, `"47.1 kg"`, "net 47.1 kg is out of range", "decimal point", ""},
		{count, `2`, "", "", "2"},
		{count, `0`, "cylinders 0 is out of range", "from 1 to 4", ""},
		{count, `-1`, "cylinders -1 is out of range", "", ""},
		{count, `1.5`, "Value of cylinders is", "whole number", ""},
		{count, `"2"`, "Value of cylinders is", "without quotes", ""},
		{decl(t, "any", "count"), `100001`, "any 100001 is out of range", "", ""},
		{choice, `"valve"`, "", "", "valve"},
		{choice, `"valf"`, `"valf" is no option of shut_off`, `Did you mean "valve"? It can be valve or switch.`, ""},
		{choice, `true`, "Value of shut_off is", "valve or switch", ""},
		{choices, `["kit", "jack", "kit"]`, "", "", "kit jack"},
		{choices, `["kit", "axe"]`, `"axe" is no option of tools`, "jack, kit or rope", ""},
		{choices, `["kit", 1]`, "Value of tools is", "in quotes", ""},
		{choices, `"kit"`, "Value of tools is", "a list of", ""},
		{decl(t, "lamp", "yes-no"), `true`, "", "", "yes"},
		{decl(t, "lamp", "yes-no"), `"yes"`, "Value of lamp is", "without quotes", ""},
		{decl(t, "due", "date"), `2027-03-14`, "", "", "2027-03-14"},
		{decl(t, "due", "date"), `"2027-03-14"`, "Value of due is", "without quotes", ""},
		{decl(t, "due", "date"), `2027-03-14T10:00:00Z`, "Value of due is", "a day", ""},
		{decl(t, "key", "text"), `"  the  green\tone "`, "", "", "the green one"},
		{decl(t, "key", "text"), `"  "`, "Value of key is", "leave the line out", ""},
		{decl(t, "key", "text"), `3`, "Value of key is", "words in quotes", ""},
	} {
		v, problems := decode(t, &c.decl, c.text)
		if c.summary == "" {
			if len(problems) > 0 || said(v) != c.say || v.At.Start.Line != 1 {
				t.Errorf("%s = %s: %q at %v, %v", c.decl.Name, c.text, said(v), v.At, problems)
			}
			continue
		}
		if len(problems) != 1 || !strings.HasPrefix(problems[0].Summary, c.summary) || !strings.Contains(problems[0].Detail, c.detail) || !v.IsZero() {
			t.Errorf("%s = %s: %+v, want %s ... %s", c.decl.Name, c.text, problems, c.summary, c.detail)
		}
	}
}

func said(v Value) string {
	switch v.Kind {
	case Quantity:
		return v.Quantity.String()
	case Choice, Choices:
		return strings.Join(v.Options, " ")
	case Count:
		return string(rune('0' + v.Count))
	case YesNo:
		return map[bool]string{true: "yes", false: "no"}[v.Yes]
	case Date:
		return v.Date.String()
	}
	return v.Text
}

// Conditions compare facts with values as they are written.
func TestCompare(t *testing.T) {
	value := func(d Decl, text string) Value {
		v, problems := decode(t, &d, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return v
	}
	net, count := decl(t, "net", "mass"), decl(t, "cylinders", "count")
	choices := decl(t, "tools", "choices", "jack", "kit")
	for _, c := range []struct {
		value   Value
		written string
		order   int
		ok      bool
	}{
		{value(net, `"6 kg"`), "6000 g", 0, true},
		{value(net, `"6 kg"`), "7 kg", -1, true},
		{value(net, `"6 kg"`), "5 kg", 1, true},
		{value(net, `"6 kg"`), "5 bar", 0, false},
		{value(net, `"6 kg"`), "many", 0, false},
		{value(count, "10"), "9", 1, true}, // as numbers, not as text
		{value(count, "1"), "two", -1, false},
		{value(choices, `["kit"]`), "kit", 0, true},
		{value(choices, `["kit"]`), "jack", 1, true},
		{value(decl(t, "lamp", "yes-no"), "true"), "yes", 0, true},
		{value(decl(t, "lamp", "yes-no"), "false"), "yes", 1, true},
		{value(decl(t, "lamp", "yes-no"), "false"), "no", 0, true},
		{value(decl(t, "key", "text"), `"a"`), "b", -1, true},
		{value(decl(t, "due", "date"), "2027-03-14"), "2027-03-14", 0, false},
		{Value{}, "1", 0, false},
	} {
		if order, ok := c.value.Compare(c.written); ok != c.ok || ok && order != c.order {
			t.Errorf("%s against %s: %d, %v", said(c.value), c.written, order, ok)
		}
	}
}

// A condition that can never be decided is told before a van needs it.
func TestComparable(t *testing.T) {
	for _, c := range []struct {
		decl     Decl
		written  string
		ordering bool
		want     string
	}{
		{decl(t, "net", "mass"), "2 kg", true, ""},
		{decl(t, "net", "mass"), "2 bar", false, "mass"},
		{decl(t, "n", "count"), "2", true, ""},
		{decl(t, "n", "count"), "2.5", false, "no whole number"},
		{decl(t, "c", "choice", "a", "b"), "a", false, ""},
		{decl(t, "c", "choice", "a", "b"), "x", false, `"x" is no option of c: it has a or b`},
		{decl(t, "c", "choice", "a", "b"), "a", true, "c is no number"},
		{decl(t, "l", "yes-no"), "no", false, ""},
		{decl(t, "l", "yes-no"), "true", false, "yes or no"},
		{decl(t, "d", "date"), "2027-03-14", false, "date"},
		{decl(t, "k", "text"), "anything", false, ""},
		{decl(t, "none", "choice"), "x", false, "it has nothing"},
		{decl(t, "one", "choice", "a"), "x", false, "it has a"},
	} {
		err := c.decl.Comparable(c.written, c.ordering)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s with %s: %v, want %q", c.decl.Name, c.written, err, c.want)
		}
	}
}
