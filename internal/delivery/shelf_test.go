package delivery_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/delivery"
)

func put(t *testing.T, folder string, files ...string) error {
	t.Helper()
	var list []delivery.File
	for _, f := range files {
		list = append(list, delivery.File{Path: f, Data: []byte(f)})
	}
	return delivery.Put(folder, list)
}

// A new delivery takes an old one's place, whole: nothing of the old is left.
func TestPutReplaces(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "deep", "wagon")
	require.NoError(t, put(t, folder, "README.txt", "cnc/a.stl", "record/b.txt"))
	require.NoError(t, put(t, folder, "README.txt", "cnc/c.stl"))
	got, err := os.ReadFile(filepath.Join(folder, "cnc", "c.stl"))
	require.NoError(t, err)
	require.Equal(t, "cnc/c.stl", string(got))
	require.NoFileExists(t, filepath.Join(folder, "cnc", "a.stl"))
	require.NoDirExists(t, filepath.Join(folder, "record"))
	beside, err := os.ReadDir(filepath.Dir(folder))
	require.NoError(t, err)
	require.Len(t, beside, 1, "nothing is left beside it")
}

// A folder of somebody's own is never touched.
func TestPutLeavesOthersAlone(t *testing.T) {
	for name, there := range map[string]string{"holidays": "beach.jpg", "half a delivery": "cnc/a.stl"} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, filepath.FromSlash(there))
			require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
			require.NoError(t, os.WriteFile(path, []byte("mine"), 0o644))
			var shelf *delivery.ShelfError
			require.ErrorAs(t, put(t, folder, "README.txt"), &shelf)
			require.Contains(t, shelf.Error(), "--out")
			require.FileExists(t, path)
			require.NoFileExists(t, filepath.Join(folder, "README.txt"))
		})
	}
}

// A delivery that cannot be written whole leaves the last one as it was.
func TestPutFails(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "wagon")
	require.NoError(t, put(t, folder, "README.txt", "cnc/a.stl"))
	require.Error(t, put(t, folder, "README.txt", "cnc", "cnc/b.stl"))
	require.FileExists(t, filepath.Join(folder, "cnc", "a.stl"))
	beside, err := os.ReadDir(filepath.Dir(folder))
	require.NoError(t, err)
	require.Len(t, beside, 1)
}

// A file in the folder's place is told of.
func TestPutOnFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "wagon")
	require.NoError(t, os.WriteFile(name, nil, 0o644))
	require.ErrorContains(t, put(t, name, "README.txt"), "a file of that name is there")
}
