package desk

import (
	"fmt"
	"strings"

	"doorpocket/build/guide"
)

// entry is one line of a list of tables.
type entry struct {
	Van     string `json:"van"`
	Table   string `json:"table"`
	Caption string `json:"caption"`
	Page    string `json:"page"`
}

// List lists the tables of guides in one of the Forms.
func List(guides []*guide.Guide, form string) (string, error) {
	all := []entry{} // no tables are an empty list
	for _, g := range guides {
		for _, t := range Tables(g) {
			all = append(all, entry{Van: g.Van.Code, Table: t.ID, Caption: t.Caption, Page: t.Page.Title})
		}
	}
	switch form {
	case "csv":
		rows := [][]string{{"van", "table", "caption", "page"}}
		for _, e := range all {
			rows = append(rows, []string{e.Van, e.Table, e.Caption, e.Page})
		}
		return csvOf(rows)
	case "json":
		return jsonOf(all)
	}
	var b strings.Builder
	for _, e := range all {
		fmt.Fprintf(&b, "%s  %-28s %s (%s)\n", e.Van, e.Table, e.Caption, e.Page)
	}
	return b.String(), nil
}

// Named finds the tables of a guide by their name, "gas/duration", or by the
// end of it, "duration", where only one table is called so.
func Named(tables []Table, name string) []Table {
	var found []Table
	ids := map[string]bool{}
	for _, t := range tables {
		if t.ID == name || strings.HasSuffix(t.ID, "/"+name) {
			found = append(found, t)
			ids[t.ID] = true
		}
	}
	if len(ids) > 1 {
		return nil
	}
	return found
}
