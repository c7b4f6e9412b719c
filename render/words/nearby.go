package words

import "fmt"

// Between says that something lies between two others, or near one; empty where there
// is neither.
func (c *Catalogue) Between(between [2]string, near string) string {
	switch {
	case between[0] != "":
		return fmt.Sprintf(c.Page.Seen.Between, between[0], between[1])
	case near != "":
		return fmt.Sprintf(c.Page.Seen.Near, near)
	}
	return ""
}
