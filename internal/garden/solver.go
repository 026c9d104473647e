package garden

import (
	"os"
	"path/filepath"
)

// SolverFolder is where compiled code is kept; empty where nothing can be.
func SolverFolder() string {
	cache, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	folder := filepath.Join(cache, "eyeup", "solver")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return ""
	}
	return folder
}
