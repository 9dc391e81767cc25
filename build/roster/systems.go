package roster

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"doorpocket/components"
)

// Family is the systems of one family that some van has.
type Family struct {
	*components.Family
	Systems []System
}

// System is a system with the vans that have it, by code.
type System struct {
	*components.System
	With, Without []string
}

// Families groups the systems that some van has, in the order of pages.
func Families(lib *components.Library, rows []Row) []Family {
	var all []Family
	for _, f := range lib.Families {
		family := Family{Family: f}
		for _, s := range lib.Systems() {
			if s.Family != f.ID {
				continue
			}
			if one := spread(s, rows); len(one.With) > 0 {
				family.Systems = append(family.Systems, one)
			}
		}
		if len(family.Systems) > 0 {
			all = append(all, family)
		}
	}
	return all
}

func spread(s *components.System, rows []Row) System {
	one := System{System: s}
	for _, row := range rows {
		if row.Count(s.ID) > 0 {
			one.With = append(one.With, row.Code)
		} else {
			one.Without = append(one.Without, row.Code)
		}
	}
	return one
}

// Count is how many things of a system a van has.
func (row *Row) Count(system string) int {
	n := 0
	for _, t := range row.Things {
		if t.System == system {
			n++
		}
	}
	return n
}

// CSV is a table of all systems against all vans: how many of each. Its first
// row names the columns.
func CSV(families []Family, rows []Row) ([]byte, error) {
	head := []string{"code", "name", "build"}
	for _, f := range families {
		for _, s := range f.Systems {
			head = append(head, s.ID)
		}
	}
	table := [][]string{head}
	for _, row := range rows {
		line := []string{row.Code, row.Name, row.Build}
		for _, system := range head[len(line):] {
			line = append(line, strconv.Itoa(row.Count(system)))
		}
		table = append(table, line)
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true // RFC 4180
	if err := w.WriteAll(table); err != nil {
		return nil, fmt.Errorf("CSV of the fleet: %w", err)
	}
	return b.Bytes(), nil
}
