// Package certificate makes and keeps the certificates that HTTPS on a workshop
// network needs: an authority for this computer only, which a tablet can trust,
// and the certificate of the page, which is renewed when the addresses change.
package certificate

import (
	"bytes"
	"crypto"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/sha256"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"fmt"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"drawdown/cmd/internal/files"
)

const (
	authorityLasts = 10 * 365 * 24 * time.Hour
	// leafLasts is less than the 825 days that some systems take from an authority
	// of one's own at the most.
	leafLasts   = 397 * 24 * time.Hour
	renewBefore = 30 * 24 * time.Hour
	backdated   = 24 * time.Hour // a tablet's clock may be late
	lookEvery   = 5 * time.Second
)

// Keeper provides the certificate of the page to whoever connects.
type Keeper struct {
	folder string
	now    func() time.Time
	names  func() []string // host names and addresses of this machine

	mu        sync.Mutex
	authority pair
	leaf      pair
	looked    time.Time // when the names were last compared
}

// pair is a certificate with its key.
type pair struct {
	cert *x509.Certificate
	key  crypto.Signer
}

// Open reads the authority and the page's certificate from the folder, and makes
// what is missing, has ended, or is not for these names.
func Open(folder string, names func() []string, now func() time.Time) (*Keeper, error) {
	k := &Keeper{folder: folder, now: now, names: names}
	var err error
	if k.authority, err = k.load("authority"); err != nil || k.ends(k.authority) {
		if k.authority, err = k.make("authority", authority(now()), pair{}); err != nil {
			return nil, err
		}
	}
	if k.leaf, err = k.load("page"); err != nil {
		k.leaf = pair{}
	}
	return k, k.renew()
}

// Authority returns the certificate that a tablet can be told to trust, as DER.
func (k *Keeper) Authority() []byte { return k.authority.cert.Raw }

// Fingerprint is the SHA-256 of the authority, as systems show it.
func (k *Keeper) Fingerprint() string {
	sum := sha256.Sum256(k.authority.cert.Raw)
	return strings.ReplaceAll(fmt.Sprintf("% X", sum[:]), " ", ":")
}

// Get returns the page's certificate, with a new one where the machine's
// addresses have changed or its time comes to an end.
func (k *Keeper) Get(*tls.ClientHelloInfo) (*tls.Certificate, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if since := k.now().Sub(k.looked); since > lookEvery || since < 0 {
		if err := k.renew(); err != nil {
			return nil, err
		}
	}
	return &tls.Certificate{Certificate: [][]byte{k.leaf.cert.Raw, k.authority.cert.Raw}, PrivateKey: k.leaf.key, Leaf: k.leaf.cert}, nil
}

func (k *Keeper) renew() (err error) {
	k.looked = k.now()
	wanted := page(k.names(), k.now())
	if k.leaf.cert != nil && !k.ends(k.leaf) && k.leaf.cert.CheckSignatureFrom(k.authority.cert) == nil && sameNames(k.leaf.cert, wanted) {
		return nil
	}
	k.leaf, err = k.make("page", wanted, k.authority)
	return err
}

func (k *Keeper) ends(p pair) bool {
	now := k.now()
	return now.Add(renewBefore).After(p.cert.NotAfter) || now.Before(p.cert.NotBefore)
}

func sameNames(a, b *x509.Certificate) bool {
	return slices.Equal(a.DNSNames, b.DNSNames) && slices.EqualFunc(a.IPAddresses, b.IPAddresses, net.IP.Equal)
}

// authority is the template of the authority. It can vouch for addresses and for
// names of a local network alone, so that whoever steals its key can pretend to
// be no site of the internet.
func authority(now time.Time) *x509.Certificate {
	return &x509.Certificate{
		Subject:   pkix.Name{CommonName: "drawdown, this workshop only"},
		NotBefore: now.Add(-backdated), NotAfter: now.Add(authorityLasts),
		IsCA: true, BasicConstraintsValid: true, MaxPathLenZero: true,
		KeyUsage:                    x509.KeyUsageCertSign | x509.KeyUsageCRLSign,
		PermittedDNSDomainsCritical: true,
		PermittedDNSDomains:         []string{"local", "localhost"},
	}
}

func page(names []string, now time.Time) *x509.Certificate {
	t := &x509.Certificate{
		Subject:   pkix.Name{CommonName: "drawdown"},
		NotBefore: now.Add(-backdated), NotAfter: now.Add(leafLasts),
		BasicConstraintsValid: true,
		KeyUsage:              x509.KeyUsageDigitalSignature,
		ExtKeyUsage:           []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth},
	}
	for _, name := range names {
		if ip := net.ParseIP(name); ip != nil {
			t.IPAddresses = append(t.IPAddresses, ip)
		} else {
			t.DNSNames = append(t.DNSNames, name)
		}
	}
	return t
}

// make signs a template and keeps it; one without a parent signs itself.
func (k *Keeper) make(name string, template *x509.Certificate, parent pair) (pair, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return pair{}, err
	}
	if template.SerialNumber, err = rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 120)); err != nil {
		return pair{}, err
	}
	if parent.cert == nil {
		parent = pair{template, key}
	}
	raw, err := x509.CreateCertificate(rand.Reader, template, parent.cert, key.Public(), parent.key)
	if err != nil {
		return pair{}, err
	}
	cert, err := x509.ParseCertificate(raw)
	if err != nil {
		return pair{}, err
	}
	secret, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return pair{}, err
	}
	var text bytes.Buffer
	pem.Encode(&text, &pem.Block{Type: "CERTIFICATE", Bytes: raw})
	pem.Encode(&text, &pem.Block{Type: "PRIVATE KEY", Bytes: secret})
	return pair{cert, key}, files.WriteSecret(k.path(name), text.Bytes())
}

func (k *Keeper) path(name string) string { return filepath.Join(k.folder, name+".pem") }

var errUnread = errors.New("not a certificate with its key")

func (k *Keeper) load(name string) (pair, error) {
	text, err := os.ReadFile(k.path(name))
	if err != nil {
		return pair{}, err
	}
	both, err := tls.X509KeyPair(text, text)
	if err != nil {
		return pair{}, err
	}
	key, ok := both.PrivateKey.(crypto.Signer)
	if !ok || both.Leaf == nil {
		return pair{}, errUnread
	}
	return pair{both.Leaf, key}, nil
}
