package spec

import (
	"doorpocket/components/manifest"
)

// StaffTexts are the keys of [staff] that are words and have a meaning here. The
// days among its keys are those of the library's duties. Whatever else an
// operator wants to note goes into [staff.own].
var StaffTexts = []string{"registration", "key_safe", "tracker", "marks", "notes"}

// staff reads [staff] into a place of its own, never into the van.
func (l *loader) staff(v *Van, r *manifest.Reader) {
	record := &Staff{File: v.File, Listing: l.fleet.Sources[v.File]}
	s := r.Table("staff")
	for _, key := range StaffTexts {
		if !s.Has(key) {
			continue
		}
		if text, ok := s.Text(key, manifest.Required); ok {
			record.Entries = append(record.Entries, StaffEntry{Key: key, Text: text})
		}
	}
	for _, key := range l.fleet.Library.StaffDates() {
		if date, ok := s.Date(key); ok {
			record.Entries = append(record.Entries, StaffEntry{Key: key, Date: date, At: s.Span(key)})
		}
	}
	own := s.Table("own")
	for _, key := range own.Keys() {
		e, _ := own.Raw(key.Name)
		switch value := e.Value.(type) {
		case string:
			record.Entries = append(record.Entries, StaffEntry{Key: key.Name, Own: true, Text: value})
		case manifest.Date:
			record.Entries = append(record.Entries, StaffEntry{Key: key.Name, Own: true, Date: value})
		case manifest.Unreadable, nil:
		default:
			own.Problem(key.Name, "wrong-type", "Value of "+key.Name+" is "+manifest.Describe(value), "Write words in quotes, or a day without.")
		}
	}
	if v.Code != "" {
		l.fleet.Staff[v.Code] = record
	}
}
