package culture

// Sureness says how much a figure is worth.
type Sureness string

// How sure a figure can be.
const (
	Measured   Sureness = "measured"   // read in the source named, or reckoned from what stands there
	Practice   Sureness = "practice"   // what growers, societies and advisers commonly say
	Assumption Sureness = "assumption" // ours; the source says what it agrees with
	Memory     Sureness = "memory"     // recalled and not looked up; nothing may be proved by it
	Own        Sureness = "own"        // this garden's own figure, put in place of ours
)

// Figure is one number with all that is known of it. Low to High is the range in which
// it may well lie: between sources, sorts or gardens, as the source says.
type Figure struct {
	Low, Value, High float64
	Unit             Unit
	Source           string // short names as in sources.csv, with remarks
	Sure             Sureness
}

// NamedFigure is a figure under its key, with what it means in words.
type NamedFigure struct {
	Key     string
	Meaning string
	Figure
}

// Fact is something about a kind that is not a number: a caution, a conflict of advice.
type Fact struct {
	About  string // one word: caution, humidity, frost, days, light, soak …
	Text   string
	Source string
	Sure   Sureness
}
