package rehearsal

import (
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// What comes from anywhere but the page itself is refused, each kind by its own status. The order counts: a foreign
// host is told nothing of origins, nor a foreign origin of tokens.
func TestGuard(t *testing.T) {
	address, _ := served(t)
	u, err := url.Parse(address)
	require.NoError(t, err)
	port, token := u.Port(), strings.Trim(u.Path, "/")
	require.Equal(t, "127.0.0.1", u.Hostname())
	require.GreaterOrEqual(t, len(token)*5, 128, "letters and digits of base 32 carry five bits each")
	type headers = map[string]string
	for _, c := range []struct {
		name, method, path string
		headers            headers
		want               int
	}{
		{"the page", "GET", "/TOKEN/", nil, 200},
		{"a module of it", "GET", "/TOKEN/page/index.html", nil, 200},
		{"the page, from a link typed in", "GET", "/TOKEN/", headers{"Sec-Fetch-Site": "none"}, 200},
		{"our own origin", "POST", "/TOKEN/look", headers{"Origin": "http://127.0.0.1:PORT",
			"Sec-Fetch-Site": "same-origin", "Content-Type": "application/json"}, 200},
		{"a foreign host", "GET", "/TOKEN/", headers{"Host": "example.com"}, 421},
		{"a foreign host with our port", "GET", "/TOKEN/", headers{"Host": "example.com:PORT"}, 421},
		{"localhost by name", "GET", "/TOKEN/", headers{"Host": "localhost:PORT"}, 421},
		{"the loopback of IPv6", "GET", "/TOKEN/", headers{"Host": "[::1]:PORT"}, 421},
		{"another way to write the loopback", "GET", "/TOKEN/", headers{"Host": "127.1:PORT"}, 421},
		{"a dot behind", "GET", "/TOKEN/", headers{"Host": "127.0.0.1.:PORT"}, 421},
		{"no port", "GET", "/TOKEN/", headers{"Host": "127.0.0.1"}, 421},
		{"another port", "GET", "/TOKEN/", headers{"Host": "127.0.0.1:1"}, 421},
		{"a foreign host before all else", "POST", "/", headers{"Host": "example.com", "Origin": "null"}, 421},
		{"a foreign origin", "GET", "/TOKEN/", headers{"Origin": "http://example.com"}, 403},
		{"our address by another protocol", "GET", "/TOKEN/", headers{"Origin": "https://127.0.0.1:PORT"}, 403},
		{"our address at another port", "GET", "/TOKEN/", headers{"Origin": "http://127.0.0.1:1"}, 403},
		{"localhost's origin", "POST", "/TOKEN/look", headers{"Origin": "http://localhost:PORT"}, 403},
		{"the origin null", "POST", "/TOKEN/look", headers{"Origin": "null"}, 403},
		{"an empty origin", "POST", "/TOKEN/look", headers{"Origin": ""}, 403},
		{"a foreign origin before the token", "GET", "/", headers{"Origin": "http://example.com"}, 403},
		{"a request that the browser calls cross-site", "POST", "/TOKEN/look", headers{"Sec-Fetch-Site": "cross-site"}, 403},
		{"one that it calls same-site", "POST", "/TOKEN/look", headers{"Sec-Fetch-Site": "same-site"}, 403},
		{"no token", "GET", "/", nil, 404},
		{"no token, a route", "GET", "/start", nil, 404},
		{"a wrong token", "GET", "/AAAAAAAAAAAAAAAAAAAAAAAAAA/", nil, 404},
		{"the token cut short", "GET", "/SHORT/", nil, 404},
		{"the token in small letters", "GET", "/SMALL/", nil, 404},
		{"the token and more", "GET", "/TOKENA/", nil, 404},
		{"an unknown route", "GET", "/TOKEN/etc", nil, 404},
		{"a file that is not the page's", "GET", "/TOKEN/page/doc.go", nil, 404},
		{"a climbing path", "GET", "/TOKEN/page/..%2f..%2fdoc.go", nil, 404},
		{"one that climbs out of what was made", "GET", "/TOKEN/made/..%2f..%2fpattern.png", nil, 404},
		{"what was made before anything was", "GET", "/TOKEN/made/sheets.pdf", nil, 404},
		{"a way that is not taken", "DELETE", "/TOKEN/start", nil, 405},
		{"a form", "POST", "/TOKEN/look", headers{"Content-Type": "application/x-www-form-urlencoded"}, 415},
		{"plain text, which needs no leave", "POST", "/TOKEN/look", headers{"Content-Type": "text/plain"}, 415},
		{"a picture as a form", "POST", "/TOKEN/picture", headers{"Content-Type": "multipart/form-data"}, 415},
	} {
		t.Run(c.name, func(t *testing.T) {
			fill := strings.NewReplacer("TOKEN", token, "PORT", port, "SHORT", token[:len(token)-1], "SMALL",
				strings.ToLower(token))
			r, err := http.NewRequest(c.method, "http://"+u.Host+fill.Replace(c.path), strings.NewReader(`{}`))
			require.NoError(t, err)
			for name, value := range c.headers {
				if value = fill.Replace(value); name == "Host" {
					r.Host = value
				} else {
					r.Header[name] = []string{value}
				}
			}
			got, err := http.DefaultTransport.RoundTrip(r)
			require.NoError(t, err)
			defer got.Body.Close()
			text, err := io.ReadAll(got.Body)
			require.NoError(t, err)
			require.Equal(t, c.want, got.StatusCode, "%.200s", text)
			require.NotContains(t, string(text)+fmt.Sprint(got.Header), token, "no answer gives the token away")
			h := got.Header
			for _, rule := range []string{"default-src 'none'", "base-uri 'none'", "form-action 'none'",
				"frame-ancestors 'none'"} {
				require.Contains(t, h.Get("Content-Security-Policy"), rule)
			}
			require.NotContains(t, h.Get("Content-Security-Policy"), "unsafe")
			require.Equal(t, "nosniff", h.Get("X-Content-Type-Options"))
			require.Equal(t, "no-store", h.Get("Cache-Control"))
			require.Equal(t, "no-referrer", h.Get("Referrer-Policy"))
			require.Empty(t, h.Get("Access-Control-Allow-Origin"))
		})
	}
	other, stop := serve(t, filepath.Join(t.TempDir(), "none.png"), begunWith)
	defer stop()
	require.NotEqual(t, strings.TrimSuffix(address, "/"), strings.TrimSuffix(other, "/"), "each run has its own token")
}

// The page is served to the loopback alone.
func TestLoopbackAlone(t *testing.T) {
	address, _ := served(t)
	u, err := url.Parse(address)
	require.NoError(t, err)
	all, err := net.InterfaceAddrs()
	require.NoError(t, err)
	for _, a := range all {
		ip := a.(*net.IPNet).IP
		if ip.IsLoopback() || ip.To4() == nil {
			continue
		}
		c, err := net.DialTimeout("tcp", net.JoinHostPort(ip.String(), u.Port()), time.Second)
		if err == nil {
			c.Close()
		}
		require.Error(t, err, "%s answers", ip)
	}
}

// Bodies that are too large, endless, or no question at all.
func TestBodies(t *testing.T) {
	address, _ := served(t)
	for _, c := range []struct {
		name, route, body string
		want              int
	}{
		{"nothing", "look", "", 400},
		{"no JSON", "look", "{", 400},
		{"another thing", "look", `{"path":"/etc/passwd"}`, 400},
		{"a path for what is made", "make", `{"words":[],"folder":"/tmp"}`, 400},
		{"a path for takes", "takes", `{"takes":[],"file":"/tmp/x"}`, 400},
		{"two in one", "look", `{}{}`, 400},
		{"a huge one", "look", `{"words":[["distance","` + strings.Repeat("1", mostAskedBytes) + `cm"]]}`, 413},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := http.Post(address+c.route, "application/json", strings.NewReader(c.body))
			require.NoError(t, err)
			defer got.Body.Close()
			require.Equal(t, c.want, got.StatusCode)
		})
	}
	r, err := http.NewRequest("POST", address+"picture", io.MultiReader(bytes.NewReader([]byte("GIF89a")), forever{}))
	require.NoError(t, err)
	r.ContentLength = mostPictureBytes + 1
	r.Header.Set("Content-Type", "application/octet-stream")
	got, err := http.DefaultTransport.RoundTrip(r)
	if err == nil { // else the server has hung up already
		got.Body.Close()
		require.Equal(t, http.StatusRequestEntityTooLarge, got.StatusCode)
	}
}

