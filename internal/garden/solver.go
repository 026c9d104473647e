package garden

import (
	"os"
	"path/filepath"
)

// SolverFolder returns the folder that keeps the compiled solver, or "" if it can't be made.
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
