package vehicle_test

import (
	"slices"
	"strings"
	"testing"

	"doorpocket/components/internal/sample"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
	"doorpocket/components/vehicle"
)

// at is a fitted system at a place along the van.
func at(t testing.TB, name, system, along string, facts ...table.Fact) table.Fitted {
	t.Helper()
	f := table.Fitted{Name: name, System: system, Facts: facts}
	if along != "" {
		f.Along = sample.Fact(t, "along", "", quantity.Length, along).Quantity
	}
	return f
}

func kg(t testing.TB, name, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, name, "", quantity.Mass, text)
}

func litres(t testing.TB, name, role, text string) table.Fact {
	t.Helper()
	return sample.Fact(t, name, role, quantity.Volume, text)
}

// masses is a weighed van of 3500 kg with 500 kg left, changed by the facts
// given; one without a value takes a fact away.
func masses(t testing.TB, changes ...table.Fact) table.Fitted {
	t.Helper()
	facts := []table.Fact{
		kg(t, "max", "3500 kg"), kg(t, "running", "2900 kg"), kg(t, "payload", "500 kg"), kg(t, "front_ready", "1500 kg"),
		kg(t, "front_axle", "1850 kg"), kg(t, "rear_axle", "2000 kg"),
		{Name: "running_contains", Options: []string{"driver", "fuel", "gas", "boiler-water"}},
	}
	for _, c := range changes {
		facts = slices.DeleteFunc(facts, func(f table.Fact) bool { return f.Name == c.Name })
		if !c.Quantity.IsZero() || c.Options != nil {
			facts = append(facts, c)
		}
	}
	return table.Fitted{Name: "masses", System: "vehicle/masses", Facts: facts}
}

// ladenVan has a wheelbase of 4 m that begins 1 m behind the bumper, so what
// stands at 1 m is on the front axle and what stands at 5 m on the rear one.
func ladenVan(t testing.TB, masses table.Fitted, more ...table.Fitted) []table.Fitted {
	t.Helper()
	length := func(name, text string) table.Fact { return sample.Fact(t, name, "", quantity.Length, text) }
	body := at(t, "body", "vehicle/body", "", length("length", "6 m"), length("width", "2.2 m"), length("height", "2.8 m"),
		length("wheelbase", "4 m"), length("front_overhang", "1 m"), sample.Count("berths", 2), sample.Count("seats", 3), sample.Choice("fuel", "diesel"))
	return append([]table.Fitted{
		body, masses,
		at(t, "cab", "living/cab-seats", "1 m"),
		at(t, "bench", "living/travel-seats", "3 m", sample.Count("seats", 1)),
		at(t, "lockers", "living/storage", "3 m"),
		at(t, "garage", "openings/garage", "5 m", kg(t, "max_load", "70 kg")),
		at(t, "fresh", "water/fresh-tank", "3 m", litres(t, "capacity", "fresh-capacity", "100 L"), litres(t, "travel_volume", "", "20 L")),
		at(t, "fuel", "vehicle/fuel", "2 m", litres(t, "tank", "fuel-capacity", "100 L")),
		at(t, "rack", "vehicle/cycle-rack", "6 m", sample.Choice("place", "rear-wall"), sample.Count("bikes", 2), kg(t, "limit", "40 kg"),
			length("adds_length", "2 m")),
	}, more...)
}

func shownLoad(t *testing.T, id string, van []table.Fitted) []string {
	t.Helper()
	return sample.Shown(t, id, sample.Van(t, "masses", van...))
}

// By hand: a load at 3 m is halved, one at 7 m puts 1.5 of itself on the rear
// axle. The last tenth of the fuel is 8.45 kg at 2 m.
func TestPayloadTable(t *testing.T) {
	sample.Same(t, shownLoad(t, "vehicle/payload", ladenVan(t, masses(t))), []string{
		"person-2 | 75 kg | 75 kg | ",
		"person-3 | 75 kg | 38 kg | 38 kg",
		"house | 60 kg |  | 60 kg",
		"luggage | 22 kg | 6 kg | 16 kg", // 10 kg in the garage, 12 kg in the lockers
		"luggage | 22 kg | 11 kg | 11 kg",
		"bicycle | 20 kg | -10 kg | 30 kg",
		"bicycle | 20 kg | -10 kg | 30 kg",
		"awning | 45 kg | 23 kg | 23 kg",
		"travel-water | 20 kg | 10 kg | 10 kg",
		"water | 100 kg | 50 kg | 50 kg",
	})
}

func TestPayloadCasesTable(t *testing.T) {
	sample.Same(t, shownLoad(t, "vehicle/payload-cases", ladenVan(t, masses(t))), []string{
		"driver | within | 491 kg | 1,507 kg | 1,503 kg",
		"two | within | 416 kg | 1,582 kg | 1,503 kg",
		"luggage | within | 312 kg | 1,599 kg | 1,590 kg",
		"cycles | within | 272 kg | 1,579 kg | 1,650 kg",
		"awning | within | 227 kg | 1,601 kg | 1,672 kg",
		"travel-water | within | 207 kg | 1,611 kg | 1,682 kg",
		"water | within | 127 kg | 1,651 kg | 1,722 kg",
	})
}

