package publication_test

import (
	"testing"

	"doorpocket/components"
)

// The demonstration fleet shows what the library can do: most systems stand on
// some van, and each van is a whole one. What joins by itself counts for
// neither: nobody wrote it.
func TestDemonstrationShowsTheLibrary(t *testing.T) {
	const fewestSystems, fewestOnAVan = 70, 30
	used := map[string]bool{}
	for _, v := range demoFleet(t).Vans {
		onVan := map[string]bool{}
		for _, f := range v.Fitted {
			if !f.Automatic && f.System.ID != components.BodySystem {
				onVan[f.System.ID], used[f.System.ID] = true, true
			}
		}
		if len(onVan) < fewestOnAVan {
			t.Errorf("%s has %d systems, fewer than %d", v.Name, len(onVan), fewestOnAVan)
		}
		t.Logf("%s: %d systems", v.Name, len(onVan))
	}
	if len(used) < fewestSystems {
		t.Errorf("the fleet shows %d systems, fewer than %d", len(used), fewestSystems)
	}
	for _, s := range demoFleet(t).Library.Systems() {
		if !used[s.ID] && len(s.Automatic) == 0 && s.ID != components.BodySystem {
			t.Logf("on no van: %s", s.ID)
		}
	}
	t.Logf("%d systems in the fleet, %d in the library", len(used), len(demoFleet(t).Library.Systems()))
}
