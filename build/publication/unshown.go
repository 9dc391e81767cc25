package publication

import (
	"strings"

	"doorpocket/build/survey"
	"doorpocket/components/problem"
)

// unshown are the photographs of the fleet's folder that the problems are about.
func unshown(found problem.List) []survey.Unshown {
	var all []survey.Unshown
	for _, p := range found {
		if file, ok := strings.CutPrefix(p.File, "pictures/"); ok {
			all = append(all, survey.Unshown{File: file, Code: p.Code})
		}
	}
	return all
}
