package source

import (
	"bytes"
	"crypto/sha256"
	"fmt"
)

// Fingerprint returns the first 4 bytes of the SHA-256 over the files of a
// chain, the extending file first, as 7c1e 90b4. Line ends count as line feeds,
// so that a checkout on Windows gives the same fingerprint.
func Fingerprint(files [][]byte) string {
	hash := sha256.New()
	for _, data := range files {
		hash.Write(UnixLines(data))
	}
	sum := hash.Sum(nil)
	return fmt.Sprintf("%x %x", sum[:2], sum[2:4])
}

// UnixLines returns a text with line feeds as line ends.
func UnixLines(data []byte) []byte {
	return bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
}
