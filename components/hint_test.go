package components_test

import (
	"strings"
	"testing"
)

// What somebody may have meant is looked for in the same family first, by the
// words of the name before its letters.
func TestSystemHint(t *testing.T) {
	lib := library(t)
	for id, want := range map[string]string{
		"living/bed":             `Did you mean "living/drop-down-bed" or "living/fixed-bed" or "living/lounge-bed"?`,
		"living/bedd":            `Did you mean "living/drop-down-bed" or "living/fixed-bed" or "living/lounge-bed"?`,
		"water/pmup":             `Did you mean "water/pump"?`,
		"water/pumps":            `Did you mean "water/pump"?`,
		"gas/isolation-tap":      `Did you mean "gas/isolation-taps"?`,
		"gas/cylinder-loker":     `Did you mean "gas/cylinder-locker"?`,
		"vehicle/battery":        `Did you mean "vehicle/starter-battery"?`,
		"kitchen/gas-hob":        `Did you mean "kitchen/hob" or "kitchen/induction-hob"?`,
		"gas/hob":                `Did you mean "kitchen/hob"?`, // right name, wrong family
		"pump":                   `Did you mean "water/pump"?`,
		"ga/cylinder-locker":     `Did you mean "gas/cylinder-locker"?`,
		"water/wings":            `There is water/can-filling, `,
		"sails/mast":             `A system is named family/name, for example "gas/cylinder-locker".`,
		"":                       `A system is named family/name`,
		strings.Repeat("x", 999): `A system is named family/name`,
	} {
		if got := lib.SystemHint(id); !strings.HasPrefix(got, want) {
			t.Errorf("%.40q: %s, want %s", id, got, want)
		}
	}
}
