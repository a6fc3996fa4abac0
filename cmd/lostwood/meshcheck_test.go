package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
)

// ran runs the program with arguments that are to succeed.
func ran(t *testing.T, args ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	require.Equal(t, done, run(context.Background(), args, &out, &errs), "%s%s", out.String(), errs.String())
}

// missing leaves a test out for want of an outside program, but not where all
// of them ought to be.
func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatal(what)
	}
	t.Skip(what)
}

// manifold-3d 3.5.4 (npm), which is not ours, takes every mesh of the demo for a
// closed solid with the volume and the ways through that we find. It works in
// float32, so the volumes may differ by a few of its last digits.
func TestMeshesByManifold(t *testing.T) {
	check, err := filepath.Abs("../../.ci/meshcheck")
	require.NoError(t, err)
	if _, err := exec.LookPath("node"); err != nil {
		missing(t, "node is not installed: no mesh is checked by manifold-3d")
	}
	if _, err := os.Stat(filepath.Join(check, "node_modules", "manifold-3d")); err != nil {
		missing(t, "manifold-3d is not installed (npm ci in .ci/meshcheck): no mesh is checked by it")
	}
	folder := filepath.Join(t.TempDir(), "wagon")
	ran(t, "make", "--out", folder)
	files, err := filepath.Glob(filepath.Join(folder, "cnc", "*.stl"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	slices.Sort(files)
	said, err := exec.Command("node", append([]string{filepath.Join(check, "check.mjs")}, files...)...).Output()
	require.NoError(t, err)
	says := json.NewDecoder(bytes.NewReader(said))
	for _, name := range files {
		var got struct {
			File, Status string
			Volume       float64
			Through      int
			Triangles    int
		}
		require.NoError(t, says.Decode(&got))
		require.Equal(t, name, got.File)
		require.Equal(t, "NoError", got.Status, name)
		f, err := os.Open(name)
		require.NoError(t, err)
		m, err := mesh.ReadSTL(f)
		f.Close()
		require.NoError(t, err)
		r := mesh.Inspect(m)
		require.NoError(t, r.Err(), name)
		assert.InEpsilon(t, float64(r.Volume), got.Volume, 1e-6, name)
		assert.Equal(t, r.Pieces-r.Euler/2, got.Through, name)
		assert.Equal(t, len(m.Triangles), got.Triangles, name)
	}
}

// lib3mf (Debian's lib3mf1), the reference reader of the 3MF Consortium, in its
// strict mode reads the demo's parts with no warning and finds each closed.
func TestPartsByLib3MF(t *testing.T) {
	if err := exec.Command("/usr/bin/python3", "-c", "import ctypes; ctypes.CDLL('lib3MF.so.1')").Run(); err != nil {
		missing(t, "lib3mf1 or python3 is not installed: no 3MF file is read by lib3mf")
	}
	folder := t.TempDir()
	ran(t, "mesh", "all", "--as", "3mf", "--out", folder)
	files, err := filepath.Glob(filepath.Join(folder, "*.3mf"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	said, err := exec.Command("/usr/bin/python3", "testdata/lib3mf.py", files[0]).CombinedOutput()
	require.NoError(t, err, "%s", said)
	var got struct {
		Strict   bool
		Unit     int
		Warnings []string
		Objects  []struct {
			Triangles int
			Closed    bool
		}
	}
	require.NoError(t, json.Unmarshal(said, &got), "%s", said)
	assert.True(t, got.Strict)
	assert.Equal(t, 1, got.Unit, "lib3mf's number for the millimetre")
	assert.Empty(t, got.Warnings)
	assert.Greater(t, len(got.Objects), 5)
	for i, o := range got.Objects {
		assert.True(t, o.Closed, "object %d", i+1)
		assert.Positive(t, o.Triangles, "object %d", i+1)
	}
}
