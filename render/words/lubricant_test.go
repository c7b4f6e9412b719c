package words

import "testing"

// Known lubricants are recognized in any spelling; unknown words of the file
// are not changed.
func TestLubricants(t *testing.T) {
	for _, c := range []struct{ language, said, want string }{
		{"de", "Engine  Oil", "Motoröl"},
		{"fr", "anti-seize", "pâte antigrippage"},
		{"es", "as delivered", "como se suministran"},
		{"de", "Fett Nr. 4", "Fett Nr. 4"},
		{"en", "", ""},
	} {
		catalogue, err := Find(c.language)
		if err != nil {
			t.Fatal(err)
		}
		if got := catalogue.Lubricant(c.said); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.language, c.said, got, c.want)
		}
	}
}