// Each limit is said in words when it is passed, and so is being near to one.
func TestPayloadVerdicts(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []table.Fact
		want    string // of the first case, the driver and a full tank: 3008.45 kg, 1506.34 and 1502.11 kg
	}{
		{"over the whole", []table.Fact{kg(t, "payload", "8 kg"), kg(t, "front_axle", ""), kg(t, "rear_axle", "")}, "over-whole"},
		{"over the whole and an axle", []table.Fact{kg(t, "payload", "8 kg"), kg(t, "rear_axle", "1900 kg")}, "over-whole-axle"},
		{"over the front axle", []table.Fact{kg(t, "front_axle", "1506 kg")}, "over-front"},
		{"over the rear axle", []table.Fact{kg(t, "rear_axle", "1502 kg")}, "over-rear"},
		{"over both axles", []table.Fact{kg(t, "front_axle", "1506 kg"), kg(t, "rear_axle", "1502 kg")}, "over-axles"},
		{"near the front axle", []table.Fact{kg(t, "front_axle", "1507 kg")}, "near"},
		{"near the whole", []table.Fact{kg(t, "payload", "78 kg"), kg(t, "front_axle", ""), kg(t, "rear_axle", "")}, "near"}, // 69.5 kg left, 2 % are 70 kg
		{"not near the whole", []table.Fact{kg(t, "payload", "79 kg"), kg(t, "front_axle", ""), kg(t, "rear_axle", "")}, "within-whole"},
		{"of papers", []table.Fact{kg(t, "payload", ""), kg(t, "running", "3317 kg"), kg(t, "rear_axle", "")}, "near"}, // less than 5 % left
		{"no axle load", []table.Fact{kg(t, "front_ready", "")}, "within-whole"},
	} {
		line := shownLoad(t, "vehicle/payload-cases", ladenVan(t, masses(t, c.changes...)))[0]
		if got := strings.Split(line, " | ")[1]; got != c.want {
			t.Errorf("%s: %q, expected %q", c.name, line, c.want)
		}
	}
}

// What the mass in running order does not count is counted here.
func TestPayloadCountsWhatIsNotCounted(t *testing.T) {
	gasFact := kg(t, "net", "6 kg")
	gasFact.Role = "gas-store"
	van := ladenVan(t, masses(t, table.Fact{Name: "running_contains", Options: []string{"fresh-water"}}, litres(t, "counted_water", "", "30 L")),
		at(t, "bottles", "gas/cylinder-locker", "5 m", gasFact, sample.Count("cylinders", 2), kg(t, "tare", "7 kg")),
		at(t, "boiler", "heating/water-boiler", "3 m", litres(t, "boiler", "boiler-volume", "10 L")))
	cases := shownLoad(t, "vehicle/payload-cases", van)
	sample.Same(t, cases[:1], []string{"driver | within | 340 kg | 1,639 kg | 1,522 kg"}) // 75 kg at 1 m, 84.5 kg at 2 m
	rows := shownLoad(t, "vehicle/payload", van)
	for _, want := range []string{"gas | 26 kg |  | 26 kg", "water | 80 kg | 40 kg | 40 kg"} { // 70 L and the boiler; the 20 L for the road are counted
		if !slices.Contains(rows, want) {
			t.Errorf("no row %q in\n%s", want, strings.Join(rows, "\n"))
		}
	}
	if slices.ContainsFunc(rows, func(row string) bool { return strings.HasPrefix(row, "travel-water") }) {
		t.Error("water that is counted already has a row")
	}
}

// On papers alone, what was fitted later counts too; with the things of the hire
// in it, it does not.
func TestPayloadOfPapers(t *testing.T) {
	microwave := at(t, "microwave", "kitchen/microwave", "3 m")
	for options, want := range map[string]string{"driver fuel": "561 kg", "driver fuel hire-equipment": "591 kg"} { // microwave and rack
		van := ladenVan(t, masses(t, kg(t, "payload", ""), table.Fact{Name: "running_contains", Options: strings.Fields(options)}), microwave)
		if line := shownLoad(t, "vehicle/payload-cases", van)[0]; strings.Split(line, " | ")[2] != want {
			t.Errorf("%s: %q, expected %s left", options, line, want)
		}
	}
}

