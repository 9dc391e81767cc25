package render

import "html/template"

// Frame is what every page needs.
type Frame struct {
	framed
	W        *Words
	Lang     string
	Title    string
	Style    template.CSS
	Paper    template.CSS // what stands at the foot of every sheet when the page is printed
	Early    template.JS
	Policy   string
	Fleet    string
	Van      *vanView // nil on pages of the whole fleet
	Home     string   // the van's start
	Code     string
	Call     callView
	Mark     markView
	Revision template.HTML // a token until the page is sealed
	Scripts  []string
	Keep     keepView
	Report   *reportView // nil where there is no page to report about
}

type vanView struct{ Code, Name, SpecDate string }

// keepView has a page's guide kept on the phone.
type keepView struct{ Script, Worker, Scope string }

type callView struct {
	Helpline, Emergency, Hours, Mail string
	Dial, Urgent                     template.URL
}

// reportView is the link that opens a mail about a fault, or a message where the
// operator has no mail.
type reportView struct{ Address template.URL }

// markView is the QR symbol of a page.
type markView struct {
	Drawing template.HTML // what stands in an svg of Side by Side
	Side    int
	Reading string
}

// link is an entry in a list of pages.
type link struct{ Href, Code, Title, About string }

type familyView struct {
	ID, Letter, Title string
	Pages             []link
}

// startView is the van's start.
type startView struct {
	Frame
	Load                    string        // scripts that search needs, with spaces between
	Outside, Inside         template.HTML // plans
	Danger, Do, Wrong, Read []link
	Families                []familyView
}

type sectionView struct {
	ID    string
	Title template.HTML
	Body  template.HTML
}

// cautionView is a caution. Two that are equal are written alike.
type cautionView struct {
	Signal, Word               string
	Signs                      template.HTML
	Hazard, Consequence, Avoid template.HTML
}

// checkView is a check. Two that are equal are written alike.
type checkView struct {
	W             *Words
	Look, Yes, No template.HTML
	Meta          string
	Link          link // none on the page of the system itself
}

type checksView struct {
	Href, Title string
	Checks      []template.HTML
}

// systemView is the page of a fitted system.
type systemView struct {
	Frame
	Heading   string
	About     template.HTML
	Place     string
	Intro     template.HTML
	Note      string
	Pictures  []template.HTML
	Cautions  []template.HTML
	Sections  []sectionView
	Checks    []checksView
	TakesPart template.HTML // links, as SeeAlso
	SeeAlso   template.HTML
}

type stepView struct {
	Say     []string // the facts to say, for staff
	Text    template.HTML
	Caution template.HTML
	Link    link
	Where   string
	Wait    string
	Await   []string
}

type routineView struct {
	Frame
	Heading, About, Count string
	Key                   string // by which a phone remembers the routine
	Waits                 string
	Walk                  template.HTML
	Steps                 []stepView
}

type symptomView struct {
	Frame
	Heading, About string
	Grave, Urgent  bool
	First          []template.HTML
	Checks         []template.HTML
}

// ownView is a page of the operator's own.
type ownView struct {
	Frame
	Heading  string
	Intro    template.HTML
	Sections []sectionView
}

type tableCell struct{ Text, Class string }

// tableRow is a row; with Tick it can be ticked, and adds Value to the sum.
type tableRow struct {
	Tick, Value string
	Head        tableCell // the first, which the others are about
	Cells       []tableCell
}

type tableView struct {
	W           *Words
	ID          string
	Caption     string
	Heads       []tableCell
	Many        bool // columns
	Rows        []tableRow
	Tick        string // JSON for the script, "" where nothing can be ticked
	Assumptions []template.HTML
	Sources     []string
}

// goneView is the page of a label whose thing is gone, or of a van that is.
type goneView struct {
	Frame
	Heading, About string
	Says           []string
	NowTitle       string
	Now            []link // what stands in its place, nil for nothing
	On             []link // where to go from here
}

// fleetView is the list of vans, and the page for addresses that lead nowhere.
type fleetView struct {
	Frame
	Vans []link
}
