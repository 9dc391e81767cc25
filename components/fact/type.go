// Package fact holds what a system wants to know about itself on one van,
// and what one van states: typed values with ranges and roles.
package fact

import (
	"doorpocket/components/condition"
	"doorpocket/components/manifest"
	"doorpocket/components/problem"
	"doorpocket/components/quantity"
)

// Kind is the kind of a fact's value.
type Kind uint8

// The kinds. A Quantity has a dimension beside.
const (
	Quantity Kind = iota + 1
	Choice        // one of several
	Choices       // several of several
	Count         // a whole number
	YesNo
	Date
	Text // the operator's own words
)

var kindNames = map[string]Kind{
	"choice": Choice, "choices": Choices, "count": Count, "yes-no": YesNo, "date": Date, "text": Text,
}

// Type is a kind and, for a quantity, its dimension.
type Type struct {
	Kind      Kind
	Dimension quantity.Dimension
}

// TypeNamed reads the name of a type as system.toml writes it: "choice",
// "count", "mass", "temperature-difference" and so on.
func TypeNamed(name string) (Type, bool) {
	if k, ok := kindNames[name]; ok {
		return Type{Kind: k}, true
	}
	if d, ok := quantity.DimensionNamed(name); ok {
		return Type{Kind: Quantity, Dimension: d}, true
	}
	return Type{}, false
}

// Numeric reports whether greater and less mean something.
func (t Type) Numeric() bool { return t.Kind == Quantity || t.Kind == Count }

// Decl is one fact that a system declares.
type Decl struct {
	Name     string
	Type     Type
	Of       []string // the options of a choice
	Low      Value    // least value allowed, zero for none
	High     Value    // greatest value allowed
	Required bool
	Default  Value // zero for none
	When     string
	Sense    condition.Condition // When as parsed; one that is not understood always holds
	Role     string
	At       problem.Span // where it is declared
}

// Always reports whether every van has a value for it (its condition aside).
func (d *Decl) Always() bool { return d.Required || !d.Default.IsZero() }

// Value is one typed value. The zero Value is "not stated".
type Value struct {
	Kind     Kind
	Quantity quantity.Quantity
	Options  []string // of a Choice exactly one
	Count    int
	Yes      bool
	Date     manifest.Date
	Text     string
	At       problem.Span // where it was stated
}

// IsZero reports whether nothing was stated.
func (v Value) IsZero() bool { return v.Kind == 0 }
