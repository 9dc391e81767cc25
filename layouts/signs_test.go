package layouts

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// signLimit keeps a sign small: a hirer page carries several within its budget.
const signLimit = 900

const (
	signNamespace = "http://www.w3.org/2000/svg"
	signViewBox   = "0 0 48 48"
)

// signNames are the signs the pages may show, by ISO 7010 identifier.
var signNames = []string{
	"E001", "E002", "E003", "F001", "M001", "M002", "M020", "P001", "P003",
	"W001", "W012", "W015", "W016", "W017", "W021", "W023", "W024", "W026",
}

// signColours gives, for each family of signs, its safety colour and then what
// else it may be drawn in: ISO 3864 values, except that white is pure white so
// that it stands out enough from green.
var signColours = map[byte][]string{
	'W': {"#F9A800", "#2B2B2C"},
	'P': {"#9B2423", "#2B2B2C", "#FFFFFF"},
	'M': {"#005387", "#FFFFFF"},
	'E': {"#237F52", "#FFFFFF"},
	'F': {"#9B2423", "#FFFFFF"},
}

// signShapes lists the elements of a sign and what each takes besides paint.
var signShapes = map[string][]string{
	"g":       {},
	"path":    {"d"},
	"polygon": {"points"},
	"circle":  {"cx", "cy", "r"},
	"rect":    {"x", "y", "width", "height", "rx"},
}

// signPaint gives every attribute that any shape may have the form its value
// must take. Colours are held against the sign's family instead.
var signPaint = map[string]*regexp.Regexp{
	"stroke-width":    signNumber,
	"stroke-linecap":  regexp.MustCompile(`^round$`),
	"stroke-linejoin": regexp.MustCompile(`^round$`),
	"fill-rule":       regexp.MustCompile(`^evenodd$`),
}

var (
	signNumber = regexp.MustCompile(`^(\d+(\.\d)?|\.\d)$`)
	signPath   = regexp.MustCompile(`^M[MmLlHhVvCcSsQqTtAaZz0-9. -]+$`)
	signPoints = regexp.MustCompile(`^[0-9. -]+$`)
	// signFine finds a coordinate finer than a tenth, which no eye would see.
	signFine = regexp.MustCompile(`\.\d\d`)
)

// signFiles reads the folder, not the embedded copy, so that a stray file in
// it is seen as well.
func signFiles() fs.FS { return os.DirFS("signs") }

func TestSignsPresent(t *testing.T) {
	entries, err := fs.ReadDir(signFiles(), ".")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		name, isSVG := strings.CutSuffix(e.Name(), ".svg")
		if !isSVG || e.IsDir() {
			t.Errorf("signs/%s is not a sign", e.Name())
			continue
		}
		got = append(got, name)
	}
	if !slices.Equal(got, signNames) {
		t.Errorf("signs there: %v\nwanted: %v", got, signNames)
	}
}

func TestSignsDrawn(t *testing.T) {
	for _, name := range signNames {
		t.Run(name, func(t *testing.T) {
			text, err := fs.ReadFile(signFiles(), name+".svg")
			if err != nil {
				t.Fatal(err)
			}
			if err := checkSign(name, string(text)); err != nil {
				t.Error(err)
			}
		})
	}
}

// TestSignCheckRefuses makes sure that the check itself would notice.
func TestSignCheckRefuses(t *testing.T) {
	const (
		open  = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 48 48">`
		paint = `<path d="M1 1h2v2z" fill="#005387"/>`
		whole = open + paint + `</svg>`
	)
	if err := checkSign("M001", whole); err != nil {
		t.Fatalf("a good sign is refused: %v", err)
	}
	in := func(body string) string { return open + paint + body + `</svg>` }
	bad := map[string]string{
		"empty":               "",
		"not closed":          open + paint,
		"no namespace":        strings.Replace(whole, ` xmlns="http://www.w3.org/2000/svg"`, "", 1),
		"other viewBox":       strings.Replace(whole, "48 48", "24 24", 1),
		"width":               strings.Replace(whole, "<svg", `<svg width="48"`, 1),
		"second root":         whole + whole,
		"declaration":         `<?xml version="1.0"?>` + whole,
		"document type":       `<!DOCTYPE svg>` + whole,
		"comment":             in(`<!-- note -->`),
		"text":                in(`danger`),
		"script":              in(`<script>x</script>`),
		"link":                in(`<a href="#"/>`),
		"reference":           in(`<use href="#x"/>`),
		"picture":             in(`<image href="x.png"/>`),
		"style element":       in(`<style>path{}</style>`),
		"metadata":            in(`<metadata/>`),
		"svg inside":          in(`<svg/>`),
		"foreign element":     in(`<path xmlns="urn:x" d="M1 1z"/>`),
		"style attribute":     in(`<path d="M1 1z" style="fill:red"/>`),
		"id":                  in(`<path d="M1 1z" id="x"/>`),
		"handler":             in(`<path d="M1 1z" onclick="x"/>`),
		"prefixed attribute":  in(`<path d="M1 1z" xlink:href="#x"/>`),
		"another shape's":     in(`<path d="M1 1z" r="2"/>`),
		"attribute twice":     in(`<path d="M1 1z" d="M2 2z"/>`),
		"word for a colour":   in(`<path d="M1 1z" fill="white"/>`),
		"other family's":      in(`<path d="M1 1z" fill="#237F52"/>`),
		"paint server":        in(`<path d="M1 1z" fill="url(#x)"/>`),
		"too fine":            in(`<path d="M1.25 1z"/>`),
		"path that is none":   in(`<path d="url(x)"/>`),
		"number that is none": in(`<circle cx="1" cy="1" r="1e9"/>`),
		"no safety colour":    open + `<path d="M1 1z" fill="#FFFFFF"/></svg>`,
		"too large":           in(strings.Repeat(paint, 40)),
	}
	for why, text := range bad {
		if checkSign("M001", text) == nil {
			t.Errorf("%s: let through", why)
		}
	}
}

