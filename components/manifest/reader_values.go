package manifest

import (
	"strconv"
	"strings"
)

// Text returns a text. If it is required it must not be blank.
func (r *Reader) Text(key string, options ...Option) (string, bool) {
	w := wishFor(`"..."`, options)
	text, ok := take[string](r, key, w, aText)
	if ok && w.required && strings.TrimSpace(text) == "" {
		r.empty(key, w)
		return "", false
	}
	return text, ok
}

// Bool returns a yes or no.
func (r *Reader) Bool(key string, options ...Option) (bool, bool) {
	return take[bool](r, key, wishFor("true", options), "true or false, without quotes")
}

// Date returns a day of the calendar. A date with a time of day is refused.
func (r *Reader) Date(key string, options ...Option) (Date, bool) {
	return take[Date](r, key, wishFor("2026-10-02", options), "a date as year-month-day, without quotes")
}

// Int returns a whole number from low to high.
func (r *Reader) Int(key string, low, high int, options ...Option) (int, bool) {
	w := wishFor(strconv.Itoa(min(max(1, low), high)), options)
	n, ok := take[int64](r, key, w, "a whole number without quotes")
	if ok && (n < int64(low) || n > int64(high)) {
		r.outOfRange(key, intRange(low, high))
		return 0, false
	}
	return int(n), ok
}

// Float returns a number. A whole number will do.
func (r *Reader) Float(key string, options ...Option) (float64, bool) {
	w := wishFor("2.5", options)
	const want = "a number without quotes"
	e, ok := r.need(key, w)
	if !ok {
		return 0, false
	}
	value, ok := asFloat(e.Value)
	switch {
	case !ok:
		r.wrongType(e, w, want)
		return 0, false
	case value < w.low || value > w.high:
		r.outOfRange(key, floatRange(w.low, w.high))
		return 0, false
	}
	return value, true
}

// asFloat accepts numbers of both kinds.
func asFloat(value any) (float64, bool) {
	switch v := value.(type) {
	case float64:
		return v, true
	case int64:
		return float64(v), true
	}
	return 0, false
}

// Texts returns a list of texts. If it is required it must not be empty. With
// OrSingle, one text without brackets is a list of one.
func (r *Reader) Texts(key string, options ...Option) ([]string, bool) {
	w := wishFor(`["..."]`, options)
	want := "a list of texts"
	if w.single {
		want = "a text or a list of texts"
	}
	e, ok := r.need(key, w)
	if !ok {
		return nil, false
	}
	items, ok := e.Value.([]Entry)
	if _, isText := e.Value.(string); isText && w.single {
		items, ok = []Entry{e}, true
	}
	if !ok {
		r.wrongType(e, w, want)
		return nil, false
	}
	if len(items) == 0 && w.required {
		r.empty(key, w)
		return nil, false
	}
	return r.allTexts(key, items)
}

// allTexts takes the texts of a list and reports each item that is none.
func (r *Reader) allTexts(key string, items []Entry) ([]string, bool) {
	texts, wrong := make([]string, 0, len(items)), 0
	for _, item := range items {
		text, ok := item.Value.(string)
		if !ok {
			item.Key = key
			if wrong++; wrong <= maxReported {
				r.wrongItem(item)
			}
			continue
		}
		texts = append(texts, text)
	}
	if wrong > 0 {
		return nil, false
	}
	return texts, true
}

// take returns a value of one type.
func take[T any](r *Reader, key string, w wish, want string) (value T, ok bool) {
	e, ok := r.need(key, w)
	if !ok {
		return value, false
	}
	if value, ok = e.Value.(T); !ok {
		r.wrongType(e, w, want)
	}
	return value, ok
}

// need looks a key up and reports it as missing if it is required.
func (r *Reader) need(key string, w wish) (Entry, bool) {
	e, ok := r.get(key)
	if !ok {
		if r != nil && w.required {
			r.missing(key, w)
		}
		return Entry{}, false
	}
	return e, !unreadable(e)
}
