package components_test

import (
	"strings"
	"testing"

	"doorpocket/components"
	"doorpocket/layouts"
)

// Every sign that a caution names is drawn.
func TestSignsOfCautionsAreDrawn(t *testing.T) {
	for _, p := range library(t).CheckSigns(layouts.Signs()) {
		t.Errorf("%s: %s", p, p.Detail)
	}
}

// A sign that is not drawn is told where it is named, with the nearest.
func TestUnknownSign(t *testing.T) {
	const file = "gas/cylinder-locker/system.toml"
	text := string(library(t).Sources["components/"+file])
	lib, _ := components.Load(changed(t, map[string]string{file: strings.Replace(text, `["W021", "P003"]`, `["W021", "P030"]`, 1)}))
	found := lib.CheckSigns(layouts.Signs())
	if len(found) != 1 || found[0].Summary != `Unknown sign "P030"` || !found[0].Start.Known() || found[0].File != "components/"+file || !strings.Contains(found[0].Detail, "Did you mean") {
		t.Errorf("%+v", found)
	}
}
