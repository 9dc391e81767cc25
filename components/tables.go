package components

import "doorpocket/components/table"

// Calculations lists the functions behind the computed tables. A table of
// tables.toml without a function here, or the reverse, fails a test.
func Calculations() map[string]table.Func {
	return map[string]table.Func{}
}
