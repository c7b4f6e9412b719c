package bench

import (
	"crypto/tls"
	"fmt"
	"net"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"rsc.io/qr"

	"drawdown/cmd/internal/bench/certificate"
	"drawdown/cmd/internal/bench/gate"
	"drawdown/geometry/finding"
)

// sharing serves the page to the workshop's network: by HTTPS, on the port
// after that of this machine.
type sharing struct {
	certificates *certificate.Keeper
	port         int
}

// networkNames returns the names under which the page answers on the network,
// which are also those in its certificate.
func networkNames() []string { return slices.Concat(gate.Network(), gate.Loopback) }

// shareOn prepares the certificate for the network.
func (b *Bench) shareOn(port int) error {
	keeper, err := certificate.Open(b.Data, networkNames, b.now)
	if err != nil {
		return err
	}
	b.share = &sharing{certificates: keeper, port: port}
	return nil
}

func (s *sharing) config() *tls.Config {
	return &tls.Config{MinVersion: tls.VersionTLS12, GetCertificate: s.certificates.Get, NextProtos: []string{"http/1.1"}}
}

// addresses returns the addresses of the page for a tablet.
func (s *sharing) addresses() []string {
	var all []string
	for _, name := range gate.Network() {
		all = append(all, "https://"+net.JoinHostPort(name, strconv.Itoa(s.port)))
	}
	return all
}

// shareOut describes how the page is shared.
type shareOut struct {
	Shared      bool           `json:"shared"`
	Addresses   []string       `json:"addresses"`
	Fingerprint string         `json:"fingerprint,omitempty"` // of the authority, SHA-256
	Sessions    []gate.Session `json:"sessions"`
}

func (b *Bench) getShare(w http.ResponseWriter, r *http.Request) error {
	out := shareOut{Shared: b.share != nil, Addresses: []string{}, Sessions: b.gate.Sessions()}
	if b.share != nil {
		out.Addresses, out.Fingerprint = listed(b.share.addresses()), b.share.certificates.Fingerprint()
	}
	answer(w, http.StatusOK, out)
	return nil
}

// codeOut is a code for one device, and where to use it.
type codeOut struct {
	Code    string    `json:"code"`
	Until   time.Time `json:"until"`
	Address string    `json:"address"`
}

func (b *Bench) postCode(w http.ResponseWriter, r *http.Request) error {
	made, err := b.newCode()
	if err != nil {
		return err
	}
	answer(w, http.StatusCreated, made)
	return nil
}

func (b *Bench) newCode() (codeOut, error) {
	if b.share == nil {
		return codeOut{}, wrong(http.StatusConflict, NotShared, nil)
	}
	code, until, err := b.gate.NewCode()
	if err != nil {
		return codeOut{}, err
	}
	return codeOut{code, until, b.joinAddress(code)}, nil
}

// joinAddress returns the address for a tablet with its code; it is empty
// without a network.
func (b *Bench) joinAddress(code string) string {
	all := b.share.addresses()
	if len(all) == 0 {
		return ""
	}
	return fmt.Sprintf("%s%s?code=%s", all[0], joinPath, code)
}

// squares returns the QR code of a text, with dark squares true; it is nil if
// there is none.
func squares(text string) [][]bool {
	if text == "" {
		return nil
	}
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return nil
	}
	rows := make([][]bool, code.Size)
	for y := range rows {
		rows[y] = make([]bool, code.Size)
		for x := range rows[y] {
			rows[y][x] = code.Black(x, y)
		}
	}
	return rows
}

func (b *Bench) deleteSession(w http.ResponseWriter, r *http.Request) error {
	found, err := b.gate.End(r.PathValue("id"))
	if err != nil {
		return err
	}
	if !found {
		return wrong(http.StatusNotFound, NoSession, finding.Values{"id": cut(r.PathValue("id"))})
	}
	w.WriteHeader(http.StatusNoContent)
	return nil
}

// join admits a tablet by its code.
func (b *Bench) join(w http.ResponseWriter, r *http.Request) error {
	r.Body = http.MaxBytesReader(w, r.Body, b.Limits.Body)
	if err := r.ParseForm(); err != nil {
		return bodyUnread(err)
	}
	token, err := b.gate.Join(r.PostForm.Get("code"), device(r), gate.Address(r.RemoteAddr))
	if err != nil {
		return b.joinAgain(w, r, err)
	}
	b.handOut(w, r, token)
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return nil
}

// getAuthority sends the certificate that a tablet can be set to trust.
func (b *Bench) getAuthority(w http.ResponseWriter, r *http.Request) error {
	if b.share == nil {
		return wrong(http.StatusNotFound, NotShared, nil)
	}
	download(w, "attachment", strings.TrimPrefix(authorityPath, "/"), "application/x-x509-ca-cert")
	w.Write(b.share.certificates.Authority())
	return nil
}
