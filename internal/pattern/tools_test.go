package pattern

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
)

// tool finds a program to check against. Where it is missing the test is left
// out, with a word; where CI is "true" it fails, so that nothing goes unchecked there.
func tool(t *testing.T, name, from string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is missing; install %s", name, from)
	}
	t.Skipf("%s is missing; install %s to check against it", name, from)
	return ""
}

func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	var out, complaint bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &complaint
	require.NoError(t, c.Run(), complaint.String())
	return out.Bytes()
}

// saved writes bytes to a file of the test's own.
func saved(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

func pdfOf(t *testing.T, item *vehicle.Item, p Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, wagon(item), item, p))
	return b.Bytes()
}

func paperNamed(t *testing.T, name string) Paper {
	t.Helper()
	p, err := FindPaper(name)
	require.NoError(t, err)
	return p
}

func readFile(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return data
}
