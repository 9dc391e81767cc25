package manifest

// Limits keep a damaged or hostile file from costing more than a moment. A real
// spec has a few hundred keys, four levels and some ten thousand bytes.
const (
	maxBytes    = 1 << 20 // of a file that a person writes
	maxDepth    = 32      // levels of tables and lists, together
	maxKeys     = 20000   // in a file that a person writes
	maxPath     = 1000    // bytes of all the names from the root to a key
	maxReported = 25      // problems of one kind at one spot

	maxQuotedLine = 16 << 10 // bytes of a line that is repeated in a problem
)

// limits are how much of one file is read.
type limits struct{ bytes, keys int }

// usual are the limits of a file that a person writes, kept those of one that
// the program keeps for a whole fleet: two thousand vans with a hundred labels
// each have some twenty million bytes and two million keys.
var (
	usual = limits{maxBytes, maxKeys}
	kept  = limits{64 << 20, 4_000_000}
)
