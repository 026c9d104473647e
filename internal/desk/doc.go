// Package desk answers the grower's questions. Each question has a function, each
// answer a type that prints itself for people and is written as JSON for programs; the
// JSON follows the schema that Schema gives under the answer's name.
package desk
