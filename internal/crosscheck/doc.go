// Package crosscheck holds no program, only tests: it compares the sun and moist air of
// this project with libraries written by others, run by node. The libraries are pinned in
// package-lock.json and fetched by npm when they are not there. Where node or npm is absent
// the tests are left out and say so; under CI, where nothing may be left out, they fail.
package crosscheck
