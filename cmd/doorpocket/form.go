package main

import (
	"fmt"
	"slices"
	"strings"
)

// oneForm refuses what --as does not know.
func oneForm(as string, forms []string) error {
	if slices.Contains(forms, as) {
		return nil
	}
	return errUsage{fmt.Errorf("--as is %s, not %q", strings.Join(forms, ", "), as)}
}
