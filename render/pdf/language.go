package pdf

import (
	"fmt"
	"regexp"
	"sync"
)

var languageTag = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)
})

func checkLanguage(tag string) error {
	if tag == "" || languageTag().MatchString(tag) {
		return nil
	}
	return fmt.Errorf("language %q: it must be a BCP 47 tag such as en or pt-BR", tag)
}
