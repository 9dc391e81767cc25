package paper

import "fmt"

// Block is something that stands in the flow of a text: a paragraph, a table, a
// box.
type Block interface {
	// pieces cuts the block into what is never torn apart, from top to bottom.
	pieces(d *Doc, width float64) []piece
}

// piece is a slice of a block as wide as the column.
type piece struct {
	height float64
	draw   func(d *Doc, x, y float64) // nil for white space
	keep   bool                       // together with the next
	space  bool                       // not wanted at the head of a page
	leaf   bool                       // the next begins a page
	head   *piece                     // drawn again above it where it begins a page
	mark   *Mark
}

// Layout is how the pages of a flow look. Lengths are in millimetres.
type Layout struct {
	Page                     Size
	Left, Right, Top, Bottom float64
	// Foot draws what stands on every page outside the margins; pages is how
	// many there are. It may be nil.
	Foot func(d *Doc, page, pages int)
}

func (l Layout) width() float64  { return l.Page.Width - l.Left - l.Right }
func (l Layout) height() float64 { return l.Page.Height - l.Top - l.Bottom }

// Place tells on which page a mark is; 0 where it is not known (yet).
type Place func(id string) int

// passes is how often a flow is set at most until all page numbers stand.
const passes = 5

// Flow sets blocks one below the other on as many pages as they need. compose
// gives the blocks; since they may name pages of others, it is asked again
// until the page numbers are right.
func (s *Stock) Flow(about About, l Layout, compose func(page Place) []Block) (*Doc, error) {
	var last setting
	for range passes {
		next := setting{doc: s.New(about), layout: l, total: last.page, marks: map[string]int{}}
		next.set(compose(func(id string) int { return last.marks[id] }))
		if err := next.doc.Err(); err != nil {
			return nil, err
		}
		if next.same(last) {
			return next.doc, nil
		}
		last = next
	}
	return nil, fmt.Errorf("the page numbers do not settle")
}

// setting is one pass.
type setting struct {
	doc    *Doc
	layout Layout
	total  int // pages of the last pass
	marks  map[string]int
	page   int
	y      float64 // the lower end of what is set
	fresh  bool    // nothing is on the page yet
}

func (s *setting) same(other setting) bool {
	if s.page != other.page || len(s.marks) != len(other.marks) {
		return false
	}
	for id, page := range s.marks {
		if other.marks[id] != page {
			return false
		}
	}
	return true
}

func (s *setting) set(blocks []Block) {
	var all []piece
	for _, b := range blocks {
		all = append(all, b.pieces(s.doc, s.layout.width())...)
	}
	s.begin()
	for len(all) > 0 {
		n := 1 // pieces that stay together
		for n < len(all) && all[n-1].keep {
			n++
		}
		s.together(all[:n])
		all = all[n:]
	}
}

func (s *setting) begin() {
	s.page++
	s.doc.Page(s.layout.Page)
	if s.layout.Foot != nil {
		s.layout.Foot(s.doc, s.page, s.total)
	}
	s.y, s.fresh = s.layout.Top, true
}

// room is what is left of the page.
func (s *setting) room() float64 { return s.layout.Page.Height - s.layout.Bottom - s.y + 1e-6 }

// together sets pieces on one page if a page can hold them.
func (s *setting) together(list []piece) {
	var high float64
	for _, p := range list {
		high += p.height
	}
	if !s.fresh && high > s.room() && high <= s.layout.height() {
		s.begin()
	}
	for _, p := range list {
		s.one(p)
	}
}

func (s *setting) one(p piece) {
	if p.leaf {
		if !s.fresh {
			s.begin()
		}
		return
	}
	if p.space && s.fresh {
		return
	}
	if p.height > s.room() && !s.fresh {
		s.begin()
		if p.space {
			return
		}
	}
	if s.fresh && p.head != nil {
		p.head.draw(s.doc, s.layout.Left, s.y)
		s.y += p.head.height
	}
	if p.mark != nil {
		s.marks[p.mark.ID] = s.page
		if p.mark.Title != "" {
			s.doc.Bookmark(p.mark.Title, p.mark.Level, s.y)
		}
	}
	if p.draw != nil {
		p.draw(s.doc, s.layout.Left, s.y)
	}
	s.y += p.height
	if p.height > 0 {
		s.fresh = false
	}
}

// Mark gives the place of what follows a name; with a title it also stands in
// the outline that viewers show.
type Mark struct {
	ID, Title string
	Level     int // 0 is the top
}

func (m Mark) pieces(*Doc, float64) []piece { return []piece{{keep: true, mark: &m}} }

// NewPage makes what follows begin a page.
type NewPage struct{}

func (NewPage) pieces(*Doc, float64) []piece { return []piece{{leaf: true}} }

// Space is white space of so many millimetres; a page never begins with it.
type Space float64

func (s Space) pieces(*Doc, float64) []piece {
	return []piece{{height: float64(s), space: true}}
}

// Together keeps blocks on one page.
type Together []Block

func (t Together) pieces(d *Doc, width float64) []piece {
	var all []piece
	for _, b := range t {
		all = append(all, b.pieces(d, width)...)
	}
	for i := range all {
		all[i].keep = all[i].keep || i < len(all)-1
	}
	return all
}

// WithNext keeps a block with the one that follows.
type WithNext struct{ Block }

func (w WithNext) pieces(d *Doc, width float64) []piece {
	all := Together{w.Block}.pieces(d, width)
	if n := len(all); n > 0 {
		all[n-1].keep = true
	}
	return all
}

// Indented moves blocks to the right by so many millimetres.
type Indented struct {
	By     float64
	Blocks []Block
}

func (i Indented) pieces(d *Doc, width float64) []piece {
	var all []piece
	for _, b := range i.Blocks {
		all = append(all, b.pieces(d, width-i.By)...)
	}
	return moved(all, i.By)
}

// moved draws pieces further to the right.
func moved(list []piece, by float64) []piece {
	for n := range list {
		if draw := list[n].draw; draw != nil {
			list[n].draw = func(d *Doc, x, y float64) { draw(d, x+by, y) }
		}
		if head := list[n].head; head != nil {
			again := *head
			again.draw = func(d *Doc, x, y float64) { head.draw(d, x+by, y) }
			list[n].head = &again
		}
	}
	return list
}