func TestPayloadLacks(t *testing.T) {
	for _, id := range []string{"vehicle/payload", "vehicle/payload-cases"} {
		for _, c := range []struct {
			change table.Fact
			want   string
		}{
			{kg(t, "max", ""), "lacks masses:max: max is not stated"},
			{kg(t, "running", ""), "lacks masses:max: running is not stated"},
			{kg(t, "payload", "3500 kg"), "lacks masses:max: payload is 3500 kg, which must not be below zero and must be less than the maximum, 3500 kg: outside what the formula holds for"},
		} {
			sample.Same(t, shownLoad(t, id, ladenVan(t, masses(t, c.change))), []string{c.want})
		}
		for _, c := range []struct {
			change table.Fact
			want   string
		}{
			{kg(t, "front_ready", ""), "lacks masses:front_ready: front_ready is not stated"},
			{kg(t, "front_ready", "3100 kg"), "lacks masses:front_ready: front_ready is 3100 kg, which must be less than the whole van, 3000 kg: outside what the formula holds for"},
		} {
			lines := shownLoad(t, id, ladenVan(t, masses(t, c.change)))
			if got := lines[len(lines)-1]; got != c.want || !strings.HasSuffix(lines[0], " |  | ") {
				t.Errorf("%s: %q", id, lines)
			}
		}
	}
	// A place that is not known empties the axles from there on, and no others.
	van := ladenVan(t, masses(t))
	for i := range van {
		if van[i].Name == "rack" {
			van[i].Along = quantity.Quantity{}
		}
	}
	const lack = "lacks rack:at: its place along the van is not stated, so the load on each axle is not known"
	rows := shownLoad(t, "vehicle/payload", van)
	if !slices.Contains(rows, "bicycle | 20 kg |  | ") || !slices.Contains(rows, "awning | 45 kg | 23 kg | 23 kg") || rows[len(rows)-1] != lack {
		t.Errorf("%q", rows)
	}
	cases := shownLoad(t, "vehicle/payload-cases", van)
	if !slices.Contains(cases, "luggage | within | 312 kg | 1,599 kg | 1,590 kg") || !slices.Contains(cases, "cycles | within-whole | 272 kg |  | ") || cases[len(cases)-1] != lack {
		t.Errorf("%q", cases)
	}
}

// Ticking the rows of a case gives its verdict for the whole van and each axle.
func TestPayloadTicksAgreeWithCases(t *testing.T) {
	for _, payload := range []string{"500 kg", "300 kg", "150 kg", "20 kg"} {
		in := sample.Van(t, "masses", ladenVan(t, masses(t, kg(t, "payload", payload)))...)
		ticks, err := vehicle.PayloadTable(in)
		if err != nil || ticks.Tick == nil || len(ticks.Tick.Limits) != 3 {
			t.Fatal(ticks.Tick, err)
		}
		cases, err := vehicle.PayloadCasesTable(in)
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]string{}
		for _, row := range cases.Rows {
			said[row[0].Word] = row[1].Word
		}
		for _, c := range []struct {
			name string
			rows []string
		}{
			{"two", []string{"person-2"}},
			{"awning", []string{"person-2", "house", "luggage", "bicycle", "awning"}},
			{"water", []string{"person-2", "house", "luggage", "bicycle", "awning", "water"}},
		} {
			worst := table.Good
			for k, limit := range ticks.Tick.Limits {
				var sum quantity.Kilograms
				for _, row := range ticks.Rows {
					if mass, err := quantity.As[quantity.Kilograms](row[1+k].Quantity); err == nil && slices.Contains(c.rows, row[0].Word) {
						sum += mass
					}
				}
				worst = max(worst, stepTone(t, limit, sum))
			}
			verdict := map[table.Tone]string{table.Good: "within", table.Doubtful: "near"}[worst]
			if got := said[c.name]; got != verdict && !(worst == table.Bad && strings.HasPrefix(got, "over-")) {
				t.Errorf("%s left, %s: the rows say %v and the case %q", payload, c.name, worst, got)
			}
		}
	}
}

func stepTone(t *testing.T, limit table.Limit, sum quantity.Kilograms) table.Tone {
	t.Helper()
	for _, s := range limit.Steps {
		if s.Upto.IsZero() {
			return s.Tone
		}
		if upto, err := quantity.As[quantity.Kilograms](s.Upto); err != nil {
			t.Fatal(err)
		} else if sum <= upto {
			return s.Tone
		}
	}
	t.Fatalf("%s has no last step", limit.Word)
	return table.Plain
}

// Axles have no limit to tick against where a load's place is not known.
func TestPayloadTickWithoutPlaces(t *testing.T) {
	van := ladenVan(t, masses(t), at(t, "waste", "water/waste-tank", "", litres(t, "capacity", "waste-capacity", "90 L")))
	ticks, err := vehicle.PayloadTable(sample.Van(t, "masses", van...))
	if err != nil || ticks.Tick == nil || len(ticks.Tick.Limits) != 1 || ticks.Tick.Limits[0].Word != "whole" {
		t.Errorf("%+v, %v", ticks.Tick, err)
	}
	groups := map[string]int{}
	for _, row := range ticks.Rows {
		groups[row[0].Tick]++
	}
	if groups["water"] != 2 || len(groups) != len(ticks.Rows)-1 {
		t.Errorf("groups %v", groups)
	}
}

func BenchmarkPayloadTables(b *testing.B) {
	in := sample.Van(b, "masses", ladenVan(b, masses(b))...)
	for name, work := range map[string]table.Func{"ticks": vehicle.PayloadTable, "cases": vehicle.PayloadCasesTable} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := work(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
