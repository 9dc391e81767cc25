package render

import "testing"

// A page gets the rules that it uses: those whose classes and elements it has or
// one of its scripts gives, in and out of conditions; no empty condition.
func TestSheetOfAPage(t *testing.T) {
	s := newSheet(`/* words */ *{x:0}[hidden]{x:0}:focus{x:0}a{x:1}table td,p>th{x:9}
.one{x:2}.two,.one .three{x:3}
@media print{.two{x:4}p{x:5}}@media screen{.two{x:6}}
.four.one:hover>b{x:7}.sum{x:8}h2 a{x:1}.first:not(.danger){x:2}html.night :is(img,.mark svg){x:3}.bad{x:4}:has(.one)>.two{x:5}`, map[string]string{
		"": `e.className = "night"`, "tick": `e.className = "sum tally"; create("h2").append(create("a"))`})
	const all = `*{x:0}[hidden]{x:0}:focus{x:0}`
	for page, want := range map[string]string{
		`<p>`:                                all + `@media print{p{x:5}}`,
		`<a>`:                                all + `a{x:1}`,
		`<p class="one">`:                    all + `.one{x:2}@media print{p{x:5}}`,
		`<p class="one"><b class="a three">`: all + `.one{x:2}.one .three{x:3}@media print{p{x:5}}`,
		`<p class="two">`:                    all + `.two{x:3}@media print{.two{x:4}p{x:5}}@media screen{.two{x:6}}`,
		`<table><td>`:                        all + `table td{x:9}`,
		`<i class="four one">`:               all + `.one{x:2}`,
		`<i class="four one"><b>`:            all + `.one{x:2}.four.one:hover>b{x:7}`,
		`<i class="first">`:                  all + `.first:not(.danger){x:2}`,
		`<html>`:                             all + `html.night :is(img,.mark svg){x:3}`,
		`<html><img>`:                        all + `html.night :is(img,.mark svg){x:3}`,
		`<html><i class="mark"><svg>`:        all + `html.night :is(img,.mark svg){x:3}`,
		`<i><script src="../../parts/tick-0a1b.js">`:     all + `a{x:1}.sum{x:8}h2 a{x:1}`,
		`<i><script src="../../parts/routine-0a1b.js">`:  all,
		`<i data-tick="{&#34;tone&#34;:&#34;bad&#34;}">`: all + `.bad{x:4}`,
		`<i class="one"><i class="two">`:                 all + `.one{x:2}.two{x:3}@media print{.two{x:4}}@media screen{.two{x:6}}:has(.one)>.two{x:5}`,
	} {
		if got := string(s.used([]byte(page))); got != want {
			t.Errorf("%s\n got %s\nwant %s", page, got, want)
		}
	}
}

// Of the palettes a page gets the colours that its rules take.
func TestColoursOfAPage(t *testing.T) {
	s := newSheet(`:root{color-scheme:light dark;--a:#fff;--b:#000;--c-d:1px}.one{color:var(--a)}.two{color:var(--b);margin:var(--c-d)}@media print{:root{--a:#000;--b:#fff}}`, nil)
	for page, want := range map[string]string{
		`<p>`:             `:root{color-scheme:light dark;}@media print{:root{}}`,
		`<p class="one">`: `:root{color-scheme:light dark;--a:#fff;}.one{color:var(--a)}@media print{:root{--a:#000;}}`,
		`<p class="two">`: `:root{color-scheme:light dark;--b:#000;--c-d:1px}.two{color:var(--b);margin:var(--c-d)}@media print{:root{--b:#fff}}`,
	} {
		if got := string(s.used([]byte(page))); got != want {
			t.Errorf("%s\n got %s\nwant %s", page, got, want)
		}
	}
}
