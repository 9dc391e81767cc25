package electrics

import (
	"cmp"
	"slices"

	"doorpocket/components/internal/calc"
	"doorpocket/components/quantity"
	"doorpocket/components/table"
)

// socketsSystem is the one system whose mains loads are not settings of one
// appliance: each is another thing plugged into a socket, and all may run at
// once.
const socketsSystem = "electrics/mains-sockets"

// load is something that is switched on: an appliance at one setting, several
// appliances, or everything.
type load struct {
	uses   []table.Use
	stated quantity.Quantity // as the van states it, absent for a sum
	power  quantity.Watts
}

// shown gives the power as the van states it, or worked out for a sum.
func (l load) shown() quantity.Quantity {
	if l.stated.Valid() {
		return l.stated
	}
	return quantity.Of(l.power)
}

// appliance is one appliance with its usable settings, the largest first; there
// is at least one.
type appliance struct {
	settings []load
	whole    bool // every setting can be used, so that the first is its largest
}

// appliances lists the mains appliances of the van, the largest first, and the
// settings that cannot be reckoned with.
func appliances(in table.Input) ([]appliance, []table.Lack) {
	var all []appliance
	var lacks []table.Lack
	for _, group := range groups(in) {
		a := appliance{whole: true}
		for _, stated := range group {
			power, err := calc.Take[quantity.Watts](stated.Fact)
			if err != nil {
				lacks = append(lacks, table.Lack{Use: stated.Use(), Reason: err.Error()})
				a.whole = false
				continue
			}
			a.settings = append(a.settings, load{uses: []table.Use{stated.Use()}, stated: stated.Fact.Quantity, power: power})
		}
		if len(a.settings) > 0 {
			slices.SortStableFunc(a.settings, func(a, b load) int { return cmp.Compare(b.power, a.power) })
			all = append(all, a)
		}
	}
	slices.SortStableFunc(all, func(a, b appliance) int { return cmp.Compare(b.settings[0].power, a.settings[0].power) })
	return all, lacks
}

// groups gathers the mains loads that are settings of one appliance.
func groups(in table.Input) [][]table.Stated {
	var all [][]table.Stated
	for _, f := range in.All {
		stated := f.WithRole("mains-power")
		switch {
		case f.System == socketsSystem:
			for _, s := range stated {
				all = append(all, []table.Stated{s})
			}
		case len(stated) > 0:
			all = append(all, stated)
		}
	}
	return all
}

// together is several loads at once.
func together(loads ...load) load {
	var sum load
	for _, l := range loads {
		sum.uses = append(sum.uses, l.uses...)
		sum.power += l.power
	}
	return sum
}

// judged is a load with what it takes and the verdict on every pitch.
type judged struct {
	load
	current quantity.Amperes
	on      verdicts
}

func judge(l load) (judged, error) {
	current, err := Current(l.power)
	if err != nil {
		return judged{}, err
	}
	on, err := verdictsOn(current)
	return judged{load: l, current: current, on: on}, err
}
