package render

import "testing"

func TestSignsAreDrawnOnce(t *testing.T) {
	const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 48 48">`
	page := "<p>" + head + "<a/></svg>" + head + "<b/></svg>" + head + "<a/></svg>" + `<svg viewBox="0 0 9 9"><a/></svg>`
	want := `<p><svg viewBox="0 0 48 48"><g id="x-s1"><a/></g></svg><svg viewBox="0 0 48 48"><b/></svg><svg viewBox="0 0 48 48"><use href="#x-s1"/></svg><svg viewBox="0 0 9 9"><a/></svg>`
	if got := string(drawOnce(nil, []byte(page))); got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}
