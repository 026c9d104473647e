package culture

// Sureness is how reliable a figure is.
type Sureness string

// The degrees of sureness.
const (
	Measured   Sureness = "measured"   // read in the source named, or computed from it
	Practice   Sureness = "practice"   // what growers, societies and advisers commonly say
	Assumption Sureness = "assumption" // ours; the source says what it agrees with
	Memory     Sureness = "memory"     // recalled and not looked up; tests must not rely on it
	Own        Sureness = "own"        // this garden's own figure, which replaces ours
)

// Figure is one number with its unit, range, source and sureness. Low to High is its plausible
// range: between sources, varieties or gardens, as the source says.
type Figure struct {
	Low, Value, High float64
	Unit             Unit
	Source           string // short names as in sources.csv, with remarks
	Sure             Sureness
}

// NamedFigure is a figure with its key and meaning.
type NamedFigure struct {
	Key     string
	Meaning string
	Figure
}

// Fact is something about a kind that is not a number: a caution, conflicting advice.
type Fact struct {
	About  string // one word: caution, humidity, frost, days, light, soak …
	Text   string
	Source string
	Sure   Sureness
}
