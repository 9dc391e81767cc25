package render

import (
	"strings"

	"doorpocket/build/due"
	"doorpocket/build/spec"
)

type dueItem struct{ ISO, Day, Code, Van, What, Life, Reason string }

type dueMissing struct{ What, Vans, Key string }

type dueView struct {
	Frame
	Soon    int
	Items   []dueItem
	Missing []dueMissing
}

// due renders what falls due, as a page and as a calendar.
func (r *Renderer) due(w *Words, op *spec.Operator, rows []StaffRow) ([]File, error) {
	view := dueView{Frame: r.staffFrame(w, op, w.must("due_title"), "due/"), Soon: op.Due.Soon}
	var files []File
	view.Scripts = []string{"../" + r.staffScript("due")}
	var all []due.Item
	for _, row := range rows {
		all = append(all, row.Due...)
	}
	lang := op.Languages[0]
	values := op.Library.Values[lang]
	stated, missing := due.Split(all)
	for _, i := range stated {
		words := op.Library.Duty(i.Duty).Words[lang]
		item := dueItem{ISO: i.Day.String(), Day: values.Date(i.Day), Code: i.Code, Van: i.Name, What: words.Title, Reason: words.Reason}
		if i.Years > 0 {
			item.Life = w.must("due_life", "years", i.Years)
		}
		view.Items = append(view.Items, item)
	}
	view.Missing = unstated(op, missing)
	page, err := r.execute(w, "due", view)
	return append(files, File{Path: "due/index.html", Data: page}, File{Path: "due/due.ics", Data: due.Calendar(op, stated)}), err
}

// unstated gathers the vans that state no day, by duty.
func unstated(op *spec.Operator, missing []due.Item) []dueMissing {
	var all []dueMissing
	for _, d := range op.Library.Duties {
		var vans []string
		key := "[staff] " + d.Staff
		for _, i := range missing {
			if i.Duty != d.Name {
				continue
			}
			vans = append(vans, i.Code)
			if i.Fitted != "" {
				key = "[fitted." + i.Fitted + "] " + d.Fact
			}
		}
		if len(vans) > 0 {
			all = append(all, dueMissing{What: d.Words[op.Languages[0]].Title, Vans: strings.Join(vans, ", "), Key: key})
		}
	}
	return all
}