// checkSign says what keeps text from being the picture of the named sign.
func checkSign(name, text string) error {
	if len(text) > signLimit {
		return fmt.Errorf("%d bytes, limit %d", len(text), signLimit)
	}
	if safety := signColours[name[0]][0]; !strings.Contains(text, safety) {
		return fmt.Errorf("safety colour %s is missing", safety)
	}
	reader := xml.NewDecoder(strings.NewReader(text))
	depth, roots := 0, 0
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err == nil {
			err = checkSignToken(name, depth, token)
		}
		if err != nil {
			return err
		}
		switch token.(type) {
		case xml.StartElement:
			if depth == 0 {
				roots++
			}
			depth++
		case xml.EndElement:
			depth--
		}
	}
	if roots != 1 {
		return fmt.Errorf("%d root elements", roots)
	}
	return nil
}

// checkSignToken holds one piece of the drawing, so many elements deep,
// against what may stand there.
func checkSignToken(name string, depth int, token xml.Token) error {
	switch token := token.(type) {
	case xml.StartElement:
		if depth == 0 {
			return checkSignRoot(token)
		}
		return checkSignShape(name, token)
	case xml.EndElement:
		return nil
	case xml.CharData:
		if strings.TrimSpace(string(token)) == "" {
			return nil
		}
		return fmt.Errorf("text %q", token)
	}
	return fmt.Errorf("%T is neither a shape nor its end", token)
}

func checkSignRoot(e xml.StartElement) error {
	if e.Name != (xml.Name{Space: signNamespace, Local: "svg"}) {
		return fmt.Errorf("root is %v", e.Name)
	}
	want := []xml.Attr{
		{Name: xml.Name{Local: "xmlns"}, Value: signNamespace},
		{Name: xml.Name{Local: "viewBox"}, Value: signViewBox},
	}
	if !slices.Equal(e.Attr, want) {
		return fmt.Errorf("root has %v, wanted %v", e.Attr, want)
	}
	return nil
}

func checkSignShape(name string, e xml.StartElement) error {
	own, known := signShapes[e.Name.Local]
	if !known || e.Name.Space != signNamespace {
		return fmt.Errorf("element %v", e.Name)
	}
	seen := map[xml.Name]bool{}
	for _, a := range e.Attr {
		if seen[a.Name] {
			return fmt.Errorf("%s: %s is there twice", e.Name.Local, a.Name.Local)
		}
		seen[a.Name] = true
		if err := checkSignAttribute(name, own, a); err != nil {
			return fmt.Errorf("%s: %w", e.Name.Local, err)
		}
	}
	return nil
}

func checkSignAttribute(name string, own []string, a xml.Attr) error {
	key := a.Name.Local
	paint, isPaint := signPaint[key]
	good := false
	switch {
	case a.Name.Space != "":
		return fmt.Errorf("attribute %v", a.Name)
	case key == "fill" || key == "stroke":
		good = a.Value == "none" || slices.Contains(signColours[name[0]], a.Value)
	case isPaint:
		good = paint.MatchString(a.Value)
	case !slices.Contains(own, key):
		return fmt.Errorf("attribute %s", key)
	case key == "d":
		good = signPath.MatchString(a.Value)
	case key == "points":
		good = signPoints.MatchString(a.Value)
	default:
		good = signNumber.MatchString(a.Value)
	}
	if !good || key != "fill" && key != "stroke" && signFine.MatchString(a.Value) {
		return fmt.Errorf("%s=%q", key, a.Value)
	}
	return nil
}
