package manifest

// Limits keep a damaged or hostile file from costing more than a moment. A real
// spec has a few hundred keys, four levels and some ten thousand bytes.
const (
	maxBytes    = 1 << 20 // of a file
	maxDepth    = 32      // levels of tables and lists, together
	maxKeys     = 20000   // in a file
	maxPath     = 1000    // bytes of all the names from the root to a key
	maxReported = 25      // problems of one kind at one spot

	maxQuotedLine = 16 << 10 // bytes of a line that is repeated in a problem
)
