package manifest

import "testing"

func TestText(t *testing.T) {
	text, found := Text("page.en.md", []byte("\ufeff# The locker\n"))
	if string(text) != "# The locker\n" || len(found) != 1 || found[0].Code != "byte-order-mark" {
		t.Errorf("%q %v", text, briefs(found))
	}
	if text, found := Text("page.en.md", []byte("a\xffb")); text != nil || len(found) != 1 || found[0].Code != "not-utf-8" {
		t.Errorf("%q %v", text, briefs(found))
	}
}
