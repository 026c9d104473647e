// Package desk serves the pages with one open garden: its book, its stock, and the answers worked out from
// them. It is safe for concurrent use. Answers are kept until an entry or a new day makes them old. It also
// lists every answer that has a JSON schema. Questions that need no open garden have packages of their own.
package desk
