package bag

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func kept() Bag {
	return Bag{
		Payload: []File{
			{"record/sizes.csv", []byte("part,size\n")},
			{"survey 100%.toml", []byte("[vehicle]\n")},
			{"a\nb.txt", nil},
		},
		Tags: []Tag{
			{"Source-Organization", "the workshop"},
			{"External-Description", "An orchard wagon\nfound under a fallen roof: " + strings.Repeat("all its irons and none of its timber, ", 5)},
		},
		Day: time.Date(2026, 10, 30, 0, 0, 0, 0, time.UTC),
	}
}

// valid reads a bag by the rules of RFC 8493, section 3, written here afresh.
func valid(files []File) error {
	at := map[string][]byte{}
	for _, f := range files {
		at[f.Path] = f.Data
	}
	if string(at["bagit.txt"]) != "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n" { // 2.1.1
		return fmt.Errorf("bagit.txt is not the declaration of version 1.0")
	}
	check := func(name string, must func(path string) bool) error {
		listed := map[string]bool{}
		lines := bufio.NewScanner(bytes.NewReader(at[name]))
		for lines.Scan() {
			m := regexp.MustCompile(`^([0-9a-f]{64})[ \t]+(\S.*)$`).FindStringSubmatch(lines.Text())
			if m == nil {
				return fmt.Errorf("%s: %q is no line of a manifest", name, lines.Text())
			}
			path := strings.NewReplacer("%0D", "\r", "%0A", "\n", "%25", "%").Replace(m[2])
			data, there := at[path]
			if !there {
				return fmt.Errorf("%s names %q, which is not there", name, path)
			}
			if listed[path] {
				return fmt.Errorf("%s names %q twice", name, path)
			}
			listed[path] = true
			if fmt.Sprintf("%x", sha256.Sum256(data)) != m[1] {
				return fmt.Errorf("%q is not as it was", path)
			}
		}
		for path := range at {
			if must(path) != listed[path] {
				return fmt.Errorf("%s lists %q: %v", name, path, listed[path])
			}
		}
		return nil
	}
	data := func(path string) bool { return strings.HasPrefix(path, "data/") }
	if err := check("manifest-sha256.txt", data); err != nil {
		return err
	}
	if err := check("tagmanifest-sha256.txt", func(p string) bool { return !data(p) && p != "tagmanifest-sha256.txt" }); err != nil {
		return err
	}
	return oxum(at)
}

// oxum checks Payload-Oxum against the payload (2.2.2).
func oxum(at map[string][]byte) error {
	octets, count := 0, 0
	for path, d := range at {
		if strings.HasPrefix(path, "data/") {
			octets, count = octets+len(d), count+1
		}
	}
	if want := fmt.Sprintf("\nPayload-Oxum: %d.%d\n", octets, count); !strings.Contains("\n"+string(at["bag-info.txt"]), want) {
		return fmt.Errorf("Payload-Oxum is not%q", want)
	}
	return nil
}

func TestABagIsValid(t *testing.T) {
	files, err := kept().Files()
	require.NoError(t, err)
	require.NoError(t, valid(files))
	for _, f := range files {
		assert.True(t, utf8.Valid(f.Data))
	}
}

// A reading that cannot fail is none: any change of any byte is found.
func TestABagTellsOfAnyChange(t *testing.T) {
	files, err := kept().Files()
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		spoilt := append([]File(nil), files...)
		i := rapid.IntRange(0, len(spoilt)-1).Draw(t, "file")
		if spoilt[i].Path == "tagmanifest-sha256.txt" || len(spoilt[i].Data) == 0 {
			t.Skip("nothing vouches for the last manifest")
		}
		d := bytes.Clone(spoilt[i].Data)
		d[rapid.IntRange(0, len(d)-1).Draw(t, "byte")] ^= 1
		spoilt[i].Data = d
		require.Error(t, valid(spoilt))
	})
}

// The manifest is read by a program that is not ours.
func TestTheManifestIsReadBySha256sum(t *testing.T) {
	if _, err := exec.LookPath("sha256sum"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("sha256sum is not here")
		}
		t.Skip("sha256sum is not here")
	}
	b := kept()
	b.Payload = b.Payload[:1]
	files, err := b.Files()
	require.NoError(t, err)
	dir := t.TempDir()
	for _, f := range files {
		path := filepath.Join(dir, filepath.FromSlash(f.Path))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, f.Data, 0o644))
	}
	for _, m := range []string{"manifest-sha256.txt", "tagmanifest-sha256.txt"} {
		c := exec.Command("sha256sum", "--check", "--strict", m)
		c.Dir = dir
		out, err := c.CombinedOutput()
		require.NoError(t, err, string(out))
	}
}

func TestTags(t *testing.T) {
	files, err := kept().Files()
	require.NoError(t, err)
	for _, f := range files {
		if f.Path != "bag-info.txt" {
			continue
		}
		for _, line := range strings.Split(strings.TrimSuffix(string(f.Data), "\n"), "\n") {
			assert.LessOrEqual(t, len(line), 79)
			assert.Regexp(t, `^([A-Z][A-Za-z-]*: |  )\S`, line)
		}
		assert.Contains(t, string(f.Data), "\nBagging-Date: 2026-10-30\n")
	}
}

func TestPathsThatNoBagHolds(t *testing.T) {
	for _, path := range []string{"", "/etc/x", "../x", "a//b", "a/./b", `a\b`, "c:x", "a/"} {
		_, err := Bag{Payload: []File{{path, nil}}}.Files()
		var fault *PathError
		require.ErrorAs(t, err, &fault, path)
	}
	_, err := Bag{Payload: []File{{"A", nil}, {"B", nil}, {"a", nil}}}.Files()
	require.Error(t, err)
}

func TestTheSameBagIsTheSameBytes(t *testing.T) {
	a, err := kept().Files()
	require.NoError(t, err)
	b := kept()
	b.Payload[0], b.Payload[2] = b.Payload[2], b.Payload[0]
	c, err := b.Files()
	require.NoError(t, err)
	assert.Equal(t, a, c)
}
