package spec

import (
	"strings"

	"doorpocket/components/fact"
)

// asker answers conditions about one fitted system.
type asker struct {
	van    *Van
	fitted *Fitted
}

func (a asker) value(key string) fact.Value {
	if name, ok := strings.CutPrefix(key, "body."); ok {
		if a.van.Body == nil {
			return fact.Value{}
		}
		return a.van.Body.Values[name]
	}
	if a.fitted == nil {
		return fact.Value{}
	}
	return a.fitted.Values[key]
}

func (a asker) Aboard(system string) bool { return a.van.Aboard(system) }

func (a asker) Present(key string) bool {
	v := a.value(key)
	return !v.IsZero() && (v.Kind != fact.YesNo || v.Yes)
}

func (a asker) Compare(key, value string) (int, bool) { return a.value(key).Compare(value) }
