package deps

// arrows lists every package with the packages of the project that it may
// import. Data flows one way, from the pattern file to the paper; an arrow
// against the stream is a fault of the design, not of this list. Test files
// are free, so that a card can be tested with a real pattern.
var arrows = map[string][]string{
	"geometry":             {},
	"geometry/unit":        {},
	"geometry/thread":      {},
	"geometry/survey":      {"geometry"},
	"geometry/holes":       {"geometry", "geometry/unit"},
	"sequence":             {"geometry"},
	"sequence/tension":     {"geometry/thread", "geometry/unit"},
	"sequence/plan":        {"geometry", "geometry/thread", "geometry/unit", "sequence", "sequence/tension"},
	"sequence/judge":       {"geometry", "sequence", "sequence/plan"},
	"sequence/overhaul":    {"geometry/unit", "sequence", "sequence/plan", "sequence/tension"},
	"sequence/interaction": {"geometry", "geometry/unit", "sequence", "sequence/plan", "sequence/tension"},
	"patterns/problem":     {},
	"patterns/dxf":         {"geometry", "patterns/problem"},
	"patterns": {
		"geometry",
		"geometry/holes",
		"geometry/survey",
		"geometry/thread",
		"geometry/unit",
		"patterns/dxf",
		"patterns/problem",
		"sequence",
		"sequence/interaction",
		"sequence/plan",
		"sequence/tension",
	},
	"render/scene":           {},
	"render/font":            {"render/scene"},
	"render/scene/scenetest": {"render/font", "render/scene"},
	"render/diagram":         {"geometry", "render/font", "render/scene", "sequence", "sequence/plan"},
	"render/words":           {},
	"render/sheet":           {"render/font", "render/scene", "render/words", "sequence/plan"},
	"render/sheet/card": {
		"geometry",
		"geometry/unit",
		"render/diagram",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/words",
		"sequence",
		"sequence/plan",
		"sequence/tension",
	},
	"render/sheet/book": {
		"geometry/unit",
		"render/diagram",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/sheet/card",
		"render/sheet/condition",
		"render/sheet/tray",
		"render/words",
		"sequence/overhaul",
		"sequence/plan",
	},
	"render/sheet/forecast": {
		"render/diagram",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/words",
		"sequence/interaction",
		"sequence/plan",
	},
	"render/sheet/tile": {
		"render/font",
		"render/scene",
		"render/sheet",
		"render/words",
	},
	"render/sheet/fullsize": {
		"geometry",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/sheet/tile",
		"render/words",
	},
	"render/sheet/tray": {
		"geometry",
		"geometry/unit",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/sheet/fullsize",
		"render/sheet/tile",
		"render/words",
		"sequence/plan",
		"sequence/tension",
	},
	"render/sheet/condition": {
		"render/diagram",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/words",
		"sequence/plan",
	},
	"render/sheet/drawing": {
		"render/diagram",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/sheet/fullsize",
		"render/sheet/tile",
		"render/words",
		"sequence/plan",
	},
	"render/pdf": {"render/font", "render/scene"},
	"render/png": {"render/font", "render/scene"},
	"render/svg": {"render/font", "render/scene"},
	"render":     {"render/pdf", "render/png", "render/scene", "render/svg"},
	"cmd/internal/job": {
		"geometry",
		"geometry/survey",
		"geometry/unit",
		"patterns",
		"patterns/problem",
		"render",
		"render/font",
		"render/scene",
		"render/sheet",
		"render/sheet/book",
		"render/sheet/card",
		"render/sheet/condition",
		"render/sheet/drawing",
		"render/sheet/forecast",
		"render/sheet/tray",
		"render/words",
		"sequence",
		"sequence/interaction",
		"sequence/judge",
		"sequence/overhaul",
		"sequence/plan",
		"sequence/tension",
	},
	"cmd/internal/cli": {
		"cmd/internal/job",
		"geometry",
		"geometry/holes",
		"geometry/survey",
		"geometry/thread",
		"geometry/unit",
		"patterns",
		"patterns/dxf",
		"patterns/problem",
		"render",
		"render/sheet",
		"render/sheet/book",
		"render/sheet/card",
		"render/words",
		"sequence",
		"sequence/interaction",
		"sequence/judge",
		"sequence/overhaul",
		"sequence/plan",
		"sequence/tension",
	},
	"cmd/drawdown":      {"cmd/internal/cli"},
	"cmd/internal/deps": {},
}

// outside lists every outside module's package with the folders that may
// import it, and everything below them.
var outside = map[string][]string{
	"github.com/fogleman/gg":            {"render/png"},
	"github.com/golang/freetype":        {"render/png"},
	"github.com/jung-kurt/gofpdf":       {"render/pdf"},
	"gopkg.in/yaml.v3":                  {"patterns"},
	"gonum.org/v1/gonum":                {"geometry/survey", "sequence/interaction"},
	"github.com/spf13/pflag":            {"cmd"},
	"github.com/google/renameio/v2":     {"cmd/internal/cli"},
	"github.com/schollz/progressbar/v3": {"cmd/internal/cli"},
	"golang.org/x/term":                 {"cmd/internal/cli"},
	"github.com/klauspost/compress":     {"render/pdf", "render/png"},
	"golang.org/x/image":                {"render/font", "render/png"},
	"golang.org/x/text/encoding":        {"patterns/dxf"},
	"golang.org/x/text/unicode/norm":    {"patterns", "render/font"},
	"golang.org/x/text/width":           {"patterns/problem"},
}

// inTestsOnly lists the outside modules that only test files may import. Test
// files may also import all that outside names.
var inTestsOnly = []string{
	"github.com/google/go-cmp",
	"github.com/rogpeppe/go-internal",
	"pgregory.net/rapid",
}

// never lists the imports that no change of arrows may bring in: a folder and
// what neither it nor anything below it imports outside its tests.
var never = []rule{
	{in: "geometry", no: []string{"time", "os"}, because: "calculation has no clock and no disk"},
	{in: "sequence", no: []string{"time", "os"}, because: "calculation has no clock and no disk"},
	{in: "geometry", no: []string{"drawdown/sequence", "drawdown/patterns", "drawdown/render", "drawdown/cmd"}, because: "geometry stands below all else"},
	{in: "sequence", no: []string{"drawdown/patterns", "drawdown/render", "drawdown/cmd"}, because: "calculation sees no file format and no paper"},
	{in: "patterns", no: []string{"drawdown/render", "drawdown/cmd"}, because: "the reader knows no paper"},
	{in: "render", no: []string{"drawdown/patterns", "drawdown/cmd"}, because: "paper is drawn from the plan, not from the file"},
	{in: "render/png", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/pdf", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/svg", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/scene", no: []string{"drawdown/geometry", "drawdown/sequence"}, because: "a scene knows no bolt"},
	{in: "render/font", no: []string{"drawdown/geometry", "drawdown/sequence"}, because: "type knows no bolt"},
}

var backendsNever = []string{
	"drawdown/geometry", "drawdown/sequence", "drawdown/render/diagram", "drawdown/render/sheet",
}

// rule is an import that a folder never has.
type rule struct {
	in      string
	no      []string
	because string
}
