package bench

import (
	"io/fs"
	"net/http"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/page"
)

// Paths used in more than one file.
const (
	photosPath    = "/api/photos"
	assetsPath    = "/assets/"
	joinPath      = "/join"
	authorityPath = "/drawdown.crt"
	timePath      = "/api/time"
)

// routes returns all routes, by method and path. Only the desktop may admit
// others.
func (b *Bench) routes() http.Handler {
	mux := http.NewServeMux()
	for pattern, do := range map[string]route{
		"GET /api/patterns":              b.getPatterns,
		"PUT /api/patterns/{name}":       b.putPattern,
		"POST /api/patterns/{name}/edit": b.postEdit,

		"GET /api/runs":               b.getRuns,
		"POST /api/runs":              b.postRun,
		"GET /api/runs/{file}":        b.getRun,
		"POST /api/runs/{id}/entries": b.postRunEntry,
		"GET /api/runs/{id}/events":   b.getEvents,

		"GET /api/jobs":               b.getJobs,
		"POST /api/jobs":              b.postJob,
		"GET /api/jobs/{file}":        b.getJob,
		"POST /api/jobs/{id}/entries": b.postJobEntry,

		"POST " + photosPath:             b.postPhoto,
		"GET " + photosPath + "/{photo}": b.getPhoto,
		"GET /api/wrenches":              b.getWrenches,
		"GET /api/people":                b.getPeople,
		"GET " + timePath:                b.getTime,

		"GET /api/share":                  b.getShare,
		"POST /api/share/codes":           desktopOnly(b.postCode),
		"DELETE /api/share/sessions/{id}": desktopOnly(b.deleteSession),

		"GET /patterns/{name}/{sheet}": b.getPatternPrint,
		"GET /runs/{id}/{sheet}":       b.getRunPrint,

		"GET /{$}":                        b.homePage,
		"GET /patterns/{name}":            b.patternPage,
		"GET /patterns/{name}/edit":       b.editPage,
		"GET /runs/{id}":                  b.runPage,
		"GET /runs/{id}/live":             b.runLive,
		"GET /runs/{id}/paper":            b.runPaper,
		"GET /jobs/{id}":                  b.jobPage,
		"GET /jobs/{id}/places/{joint}":   b.jobPlaces,
		"GET /records":                    b.recordsPage,
		"GET /records/{id}":               b.recordPage,
		"GET /settings":                   b.settingsPage,
		"GET /share":                      desktopOnly(b.sharePage),
		"GET " + joinPath:                 b.joinPage,
		"POST " + joinPath:                b.join,
		"GET " + assetsPath + "{file...}": b.getAsset,
		"GET " + authorityPath:            b.getAuthority,
	} {
		mux.HandleFunc(pattern, func(w http.ResponseWriter, r *http.Request) {
			err := b.upToDate(r)
			if err == nil {
				err = do(w, r)
			}
			if err != nil {
				b.fail(w, r, err)
			}
		})
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if answer, pattern := mux.Handler(r); pattern == "" {
			b.noRoute(w, r, answer)
			return
		}
		mux.ServeHTTP(w, r)
	})
}

// noRoute states in the reader's language why the mux refuses a request: there
// is no such path, or not with this method, or it is written differently.
func (b *Bench) noRoute(w http.ResponseWriter, r *http.Request, plain http.Handler) {
	said := &silent{head: http.Header{}}
	plain.ServeHTTP(said, r)
	switch allowed := said.head.Get("Allow"); {
	case said.status == http.StatusMethodNotAllowed:
		w.Header().Set("Allow", allowed)
		b.fail(w, r, wrong(said.status, WrongMethod, finding.Values{"method": cut(r.Method), "allowed": strings.Split(allowed, ", ")}))
	default:
		b.fail(w, r, wrong(http.StatusNotFound, NoRoute, finding.Values{"path": cut(r.URL.Path)}))
	}
}

// silent discards an answer but keeps its status and headers.
type silent struct {
	head   http.Header
	status int
}

func (s *silent) Header() http.Header            { return s.head }
func (s *silent) Write(data []byte) (int, error) { return len(data), nil }
func (s *silent) WriteHeader(status int)         { s.status = status }

// getAsset serves the style sheet, the scripts and the typeface of the pages.
// The folder in their path is renamed when one of them changes.
func (b *Bench) getAsset(w http.ResponseWriter, r *http.Request) error {
	name := r.PathValue("file")
	if about, err := fs.Stat(page.Assets(), name); err != nil || about.IsDir() {
		return wrong(http.StatusNotFound, NoRoute, finding.Values{"path": cut(r.URL.Path)})
	}
	w.Header().Set("Cache-Control", assetsLast)
	http.ServeFileFS(w, r, page.Assets(), name)
	return nil
}
