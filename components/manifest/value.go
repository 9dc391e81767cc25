package manifest

import (
	"fmt"
	"time"
)

// Date is a day of the calendar. It never passes through a time zone.
type Date struct{ Year, Month, Day int }

// DateOf is the day that a time falls on, where it is that time.
func DateOf(t time.Time) Date {
	year, month, day := t.Date()
	return Date{Year: year, Month: int(month), Day: day}
}

// String returns the date as TOML writes it: 2026-10-02.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// IsZero reports whether no date was set.
func (d Date) IsZero() bool { return d == Date{} }

// MarshalText gives what String gives, "" where no date was set.
func (d Date) MarshalText() ([]byte, error) {
	if d.IsZero() {
		return nil, nil
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what MarshalText gives.
func (d *Date) UnmarshalText(text []byte) error {
	*d = Date{}
	if len(text) == 0 {
		return nil
	}
	day, err := time.Parse(time.DateOnly, string(text))
	if err == nil {
		*d = DateOf(day)
	}
	return err
}

// Compare returns -1, 0 or +1 as d is before, equal to or after e.
func (d Date) Compare(e Date) int {
	switch a, b := d.ordinal(), e.ordinal(); {
	case a < b:
		return -1
	case a > b:
		return +1
	}
	return 0
}

// ordinal orders dates; it is not a count of days.
func (d Date) ordinal() int { return (d.Year*100+d.Month)*100 + d.Day }

// Moment is a TOML value with a time of day, as it is written. Nothing here
// needs one; it exists so that it can be named in a message.
type Moment struct {
	Text string
	Day  Date // zero if there is only a time
}

// Unreadable stands for a value that has already been reported as broken. It
// must not be reported again.
type Unreadable struct{}

// Describe names the kind of a value in plain words, with its article.
func Describe(value any) string {
	switch v := value.(type) {
	case string:
		return "a text"
	case int64:
		return "a whole number"
	case float64:
		return "a number"
	case bool:
		return "true or false"
	case Date:
		return "a date"
	case Moment:
		if v.Day.IsZero() {
			return "a time"
		}
		return "a date with a time"
	case []Entry:
		return "a list"
	case *Table:
		return "a table"
	}
	return "a value that cannot be read"
}
