package render

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"doorpocket/build/survey"
)

// lack is one kind of what is not there yet, or was only guessed.
type lack struct {
	folder string // of its page
	words  string // what the keys of its words begin with
	facts  bool   // it is about facts, not about systems
	of     func(survey.Record) survey.List
}

// lacks are all kinds of it.
var lacks = []lack{
	{"missing/", "missing", true, func(r survey.Record) survey.List { return r.Lacking }},
	{"guesses/", "guesses", true, func(r survey.Record) survey.List { return r.Guesses }},
	{picturesFolder, "bare", false, func(r survey.Record) survey.List { return r.Bare }},
	{"unlabelled/", "unlabelled", false, func(r survey.Record) survey.List { return r.Unlabelled }},
}

// picturesFolder is where staff read of photographs that are missing or not shown.
const picturesFolder = "pictures/"

// lacks writes a page for each kind: by system, and with facts by fact, which
// vans; and by van how many.
func (s *staffPress) lacks() {
	having := map[string]int{} // how many vans have a system
	for _, row := range s.rows {
		seen := map[string]bool{}
		for entry := range row.Survey.Has.All() {
			id, _, _ := strings.Cut(entry, "=")
			if !seen[id] {
				seen[id] = true
				having[id]++
			}
		}
	}
	for _, l := range lacks {
		s.lack(l, having)
	}
}

func (s *staffPress) lack(l lack, having map[string]int) {
	vans := map[string][]string{} // by system and fact
	for _, row := range s.rows {
		for name := range l.of(row.Survey).All() {
			if list := vans[name]; len(list) == 0 || list[len(list)-1] != row.Code { // two of a system on one van
				vans[name] = append(list, row.Code)
			}
		}
	}
	names := slices.Collect(maps.Keys(vans))
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(len(vans[b]), len(vans[a])), cmp.Compare(a, b)) })
	by := staffGroup{Sift: true, Heads: words(s.w.must("list_system"))}
	if l.facts {
		by.Heads = append(by.Heads, staffHead{Text: s.w.must("list_fact")})
	}
	by.Heads = append(by.Heads, staffHead{Text: s.w.must("staff_vans_count"), Number: true}, staffHead{Text: s.w.must("list_which")})
	file := [][]string{{"system", "fact", "vans", "which"}}
	for _, name := range names {
		id, key, _ := strings.Cut(name, ":")
		row := []staffCell{{Text: s.title(id), Small: id}}
		if l.facts {
			row = append(row, s.factCell(l, id, key))
		}
		count := numberCell(len(vans[name]))
		which := s.codes("../", vans[name])
		if len(vans[name]) == having[id] && len(vans[name]) > 1 {
			which = textCell(s.w.must("list_all_with"))
		}
		by.Rows = append(by.Rows, append(row, count, which))
		file = append(file, []string{id, key, fmt.Sprint(len(vans[name])), strings.Join(vans[name], " ")})
	}
	list := staffList{Empty: s.w.must(l.words + "_none")}
	if len(names) > 0 {
		list.Groups, list.Table = []staffGroup{by}, strings.TrimSuffix(l.folder, "/")+".csv"
		s.table(l.folder+list.Table, file)
	}
	if l.folder == picturesFolder {
		list.Groups = s.withUnshown(list.Groups)
	}
	s.listPage(l.folder, s.w.must(l.words+"_title"), s.w.must(l.words+"_about"), list)
}

// factCell is a fact in words, with the value that is guessed where it is.
func (s *staffPress) factCell(l lack, id, key string) staffCell {
	cell := staffCell{Text: s.fact(id, key), Small: key}
	system := s.op.Library.System(id)
	if l.words == "guesses" && system != nil {
		if d := system.Fact(key); d != nil {
			cell.Small = key + " = " + d.Default.TOML()
		}
	}
	return cell
}
