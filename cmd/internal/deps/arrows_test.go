package deps

// arrows lists every package with the packages of the project that it may
// import. Data flows one way, from the pattern file to the paper; an import in
// the other direction is a fault of the design, not of this list. Test files
// are not restricted, so that a card can be tested with a real pattern.
var arrows = map[string][]string{
	"cmd/drawdown":                    {"cmd/internal/cli"},
	"cmd/internal/bench":              {"cmd/internal/bench/certificate", "cmd/internal/bench/drafts", "cmd/internal/bench/gate", "cmd/internal/files", "cmd/internal/job", "cmd/internal/record", "cmd/internal/report", "patterns", "patterns/edit", "patterns/problem", "patterns/scan", "patterns/source", "render", "render/page", "render/page/editpage", "render/sheet", "render/sheet/card", "render/sheet/lettered", "render/sheet/shopping", "render/words", "sequence/overhaul", "sequence/plan", "sequence/run", "sequence/run/teardown", "sequence/tension/wrench"},
	"cmd/internal/bench/benchtest":    {"cmd/internal/bench", "render/page/pagetest", "render/words"}, // only for tests
	"cmd/internal/bench/certificate":  {"cmd/internal/files"},
	"cmd/internal/bench/drafts":       {"cmd/internal/job", "geometry", "patterns", "patterns/edit", "patterns/problem", "patterns/source", "render/page", "render/page/editpage", "sequence", "sequence/plan", "sequence/run"},
	"cmd/internal/bench/gate":         {"cmd/internal/files"},
	"cmd/internal/cli":                {"cmd/internal/bench", "cmd/internal/files", "cmd/internal/flag", "cmd/internal/job", "cmd/internal/licences", "cmd/internal/machine", "cmd/internal/record", "cmd/internal/report", "cmd/internal/shell", "geometry", "geometry/holes", "geometry/survey", "geometry/thread", "geometry/trace", "geometry/trace/photo", "geometry/unit", "patterns", "patterns/drawn", "patterns/dxf", "patterns/meaning", "patterns/problem", "patterns/scan", "patterns/schema", "patterns/source", "patterns/table", "patterns/writing", "render", "render/sheet", "render/sheet/book", "render/sheet/card", "render/words", "sequence", "sequence/exercise", "sequence/figures", "sequence/interaction", "sequence/interaction/compliance", "sequence/interaction/limits", "sequence/interaction/prediction", "sequence/interaction/setup", "sequence/judge", "sequence/plan", "sequence/revision", "sequence/run", "sequence/service", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/stiffness", "sequence/tension/strength", "sequence/tension/wrench"},
	"cmd/internal/deps":               {},
	"cmd/internal/files":              {"cmd/internal/machine", "render"},
	"cmd/internal/flag":               {"cmd/internal/files", "cmd/internal/job", "cmd/internal/shell", "geometry/unit", "patterns/problem", "render", "render/sheet", "render/words", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/tension/stiffness"},
	"cmd/internal/job":                {"cmd/internal/record", "geometry", "geometry/expression", "geometry/survey", "geometry/trace", "geometry/trace/fixes", "patterns", "patterns/drawn", "patterns/fixes", "patterns/machine", "patterns/meaning", "patterns/meant", "patterns/measured", "patterns/measures", "patterns/mechanics", "patterns/places", "patterns/problem", "patterns/scan", "patterns/source", "patterns/table", "patterns/texts", "patterns/wrenches", "patterns/writing", "render", "render/font", "render/frames", "render/gif", "render/imprint", "render/player", "render/scene", "render/sheet", "render/sheet/book", "render/sheet/card", "render/sheet/clampload", "render/sheet/condition", "render/sheet/drawing", "render/sheet/forecast", "render/sheet/handout", "render/sheet/lettered", "render/sheet/machineshop", "render/sheet/proof", "render/sheet/readings", "render/sheet/record", "render/sheet/revised", "render/sheet/shopping", "render/sheet/target", "render/sheet/tray", "render/words", "sequence", "sequence/exercise", "sequence/figures", "sequence/interaction", "sequence/interaction/prediction", "sequence/interaction/setup", "sequence/judge", "sequence/overhaul", "sequence/plan", "sequence/run", "sequence/run/teardown", "sequence/service", "sequence/stages", "sequence/tension/wrench"},
	"cmd/internal/licences":           {},
	"cmd/internal/machine":            {},
	"cmd/internal/record":             {"cmd/internal/machine", "cmd/internal/record/postgres", "cmd/internal/record/sqlite", "sequence/run"},
	"cmd/internal/record/postgres":    {},
	"cmd/internal/record/servertest":  {"geometry/testkit"}, // only for tests
	"cmd/internal/record/sqlite":      {},
	"cmd/internal/report":             {"cmd/internal/job", "geometry", "geometry/family", "geometry/survey", "geometry/trace", "geometry/unit", "patterns/problem", "patterns/writing", "render/sheet/proof", "render/words", "sequence", "sequence/figures", "sequence/interaction", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/prediction", "sequence/interaction/procedure", "sequence/interaction/setup", "sequence/judge", "sequence/plan", "sequence/service", "sequence/tension/screw", "sequence/tension/stiffness", "sequence/tension/wrench"},
	"cmd/internal/shell":              {},
	"geometry":                        {},
	"geometry/expression":             {},
	"geometry/family":                 {"geometry"},
	"geometry/finding":                {},
	"geometry/nearby":                 {"geometry"},
	"geometry/holes":                  {"geometry", "geometry/unit"},
	"geometry/survey":                 {"geometry", "geometry/unit"},
	"geometry/testkit":                {}, // only for tests
	"geometry/thread":                 {},
	"geometry/trace":                  {"geometry", "geometry/holes", "geometry/trace/fixes", "geometry/trace/gaps", "geometry/trace/photo", "geometry/trace/rings", "geometry/unit"},
	"geometry/trace/dirty":            {"geometry"}, // of tests alone
	"geometry/trace/fixes":            {"geometry", "geometry/holes"},
	"geometry/trace/gaps":             {"geometry"},
	"geometry/trace/photo":            {"geometry"},
	"geometry/trace/rings":            {"geometry"},
	"geometry/unit":                   {},
	"patterns":                        {"patterns/meaning", "patterns/problem", "patterns/source", "sequence/plan"},
	"patterns/drawn":                  {"geometry", "geometry/holes", "geometry/unit", "patterns/dxf", "patterns/form", "patterns/problem", "patterns/source", "patterns/writing"},
	"patterns/dxf":                    {"geometry", "geometry/unit", "patterns/problem"},
	"patterns/edit":                   {"geometry", "geometry/survey", "geometry/unit", "patterns/meaning", "patterns/source"},
	"patterns/fixes":                  {"geometry", "geometry/holes", "geometry/trace/fixes", "geometry/unit", "patterns/form", "patterns/nodes", "patterns/problem", "patterns/source"},
	"patterns/form":                   {"geometry", "geometry/unit", "patterns/nodes", "patterns/problem", "patterns/source", "sequence/plan"},
	"patterns/machine":                {"patterns/form", "patterns/meant", "patterns/measures", "patterns/nodes", "patterns/problem", "patterns/source", "sequence/measure", "sequence/overhaul"},
	"patterns/meaning":                {"geometry", "geometry/expression", "geometry/family", "geometry/unit", "patterns/form", "patterns/meant", "patterns/measures", "patterns/mechanics", "patterns/nodes", "patterns/places", "patterns/problem", "patterns/relabel", "patterns/source", "sequence", "sequence/measure", "sequence/plan"},
	"patterns/meant":                  {"patterns/form", "patterns/problem"},
	"patterns/measured":               {"geometry", "geometry/survey", "geometry/unit", "patterns/form", "patterns/nodes", "patterns/problem", "patterns/source", "patterns/writing"},
	"patterns/measures":               {"geometry/unit", "patterns/form", "patterns/nodes", "patterns/problem", "sequence/measure"},
	"patterns/mechanics":              {"geometry", "geometry/thread", "geometry/unit", "patterns/form", "patterns/nodes", "sequence/interaction/compliance", "sequence/plan", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/stiffness", "sequence/tension/strength"},
	"patterns/nodes":                  {"patterns/problem", "patterns/source"},
	"patterns/patterntest":            {"geometry", "patterns", "patterns/nodes", "patterns/problem", "sequence/plan"}, // only for tests
	"patterns/places":                 {"geometry", "geometry/expression", "geometry/unit", "patterns/nodes", "patterns/problem", "sequence/plan", "sequence/tension/head"},
	"patterns/problem":                {},
	"patterns/relabel":                {"geometry/expression", "patterns/form", "patterns/nodes", "patterns/problem"},
	"patterns/scan":                   {"geometry/trace", "patterns/source"},
	"patterns/schema":                 {"patterns", "patterns/fixes", "patterns/form", "patterns/machine", "patterns/measured", "patterns/problem", "patterns/source", "patterns/wrenches"},
	"patterns/source":                 {"patterns/problem"},
	"patterns/table":                  {"geometry", "geometry/holes", "geometry/unit", "patterns/form", "patterns/meaning", "patterns/nodes", "patterns/problem", "patterns/source", "patterns/writing"},
	"patterns/texts":                  {"geometry", "geometry/expression", "geometry/thread", "geometry/unit", "sequence/overhaul", "sequence/plan", "sequence/tension/screw"},
	"patterns/wrenches":               {"geometry/unit", "patterns/form", "patterns/mechanics", "patterns/nodes", "patterns/problem", "patterns/source", "sequence/tension/wrench"},
	"patterns/writing":                {"geometry", "geometry/holes", "geometry/survey", "geometry/thread", "geometry/trace", "geometry/unit", "patterns/form", "patterns/source", "sequence/tension/head"},
	"render":                          {"render/pdf", "render/png", "render/scene", "render/svg"},
	"render/diagram":                  {"geometry", "render/diagram/space", "render/font", "render/scene", "sequence/plan"},
	"render/diagram/space":            {"render/scene"},
	"render/font":                     {"render/scene"},
	"render/frames":                   {"render/diagram", "render/font", "render/scene", "render/words", "sequence/plan"},
	"render/gif":                      {"render/png", "render/scene"},
	"render/imprint":                  {},
	"render/page":                     {"geometry", "geometry/nearby", "render/diagram", "render/font", "render/scene", "render/svg", "render/words", "sequence/measure", "sequence/plan", "sequence/revision", "sequence/run", "sequence/run/remedy", "sequence/run/teardown"},
	"render/page/editpage":            {"render/page"},
	"render/page/pagetest":            {"geometry/testkit"}, // of tests alone
	"render/pdf":                      {"render/font", "render/scene"},
	"render/player":                   {"render/frames", "render/svg", "render/words"},
	"render/png":                      {"render/font", "render/scene"},
	"render/scene":                    {},
	"render/scene/scenetest":          {"geometry/testkit", "render/font", "render/scene"}, // only for tests
	"render/sheet":                    {"geometry/unit", "render/font", "render/scene", "render/words", "sequence/plan"},
	"render/sheet/book":               {"render/diagram", "render/font", "render/scene", "render/sheet", "render/sheet/card", "render/sheet/condition", "render/sheet/tray", "render/words", "sequence/measure", "sequence/overhaul", "sequence/plan"},
	"render/sheet/card":               {"geometry", "geometry/unit", "render/diagram", "render/font", "render/scene", "render/sheet", "render/words", "sequence", "sequence/plan", "sequence/tension/screw"},
	"render/sheet/clampload":          {"render/font", "render/scene", "render/sheet", "render/words", "sequence/plan", "sequence/service"},
	"render/sheet/condition":          {"geometry", "render/diagram", "render/font", "render/scene", "render/sheet", "render/sheet/lettered", "render/words", "sequence/measure", "sequence/plan"},
	"render/sheet/drawing":            {"geometry", "render/diagram", "render/font", "render/scene", "render/sheet", "render/sheet/tile", "render/sheet/truesize", "render/words", "sequence/plan"},
	"render/sheet/forecast":           {"render/diagram", "render/font", "render/scene", "render/sheet", "render/words", "sequence/interaction", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/prediction", "sequence/interaction/procedure", "sequence/interaction/setup", "sequence/interaction/ways", "sequence/plan"},
	"render/sheet/handout":            {"geometry", "render/diagram", "render/font", "render/scene", "render/sheet", "render/words", "sequence", "sequence/exercise", "sequence/interaction", "sequence/interaction/bounds", "sequence/judge", "sequence/plan"},
	"render/sheet/proof":              {"geometry", "geometry/trace", "render/font", "render/scene", "render/sheet", "render/words"},
	"render/sheet/lettered":           {"geometry", "geometry/nearby", "render/diagram", "render/scene", "render/sheet", "render/words", "sequence/plan", "sequence/run"},
	"render/sheet/machineshop":        {"geometry", "render/scene", "render/sheet", "render/sheet/lettered", "render/words", "sequence/measure", "sequence/plan", "sequence/run", "sequence/run/teardown"},
	"render/sheet/readings":           {"geometry", "geometry/finding", "render/diagram", "render/scene", "render/sheet", "sequence/plan"},
	"render/sheet/record":             {"render/scene", "render/sheet", "render/sheet/lettered", "render/words", "sequence/measure", "sequence/plan", "sequence/run", "sequence/run/teardown"},
	"render/sheet/sheettest":          {"geometry/testkit", "render/scene", "render/scene/scenetest", "render/sheet", "render/words", "render/words/wordstest"}, // only for tests
	"render/sheet/revised":            {"geometry", "render/scene", "render/sheet", "render/sheet/lettered", "render/words", "sequence/plan", "sequence/revision"},
	"render/sheet/shopping":           {"render/scene", "render/sheet", "render/words", "sequence/run/teardown"},
	"render/sheet/target":             {"geometry/trace/photo", "render/font", "render/scene", "render/sheet", "render/sheet/tile"},
	"render/sheet/tile":               {"render/font", "render/scene", "render/sheet"},
	"render/sheet/tray":               {"geometry", "geometry/unit", "render/font", "render/scene", "render/sheet", "render/sheet/tile", "render/sheet/truesize", "render/words", "sequence/plan", "sequence/tension/head"},
	"render/sheet/truesize":           {"geometry", "render/diagram", "render/font", "render/scene", "render/sheet", "render/sheet/tile", "render/words"},
	"render/stopwatch":                {},
	"render/svg":                      {"render/font", "render/scene"},
	"render/words":                    {"geometry/unit"},
	"render/words/inputtest":          {"geometry/holes", "geometry/survey", "geometry/thread", "geometry/trace", "geometry/unit", "patterns/drawn", "patterns/dxf", "patterns/edit", "patterns/form", "patterns/machine", "patterns/meaning", "patterns/measured", "patterns/measures", "patterns/mechanics", "patterns/nodes", "patterns/places", "patterns/relabel", "patterns/scan", "patterns/source", "patterns/table", "patterns/texts", "patterns/wrenches", "sequence/overhaul"},                                                                                                                                                                                                                                                             // only for tests
	"render/words/outputtest":         {"geometry/thread", "geometry/unit"},                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                           // only for tests
	"render/words/sequencetest":       {"geometry/thread", "geometry/unit", "sequence", "sequence/exercise", "sequence/figures", "sequence/interaction", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/contact", "sequence/interaction/prediction", "sequence/interaction/procedure", "sequence/interaction/setup", "sequence/interaction/ways", "sequence/judge", "sequence/measure", "sequence/plan", "sequence/revision", "sequence/run", "sequence/run/remedy", "sequence/run/teardown", "sequence/service", "sequence/stages", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/stiffness", "sequence/tension/strength", "sequence/tension/wrench"}, // only for tests
	"render/words/wordstest":          {"render/words", "render/words/inputtest", "render/words/outputtest", "render/words/sequencetest"},                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                                             // only for tests
	"sequence":                        {"geometry", "geometry/family", "sequence/way"},
	"sequence/exercise":               {"geometry", "geometry/thread", "sequence", "sequence/judge", "sequence/plan"},
	"sequence/figures":                {"geometry/thread", "geometry/unit", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/stiffness", "sequence/tension/strength", "sequence/tension/wrench"},
	"sequence/gasket":                 {"geometry/unit", "sequence/interaction/bounds", "sequence/interaction/compliance"},
	"sequence/interaction":            {"geometry", "geometry/unit", "sequence", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/contact", "sequence/interaction/limits", "sequence/interaction/prediction", "sequence/interaction/procedure", "sequence/interaction/setup", "sequence/interaction/ways", "sequence/plan", "sequence/way"},
	"sequence/interaction/advice":     {"sequence/interaction/bounds", "sequence/interaction/limits", "sequence/interaction/procedure", "sequence/judge"},
	"sequence/interaction/bounds":     {},
	"sequence/interaction/checktest":  {"geometry", "sequence/interaction/bounds"}, // only for tests
	"sequence/interaction/compliance": {"geometry", "geometry/unit", "sequence/interaction/bounds", "sequence/tension/strength"},
	"sequence/interaction/contact":    {"geometry", "sequence/interaction/compliance", "sequence/tension/stiffness"},
	"sequence/interaction/limits":     {},
	"sequence/interaction/prediction": {"geometry/unit", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/contact", "sequence/interaction/limits", "sequence/interaction/procedure", "sequence/interaction/setup", "sequence/plan"},
	"sequence/interaction/procedure":  {"geometry", "geometry/unit", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/contact", "sequence/interaction/limits", "sequence/plan", "sequence/stages", "sequence/tension/screw", "sequence/tension/stiffness"},
	"sequence/interaction/setup":      {"geometry", "geometry/unit", "sequence/gasket", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/procedure", "sequence/plan", "sequence/tension/stiffness", "sequence/tension/strength"},
	"sequence/interaction/ways":       {"geometry", "sequence", "sequence/interaction/advice", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/contact", "sequence/interaction/limits", "sequence/interaction/prediction", "sequence/interaction/procedure", "sequence/judge", "sequence/plan"},
	"sequence/judge":                  {"geometry", "geometry/family", "geometry/unit", "sequence", "sequence/plan", "sequence/way"},
	"sequence/measure":                {"geometry/unit"},
	"sequence/overhaul":               {"geometry", "geometry/expression", "geometry/unit", "sequence", "sequence/measure", "sequence/plan", "sequence/tension/screw"},
	"sequence/plan":                   {"geometry", "geometry/family", "geometry/thread", "geometry/unit", "sequence", "sequence/figures", "sequence/measure", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/stiffness"},
	"sequence/revision":               {"geometry", "geometry/unit", "sequence/plan"},
	"sequence/run":                    {"geometry/thread", "geometry/unit", "sequence/measure", "sequence/plan"},
	"sequence/run/remedy":             {"geometry/unit", "sequence/run"},
	"sequence/run/teardown":           {"sequence/measure", "sequence/overhaul", "sequence/plan", "sequence/run"},
	"sequence/service":                {"geometry/unit", "sequence/figures", "sequence/gasket", "sequence/interaction/bounds", "sequence/interaction/compliance", "sequence/interaction/setup", "sequence/plan", "sequence/tension/screw", "sequence/tension/strength"},
	"sequence/stages":                 {"geometry/unit", "sequence", "sequence/figures", "sequence/plan", "sequence/tension/screw"},
	"sequence/tension":                {},
	"sequence/tension/head":           {"geometry/thread", "geometry/unit", "sequence/tension/strength"},
	"sequence/tension/screw":          {"geometry/thread", "geometry/unit", "sequence/tension", "sequence/tension/head", "sequence/tension/strength"},
	"sequence/tension/stiffness":      {"geometry/thread", "geometry/unit", "sequence/tension/head", "sequence/tension/screw", "sequence/tension/strength"},
	"sequence/tension/strength":       {"geometry/thread", "geometry/unit", "sequence/tension"},
	"sequence/tension/tensiontest":    {"geometry/testkit", "geometry/thread"}, // only for tests
	"sequence/tension/wrench":         {"geometry/unit"},
	"sequence/way":                    {"geometry", "geometry/family"},
	"sequence/way/waytest":            {"geometry"}, // only for tests
}

// outside lists every outside module's package with the folders that may
// import it, and everything below them.
var outside = map[string][]string{
	"github.com/fogleman/gg":                   {"render/png", "geometry/trace/dirty"}, // the latter only for tests
	"github.com/golang/freetype":               {"render/png"},
	"github.com/jung-kurt/gofpdf":              {"render/pdf"},
	"gopkg.in/yaml.v3":                         {"patterns/edit", "patterns/nodes", "patterns/writing", "sequence/interaction/checktest"},
	"gonum.org/v1/gonum":                       {"geometry/survey", "geometry/trace", "sequence/interaction"},
	"github.com/santhosh-tekuri/jsonschema/v6": {"patterns/schema"},
	"rsc.io/qr":                                {"cmd/internal/bench"},
	"github.com/jackc/pgx/v5":                  {"cmd/internal/record/postgres"},
	"modernc.org/sqlite":                       {"cmd/internal/record/sqlite"},
	"github.com/spf13/pflag":                   {"cmd"},
	"golang.org/x/term":                        {"cmd/internal/machine"},
	"golang.org/x/sys":                         {"cmd/internal/machine"},
	"github.com/klauspost/compress":            {"render/pdf", "render/png"},
	"github.com/bep/imagemeta":                 {"patterns/scan"},
	"golang.org/x/image":                       {"patterns/scan", "render/font", "render/png"},
	"golang.org/x/text/encoding":               {"patterns/dxf", "patterns/table"},
	"golang.org/x/text/unicode/norm":           {"patterns/source", "render/font"},
	"golang.org/x/text/language":               {"cmd/internal/bench"},
	"golang.org/x/text/width":                  {"patterns/problem"},
}

// inTestsOnly lists the outside modules that only tests and their helper
// packages may import. They may also import everything in outside.
var inTestsOnly = []string{
	"github.com/chromedp/cdproto",
	"github.com/chromedp/chromedp",
	"github.com/google/go-cmp",
	"github.com/rogpeppe/go-internal",
	"pgregory.net/rapid",
}

// never lists the imports that no change of arrows may allow: a folder, and
// what neither it nor anything below it may import outside its tests.
var never = []rule{
	{in: "geometry", no: []string{"time", "os"}, because: "calculation has no clock and no disk"},
	{in: "sequence", but: "sequence/run", no: []string{"time", "os"}, because: "calculation has no clock and no disk"},
	{in: "sequence/run", no: []string{"os"}, because: "a run is handed times, and has no disk"}, // nor a clock: TestRunHasNoClock
	{in: "geometry", no: []string{"drawdown/sequence", "drawdown/patterns", "drawdown/render", "drawdown/cmd"}, because: "geometry stands below all else"},
	{in: "sequence", no: []string{"drawdown/patterns", "drawdown/render", "drawdown/cmd"}, because: "calculation sees no file format and no paper"},
	{in: "patterns", no: []string{"drawdown/render", "drawdown/cmd"}, because: "the reader knows no paper"},
	{in: "render", no: []string{"drawdown/patterns", "drawdown/cmd"}, because: "paper is drawn from the plan, not from the file"},
	{in: "render/png", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/pdf", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/svg", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/gif", no: backendsNever, because: "a backend sees no bolt and lays nothing out"},
	{in: "render/scene", no: []string{"drawdown/geometry", "drawdown/sequence"}, because: "a scene knows no bolt"},
	{in: "render/font", no: []string{"drawdown/geometry", "drawdown/sequence"}, because: "type knows no bolt"},
}

var backendsNever = []string{
	"drawdown/geometry", "drawdown/sequence", "drawdown/render/diagram", "drawdown/render/sheet",
}

// rule is an import that a folder must never have.
type rule struct {
	in      string
	but     string // a folder in it that may have it; empty: none
	no      []string
	because string
}
