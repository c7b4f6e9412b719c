package bench

import (
	"net/http"

	"golang.org/x/text/language"

	"drawdown/render/words"
)

// languageCookie keeps the language that was chosen on the page.
const languageCookie = "drawdown-language"

// reader returns the words of whoever asks: ?lang= first, then what was chosen
// before, then what the browser prefers, then the page's own.
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

// spoken finds the nearest of the languages of the sheets.
var spoken = func() language.Matcher {
	var tags []language.Tag
	for _, tag := range words.Languages() {
		tags = append(tags, language.Make(tag))
	}
	return language.NewMatcher(tags)
}()

// keepLanguage keeps the language that a page was asked for in.
func (b *Bench) keepLanguage(w http.ResponseWriter, r *http.Request) {
	if tag := r.URL.Query().Get("lang"); tag != "" {
		if c, err := words.Find(tag); err == nil {
			http.SetCookie(w, b.cookie(r, languageCookie, c.Language, 365*24*3600))
		}
	}
}
