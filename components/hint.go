package components

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"doorpocket/components/problem"
)

// SystemHint says what somebody may have meant by the name of a system that
// there is not: of the same family first, since that is seldom mistaken.
func (lib *Library) SystemHint(id string) string {
	ids := lib.SystemIDs()
	if near := problem.Nearest(id, ids); near != "" && path.Dir(near) == path.Dir(id) && len(near) == len(id) {
		return fmt.Sprintf("Did you mean %q?", near) // a letter or two are wrong
	}
	if i := slices.IndexFunc(ids, func(known string) bool { return path.Base(known) == path.Base(id) }); i >= 0 {
		return fmt.Sprintf("Did you mean %q?", ids[i]) // the wrong family
	}
	family := slices.DeleteFunc(slices.Clone(ids), func(known string) bool { return path.Dir(known) != path.Dir(id) })
	if like := akin(path.Base(id), family); len(like) > 0 {
		return "Did you mean " + strings.Join(like, " or ") + "?"
	}
	if near := nearestName(id, family); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	if like := alike(path.Base(id), family); len(like) > 0 {
		return "Did you mean " + strings.Join(like, " or ") + "?"
	}
	if near := problem.Nearest(id, ids); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	if near := nearestName(id, ids); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	if like := akin(path.Base(id), ids); len(like) > 0 {
		return "Did you mean " + strings.Join(like, " or ") + "?"
	}
	if len(family) > 0 {
		return fmt.Sprintf("There is %s. To see what each is: doorpocket systems %s", strings.Join(family, ", "), path.Dir(id))
	}
	return "A system is named family/name, for example \"gas/cylinder-locker\". To see all: doorpocket systems"
}

// nearestName finds the system whose last part is nearest.
func nearestName(id string, ids []string) string {
	last := make([]string, len(ids))
	for i, known := range ids {
		last[i] = path.Base(known)
	}
	if near := problem.Nearest(path.Base(id), last); near != "" {
		return ids[slices.Index(last, near)]
	}
	return ""
}

// akin lists the systems that have a word of their names in common with a
// name, in quotes: "fixed-bed" and "drop-down-bed" for "bed" and "beds".
func akin(name string, ids []string) []string {
	return sharing(name, ids, func(word, other string) bool {
		return len(word) > 2 && strings.TrimSuffix(word, "s") == strings.TrimSuffix(other, "s")
	})
}

// alike lists those with a word that one letter makes the same.
func alike(name string, ids []string) []string {
	return sharing(name, ids, func(word, other string) bool {
		return len(word) > 2 && problem.Nearest(word, []string{other}) != "" && max(len(word), len(other))-min(len(word), len(other)) <= 1 && word[0] == other[0]
	})
}

// sharing lists in quotes the systems of which some word stands so to some
// word of a name.
func sharing(name string, ids []string, same func(word, other string) bool) []string {
	var like []string
	for _, known := range ids {
		others := strings.Split(path.Base(known), "-")
		if slices.ContainsFunc(strings.Split(name, "-"), func(word string) bool {
			return slices.ContainsFunc(others, func(other string) bool { return same(word, other) })
		}) {
			like = append(like, fmt.Sprintf("%q", known))
		}
	}
	return like
}
