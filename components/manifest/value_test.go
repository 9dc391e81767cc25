package manifest_test

import (
	"testing"

	"doorpocket/components/manifest"
)

// A day that was written down is the same when it is read again.
func TestDatesAsText(t *testing.T) {
	for text, want := range map[string]manifest.Date{"": {}, "2026-10-02": {Year: 2026, Month: 10, Day: 2}, "0999-12-31": {Year: 999, Month: 12, Day: 31}} {
		data, err := want.MarshalText()
		if string(data) != text || err != nil {
			t.Errorf("%v is %q, %v", want, data, err)
		}
		got := manifest.Date{Year: 1}
		if err := got.UnmarshalText([]byte(text)); err != nil || got != want {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"2026", "2026-13-01", "2026-02-30", "2.10.2026", "2026-10-02T00:00:00Z"} {
		var got manifest.Date
		if err := got.UnmarshalText([]byte(text)); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}
