package bench

import (
	"net/http"

	"golang.org/x/text/language"

	"drawdown/render/words"
)

// languageCookie stores the language chosen on the page.
const languageCookie = "drawdown-language"

// reader returns the words for the sender of a request: by ?lang=, then the
// stored choice, then the browser's preference, then the page's own language.
func (b *Bench) reader(r *http.Request) *words.Catalogue {
	if c, err := words.Find(r.URL.Query().Get("lang")); err == nil {
		return c
	}
	if kept, err := r.Cookie(languageCookie); err == nil {
		if c, err := words.Find(kept.Value); err == nil {
			return c
		}
	}
	if header := r.Header.Get("Accept-Language"); len(header) <= longestName {
		wanted, _, err := language.ParseAcceptLanguage(header)
		if _, at, sure := spoken.Match(wanted...); err == nil && len(wanted) > 0 && sure != language.No {
			if c, err := words.Find(words.Languages()[at]); err == nil {
				return c
			}
		}
	}
	return b.Words
}

// spoken finds the nearest language of the sheets.
var spoken = func() language.Matcher {
	var tags []language.Tag
	for _, tag := range words.Languages() {
		tags = append(tags, language.Make(tag))
	}
	return language.NewMatcher(tags)
}()

// keepLanguage stores the language that was asked for.
func (b *Bench) keepLanguage(w http.ResponseWriter, r *http.Request) {
	if tag := r.URL.Query().Get("lang"); tag != "" {
		if c, err := words.Find(tag); err == nil {
			http.SetCookie(w, b.cookie(r, languageCookie, c.Language, 365*24*3600))
		}
	}
}