// forever is a body without an end.
type forever struct{}

func (forever) Read(p []byte) (int, error) {
	time.Sleep(time.Millisecond)
	return copy(p, "x"), nil
}

// One who opens a connection and dawdles keeps nobody waiting, and is hung up on.
func TestSlowRequest(t *testing.T) {
	t.Parallel()
	address, _ := served(t)
	u, err := url.Parse(address)
	require.NoError(t, err)
	for range 20 {
		c, err := net.Dial("tcp", u.Host)
		require.NoError(t, err)
		defer c.Close()
		_, err = fmt.Fprintf(c, "POST %slook HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\n"+
			"Content-Length: 9\r\n\r\n{", u.Path, u.Host)
		require.NoError(t, err)
	}
	headless, err := net.Dial("tcp", u.Host)
	require.NoError(t, err)
	defer headless.Close()
	_, err = io.WriteString(headless, "GET / HTTP/1.1\r\nX")
	require.NoError(t, err)
	require.NotEmpty(t, asked(t, address, "look", question{Words: []Word{{"distance", "20cm"}, {"pixels", "64x64"}}}))
	require.NoError(t, headless.SetReadDeadline(time.Now().Add(5*time.Minute)))
	_, err = io.ReadAll(headless) // until the server hangs up
	require.NoError(t, err)
}
