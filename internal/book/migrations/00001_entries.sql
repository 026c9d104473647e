-- +goose Up
create table entries (
  sequence integer primary key,
  id       blob    not null unique check (length(id) = 16),
  kind     text    not null,
  version  integer not null,
  "on"     text    not null,
  at       text    not null,
  written  text    not null,
  offset   text    not null,
  who      text    not null,
  device   text    not null,
  body     text    not null,
  hash     blob    not null check (length(hash) = 32)
) strict;

-- +goose StatementBegin
create trigger entries_are_never_changed before update on entries
begin
  select raise(abort, 'entries are never changed; put them right by another');
end;
-- +goose StatementEnd

-- +goose StatementBegin
create trigger entries_are_never_deleted before delete on entries
begin
  select raise(abort, 'entries are never deleted; put them right by another');
end;
-- +goose StatementEnd

-- Also against "insert or replace", which deletes without asking the trigger above.
-- +goose StatementBegin
create trigger entries_only_follow before insert on entries
when new.sequence <> (select coalesce(max(sequence), 0) + 1 from entries)
  or exists (select 1 from entries where id = new.id)
begin
  select raise(abort, 'entries are only ever added, one after another, each with an id of its own');
end;
-- +goose StatementEnd

-- Names of people stand apart from what they did: they may be blanked, entries may not.
create table people (
  id   text primary key,
  name text not null
) strict;

-- Papers are whole files, such as a weather record, kept under the hash of what they say.
create table papers (
  hash    blob primary key check (length(hash) = 32),
  content blob not null -- compressed
) strict;

-- What the entries come to, as a cache: it may be thrown away at any time.
create table snapshots (
  sequence integer primary key, -- of the last entry in it
  head     blob not null,       -- that entry's hash
  hash     blob not null,       -- of the content
  content  blob not null
) strict;
