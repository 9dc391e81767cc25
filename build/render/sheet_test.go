package render

import "testing"

// A page gets the rules that it uses: those without a class, those whose classes
// it has or a script gives, in and out of conditions; no empty condition.
func TestSheetOfAPage(t *testing.T) {
	s := newSheet(`/* words */ a{x:1}table td,p>th{x:9}
.one{x:2}.two,.one .three{x:3}
@media print{.two{x:4}p{x:5}}@media screen{.two{x:6}}
.four.one:hover>b{x:7}.sum{x:8}`, `e.className = "sum"`)
	for page, want := range map[string]string{
		`<p>`:                                `a{x:1}@media print{p{x:5}}.sum{x:8}`,
		`<p class="one">`:                    `a{x:1}.one{x:2}@media print{p{x:5}}.sum{x:8}`,
		`<p class="one"><b class="a three">`: `a{x:1}.one{x:2}.two,.one .three{x:3}@media print{p{x:5}}.sum{x:8}`,
		`<p class="two">`:                    `a{x:1}.two,.one .three{x:3}@media print{.two{x:4}p{x:5}}@media screen{.two{x:6}}.sum{x:8}`,
		`<table><td>`:                        `a{x:1}table td,p>th{x:9}@media print{p{x:5}}.sum{x:8}`,
		`<p class="four one">`:               `a{x:1}.one{x:2}@media print{p{x:5}}.four.one:hover>b{x:7}.sum{x:8}`,
	} {
		if got := s.used([]byte(page)); got != want {
			t.Errorf("%s\n got %s\nwant %s", page, got, want)
		}
	}
}
