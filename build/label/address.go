// Package label knows what is printed on a sticker: the code a person reads
// out, the address a phone opens, and the QR symbol that holds it.
package label

import (
	"fmt"
	"net/url"
	"strings"

	"golang.org/x/net/idna"
)

// Base is the address under which the hirer tree is served.
type Base struct {
	url  *url.URL
	host string // with its port, as the network knows it: a name in other letters than ours is xn--...
}

// ParseBase reads the fleet's address: http or https, a host, perhaps a port
// and a path, nothing else.
func ParseBase(text string) (Base, error) {
	u, err := url.Parse(text)
	switch {
	case err != nil:
		return Base{}, fmt.Errorf("%q is no web address: write for example https://guide.example", text)
	case u.Scheme != "https" && u.Scheme != "http":
		return Base{}, fmt.Errorf("%q does not begin with https://", text)
	case u.Host == "" || u.User != nil || u.RawQuery != "" || u.Fragment != "":
		return Base{}, fmt.Errorf("%q is more or less than a host and a path: write for example https://guide.example/vans", text)
	}
	u.Path = strings.TrimSuffix(u.Path, "/")
	host, err := asciiHost(u)
	if err != nil {
		return Base{}, fmt.Errorf("%q has a host that cannot be: %v", text, err)
	}
	return Base{url: u, host: host}, nil
}

// asciiHost is the host as the network knows it, with its port.
func asciiHost(u *url.URL) (string, error) {
	name, port := u.Hostname(), u.Port()
	if strings.Contains(name, ":") {
		return u.Host, nil // an address in numbers
	}
	ascii, err := idna.Lookup.ToASCII(strings.ToLower(name))
	if err != nil {
		return "", err
	}
	if port != "" {
		ascii += ":" + port
	}
	return ascii, nil
}

// To is the full address of a page, given by its path below the tree such as
// "RW/G1/". Scheme and host, in which case means nothing, are in upper case:
// where the path is too, the QR symbol stays in its small alphanumeric mode.
func (b Base) To(path string) string {
	if b.url == nil {
		return ""
	}
	return strings.ToUpper(b.url.Scheme+"://"+b.host) + b.url.EscapedPath() + "/" + path
}

// Reading is the same address as a person would type it.
func (b Base) Reading(path string) string {
	if b.url == nil {
		return ""
	}
	return b.url.Host + b.url.EscapedPath() + "/" + path
}

// Root is the path of the hirer tree on its host, with a slash at both ends.
func (b Base) Root() string {
	if b.url == nil {
		return "/"
	}
	return b.url.EscapedPath() + "/"
}

// Path is the path of the page behind a label, below the hirer tree; without a
// label code it is the start of the van.
func Path(van, code string) string {
	if code == "" {
		return van + "/"
	}
	return van + "/" + code + "/"
}
