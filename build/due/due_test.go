package due_test

import (
	"bytes"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	ical "github.com/emersion/go-ical"
	"github.com/google/go-cmp/cmp"

	"doorpocket/build/due"
	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
)

const fleetFile = `name = "Heathside Vans"
address = "https://guide.heathside.example/vans"
languages = ["en"]
[call]
helpline = "+44 1632 960555"
emergency = "112"
`

const van = `code = "RW"
name = "Rowan; the \"first\", of all the vans that we have ever had in our fleet – ü"
spec_date = 2026-10-02
[body]
kind = "panel-van"
steering = "right"
length = "5.99 m"
width = "2.05 m"
height = "2.6 m"
wheelbase = "4.035 m"
door_side = "nearside"
[fitted.tyres]
system = "vehicle/tyres"
at = { side = "nearside", along = "0.95 m" }
front = "5.0 bar"
rear = "5.5 bar"
[fitted.alarm]
system = "safety/smoke-alarm"
at = { side = "inside", along = "3 m" }
power = "replaceable-battery"
replace_by = 2027-02-28
[staff]
roadworthiness_due = 2026-12-24
tyres_made = 2020-02-29
`

var library = sync.OnceValues(func() (*components.Library, problem.List) { return components.Load(components.Embedded()) })

// load reads a fleet of one van, with more in fleet.toml.
func load(t *testing.T, more string) *spec.Fleet {
	t.Helper()
	lib, found := library()
	if found.HasErrors() {
		t.Fatal(found)
	}
	fleet, found := spec.Load(fstest.MapFS{
		"fleet.toml":      {Data: []byte(fleetFile + more)},
		"vans/rowan.toml": {Data: []byte(van)},
	}, "", lib)
	if found.HasErrors() {
		t.Fatal(found)
	}
	return fleet
}

func names(items []due.Item) []string {
	var all []string
	for _, i := range items {
		all = append(all, strings.TrimSpace(i.Duty+" "+strings.TrimSuffix(i.Day.String(), "0000-00-00")))
	}
	return all
}

func TestList(t *testing.T) {
	stated, missing := due.List(load(t, ""))
	// Ten years after the 29th of February is the 28th.
	if diff := cmp.Diff([]string{"roadworthiness 2026-12-24", "smoke-alarm 2027-02-28", "tyres 2030-02-28"}, names(stated)); diff != "" {
		t.Error(diff)
	}
	// No gas and no hook-up: nobody asks for their checks.
	if diff := cmp.Diff([]string{"habitation-service"}, names(missing)); diff != "" {
		t.Error(diff)
	}
}

func TestOperatorsYears(t *testing.T) {
	stated, _ := due.List(load(t, "[due]\nsoon = \"2 d\"\n[due.years]\ntyres = 6\n"))
	if diff := cmp.Diff([]string{"tyres 2026-02-28", "roadworthiness 2026-12-24", "smoke-alarm 2027-02-28"}, names(stated)); diff != "" {
		t.Error(diff)
	}
}

func TestOn(t *testing.T) {
	item := due.Item{Day: manifest.Date{Year: 2028, Month: 3, Day: 1}}
	for day, want := range map[manifest.Date]due.State{
		{Year: 2028, Month: 3, Day: 2}:  due.Overdue,
		{Year: 2028, Month: 3, Day: 1}:  due.Soon,
		{Year: 2028, Month: 2, Day: 29}: due.Soon,
		{Year: 2028, Month: 1, Day: 31}: due.Soon, // 30 days before
		{Year: 2028, Month: 1, Day: 30}: due.Later,
	} {
		if got := item.On(day, 30); got != want {
			t.Errorf("on %s: got %d, want %d", day, got, want)
		}
	}
}

func TestWarnings(t *testing.T) {
	found := due.Warnings(load(t, ""), manifest.Date{Year: 2027, Month: 2, Day: 1})
	var got []string
	for _, p := range found {
		got = append(got, p.Code+" "+p.Span.String())
	}
	if diff := cmp.Diff([]string{"overdue vans/rowan.toml:23:22", "due-soon vans/rowan.toml:21:14"}, got); diff != "" {
		t.Error(diff)
	}
}

// The calendar as a parser that is not ours reads it.
func TestCalendar(t *testing.T) {
	fleet := load(t, "")
	stated, _ := due.List(fleet)
	data := due.Calendar(&fleet.Operator, stated)
	for line := range bytes.SplitSeq(data, []byte("\r\n")) {
		if len(line) > 75 || bytes.ContainsAny(line, "\r\n") {
			t.Errorf("line of %d octets: %q", len(line), line)
		}
	}
	read, err := ical.NewDecoder(bytes.NewReader(data)).Decode()
	if err != nil {
		t.Fatal(err)
	}
	events := read.Events()
	if len(events) != 3 {
		t.Fatalf("%d events", len(events))
	}
	text := func(name string) string {
		s, err := events[0].Props.Text(name)
		if err != nil {
			t.Error(err)
		}
		return s
	}
	want := `RW Rowan; the "first", of all the vans that we have ever had in our fleet – ü: Roadworthiness test`
	if got := text(ical.PropSummary); got != want {
		t.Errorf("summary %q, want %q", got, want)
	}
	if got := text(ical.PropUID); got != "RW.roadworthiness@guide.heathside.example" {
		t.Errorf("UID %q", got)
	}
	if start, err := events[0].DateTimeStart(nil); err != nil || start.Format("2006-01-02") != "2026-12-24" {
		t.Errorf("start %v, %v", start, err)
	}
	if again := due.Calendar(&fleet.Operator, stated); !bytes.Equal(data, again) {
		t.Error("the calendar differs from run to run")
	}
}

func TestBadRules(t *testing.T) {
	lib, _ := library()
	for more, want := range map[string]string{
		"[due.years]\ntires = 6\n":     `Did you mean "tyres"?`,
		"[due.years]\ngas-check = 1\n": "A life in years can be set for: tyres, leisure-battery, starter-battery.",
		"[due]\nsoon = 30\n":           "with its unit in quotes",
		"[due]\nson = \"30 d\"\n":      `Did you mean "soon"?`,
		"[due.years]\ntyres = 0\n":     "from 1 to 40",
	} {
		_, found := spec.Load(fstest.MapFS{"fleet.toml": {Data: []byte(fleetFile + more)}, "vans/rowan.toml": {Data: []byte(van)}}, "", lib)
		var said strings.Builder
		for _, p := range found {
			said.WriteString(p.Summary + ". " + p.Detail + "\n")
		}
		if !strings.Contains(said.String(), want) {
			t.Errorf("%q: no %q in:\n%s", more, want, &said)
		}
	}
}
