package manifest

import "testing"

func TestText(t *testing.T) {
	text, found := Text("page.en.md", []byte("\ufeff# The locker\n"))
	if string(text) != "# The locker\n" || len(found) != 1 || found[0].Code != "byte-order-mark" {
		t.Errorf("%q %v", text, briefs(found))
	}
	if text, found := Text("page.en.md", []byte("a\n\ufdd0")); text != nil || len(found) != 1 || found[0].Code != "unprintable" || found[0].Start.Line != 2 {
		t.Errorf("%q %v", text, briefs(found))
	}
	if text, found := Text("page.en.md", []byte("a\xffb")); text != nil || len(found) != 1 || found[0].Code != "not-utf-8" {
		t.Errorf("%q %v", text, briefs(found))
	}
}

// An escape cannot smuggle in what may not stand in a file.
func TestUnprintableTexts(t *testing.T) {
	for text, bad := range map[string]bool{
		`"\u0000"`: true, `"a\u0007"`: true, `"\uFDD0"`: true, `"\U0010FFFF"`: true, `"\u007f"`: true,
		`"\t \n \u00e9"`: false, "\"\"\"\na\r\nb\"\"\"": false,
	} {
		table, found := Parse("file.toml", []byte("k = "+text+"\n"))
		value, ok := NewReader(table, &found).Text("k")
		if bad != (len(found) == 1 && found[0].Code == "unprintable" && found[0].Start.Column == 5) || ok == bad {
			t.Errorf("%s: %q %v", text, value, briefs(found))
		}
	}
}
