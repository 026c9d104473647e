package house

// module is the path before every room's name.
const module = "eyeup/"

// rooms says which rooms each room may enter. It is policy: change it in a commit of its
// own that says why, never to make a build pass. ARCHITECTURE.md says what each is for.
var rooms = map[string]string{
	"quantity": "",
	"civil":    "",
	"odds":     "",
	"air":      "quantity",
	"sun":      "quantity civil",
	"weather":  "quantity civil odds sun",
	"frost":    "quantity civil odds weather sun",
	"growth":   "quantity civil odds",
	"culture":  "quantity growth",
	"place":    "quantity civil sun air weather odds",
	"keeping":  "quantity civil odds air culture",
	"stock":    "quantity civil",
	"outlook":  "civil quantity odds stock keeping culture",
	"supply":   "quantity odds culture",
	"season":   "quantity civil odds sun weather frost growth culture place keeping stock outlook supply solve",

	"season/certificate": "",
	"season/prove":       "civil season season/certificate solve",

	"season/check": "quantity civil odds weather growth culture place keeping stock season sun supply",
	"week":         "quantity civil culture growth place season stock",
	"solve":        "quantity",
	"patch":        "quantity civil odds stock culture outlook solve",

	"place/logger": "quantity civil place weather/reading",

	"weather/reading":    "quantity civil sun weather",
	"weather/ghcn":       "quantity civil weather weather/reading",
	"weather/meteireann": "quantity civil sun weather weather/reading",
	"weather/epw":        "quantity civil sun weather weather/reading",
	"weather/tmy3":       "quantity civil sun weather weather/reading",
	"weather/table":      "quantity civil sun weather weather/reading",

	"internal/archive":  "quantity civil weather weather/ghcn weather/reading sun",
	"internal/book":     "quantity civil stock",
	"internal/demo":     "quantity civil stock",
	"internal/exchange": "quantity civil odds sun weather weather/ghcn weather/meteireann weather/epw weather/tmy3 weather/table weather/reading place place/logger culture stock supply patch",
	"internal/picture":  "quantity civil odds season",
	"internal/highs":    "quantity solve",
	"internal/sheet":    "quantity civil odds stock season supply internal/picture",

	"internal/report":    "quantity civil odds",
	"internal/garden":    "quantity civil sun weather frost culture place stock season internal/demo internal/exchange",
	"internal/stockbook": "quantity civil odds culture place keeping stock outlook internal/book internal/demo internal/exchange internal/garden internal/report",
	"internal/reckon":    "quantity civil odds air sun weather frost growth culture place place/logger keeping stock supply season internal/archive internal/exchange internal/garden internal/report",
	"internal/planting":  "quantity civil odds culture place stock outlook solve patch internal/exchange internal/garden internal/highs internal/report internal/stockbook",
	"internal/plans":     "quantity civil odds stock season season/certificate season/prove week internal/exchange internal/garden internal/highs internal/picture internal/report internal/stockbook",
	"internal/paper":     "quantity civil stock supply season week internal/exchange internal/garden internal/plans internal/planting internal/reckon internal/report internal/sheet internal/stockbook",
	"internal/desk":      "quantity civil odds sun weather culture place stock season week internal/exchange internal/garden internal/paper internal/plans internal/planting internal/reckon internal/report internal/stockbook",
	"internal/sources":   "civil culture place keeping stock season week internal/desk internal/exchange internal/garden internal/plans internal/reckon internal/report internal/stockbook",
	"internal/page":      "quantity civil odds stock season week internal/desk internal/garden internal/paper internal/plans internal/planting internal/reckon internal/sources internal/stockbook",
	"cmd/eyeup":          "quantity civil internal/desk internal/garden internal/page internal/paper internal/plans internal/planting internal/reckon internal/report internal/stockbook",
}

// blind names rooms that may not see certain others, not even through a third: what checks a
// thing shares no code with what made it.
var blind = map[string]string{
	"season/check":       "season/certificate season/prove",
	"season/certificate": "season season/check season/prove solve",
}

// aids are packages for tests alone; nothing but tests may enter them.
var aids = []string{"internal/house", "internal/opendata", "internal/faults", "internal/crosscheck", "internal/same", "internal/testkit", "internal/torture", "weather/reading/readingtest"}

// outside is what a pure room may not reach for: it neither reads the world nor writes to it.
var outside = []string{
	"database/sql", "html/template", "io/ioutil", "log", "log/slog",
	"net", "net/http", "os", "os/exec", "os/signal", "syscall",
}

// through is what a pure room may not reach even through a library.
var through = []string{"database/sql", "log", "log/slog", "net", "net/http", "os/exec", "os/signal"}
