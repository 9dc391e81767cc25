package figure

import (
	"encoding/xml"
	"io"
	"reflect"
	"strings"
	"testing"
)

var plotted = [][]string{
	{"-10", "36", "16", "2"}, {"-5", "36", "16", "3"}, {"0", "36", "16", "3"}, {"5", "36", "16", "4"},
	{"10", "36", "16", "6"}, {"15", "36", "16", "9"}, {"20", "36", "16", "16"},
}

var plotHeads = []string{"Outside", "Cooking & hot water", "And the fridge on gas", "And the heating"}

func drawn(rows [][]string) string {
	return Plot(SeriesOf(plotHeads, rows), Axes{Title: "Days of gas, by how cold it is outside", X: "Outside, °C", Y: "How many days all the gas on board lasts"})
}

func TestSeriesOf(t *testing.T) {
	got := SeriesOf([]string{"x", "a", "b", "c"}, [][]string{{"-5", "1", "", "two"}, {"0", "3", "4.5", ""}, {"", "9", "9", "9"}})
	want := []Series{{Name: "a", X: []float64{-5, 0}, Y: []float64{1, 3}}, {Name: "b", X: []float64{0}, Y: []float64{4.5}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, expected %+v", got, want)
	}
}

func TestPlotIsSmallAndWhole(t *testing.T) {
	svg := drawn(plotted)
	if len(svg) >= 2048 {
		t.Errorf("%d bytes, expected fewer than 2048", len(svg))
	}
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	if strings.Contains(svg, "style=") || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
		t.Error(svg)
	}
}

// Those who cannot see the drawing are told every point of it.
func TestPlotInWords(t *testing.T) {
	svg := drawn(plotted)
	for _, want := range []string{`role="img"`, "Days of gas, by how cold it is outside.", "And the heating: \u221210: 2, \u22125: 3, 0: 3, 5: 4, 10: 6, 15: 9, 20: 16.", "Cooking &amp; hot water"} {
		if !strings.Contains(svg, want) {
			t.Errorf("%q is not in %s", want, svg)
		}
	}
}

// The lines stay within the frame, and one point or one temperature is drawn.
func TestPlotFrame(t *testing.T) {
	for _, rows := range [][][]string{plotted, plotted[:1], {{"0", "0.5", "", ""}, {"0", "1", "", ""}}, {{"-10", "0", "", ""}, {"20", "0", "", ""}}, {{"-10", "1234", "999", "1"}, {"20", "70000", "1", ""}}} {
		all := SeriesOf(plotHeads, rows)
		f := frameOf(all)
		for _, line := range all {
			for i := range line.X {
				if line.X[i] < f.low || line.X[i] > f.high || line.Y[i] > f.top || f.top/f.step > 5 {
					t.Errorf("%g, %g in %+v", line.X[i], line.Y[i], f)
				}
			}
		}
		if svg := drawn(rows); !strings.HasSuffix(svg, "</svg>") || strings.Contains(svg, "NaN") {
			t.Error(svg)
		}
	}
	if Plot(nil, Axes{}) != "" {
		t.Error("a plot of nothing")
	}
}

func TestRoundStep(t *testing.T) {
	for v, want := range map[float64]float64{0: 1, 0.4: 1, 1: 1, 1.1: 2, 2: 2, 3: 5, 5.1: 10, 10: 10, 11: 20, 49: 50, 51: 100} {
		if got := roundStep(v); got != want {
			t.Errorf("roundStep(%g) is %g, expected %g", v, got, want)
		}
	}
}
