package electrics

import (
	"cmp"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// What a fact of a mains load means.
const (
	settingRole = "mains-power"     // one setting of the appliance that the system is
	thingRole   = "mains-appliance" // an appliance of its own, such as a kettle in a socket
	alwaysRole  = "mains-always"    // runs by itself as long as the van is on the hook-up
)

// small is the power below which an appliance counts as running by itself:
// nobody thinks of a fridge or a television when he switches on a kettle.
//
// Source: common practice.
const small quantity.Watts = 500

// load is something that is on: an appliance at one setting, or several.
type load struct {
	uses   []table.Use
	stated quantity.Quantity // as the van states it, absent for a sum
	power  quantity.Watts
}

// appliance is one appliance with its settings, the largest first; there is at
// least one.
type appliance struct {
	group    string // tells appliances apart
	itself   bool   // it runs by itself
	settings []load
}

// appliances lists the mains appliances of the van, the largest first, and the
// loads that cannot be reckoned with.
func appliances(in table.Input) ([]appliance, []table.Lack) {
	var all []appliance
	var lacks []table.Lack
	for _, f := range in.All {
		found, unknown := appliancesOf(f)
		all = append(all, found...)
		lacks = append(lacks, unknown...)
	}
	for i := range all {
		a := &all[i]
		slices.SortStableFunc(a.settings, func(a, b load) int { return cmp.Compare(b.power, a.power) })
		a.itself = a.itself || a.settings[0].power < small
	}
	slices.SortStableFunc(all, func(a, b appliance) int { return cmp.Compare(b.settings[0].power, a.settings[0].power) })
	return all, lacks
}

// appliancesOf lists the mains appliances that one fitted system brings. Its
// settings are one appliance; everything else is one by itself.
func appliancesOf(f table.Fitted) ([]appliance, []table.Lack) {
	var all []appliance
	var lacks []table.Lack
	settings := appliance{group: f.Name}
	for _, fact := range f.Facts {
		if fact.Role != settingRole && fact.Role != thingRole && fact.Role != alwaysRole {
			continue
		}
		use := table.Use{Fitted: f.Name, Fact: fact.Name}
		power, err := calc.Take[quantity.Watts](fact)
		if err != nil {
			lacks = append(lacks, table.Lack{Use: use, Reason: err.Error()})
			continue
		}
		l := load{uses: []table.Use{use}, stated: fact.Quantity, power: power}
		if fact.Role == settingRole {
			settings.settings = append(settings.settings, l)
			continue
		}
		all = append(all, appliance{group: f.Name + ":" + fact.Name, itself: fact.Role == alwaysRole, settings: []load{l}})
	}
	if len(settings.settings) > 0 {
		all = append(all, settings)
	}
	return all, lacks
}

// together is several loads at once.
func together(loads ...load) load {
	if len(loads) == 1 {
		return loads[0]
	}
	var sum load
	for _, l := range loads {
		sum.uses = append(sum.uses, l.uses...)
		sum.power += l.power
	}
	return sum
}

// judged is a load with the verdict on every pitch.
type judged struct {
	load
	on []Verdict
}

func (s supply) judge(l load) (judged, error) {
	current, err := Current(l.power, s.voltage)
	if err != nil {
		return judged{}, err
	}
	on, err := s.verdicts(current)
	return judged{load: l, on: on}, err
}

// trips reports whether it surely trips on every pitch.
func (j judged) trips() bool {
	return !slices.ContainsFunc(j.on, func(v Verdict) bool { return v.tone() != table.Bad })
}
