-- +goose Up
-- The book's own id: one row. It also stands in the first line of the log and of the journal.
create table identity (
  id blob primary key check (length(id) = 16)
) strict;

-- +goose StatementBegin
create trigger identity_stays before update on identity
begin
  select raise(abort, 'a book keeps its id');
end;
-- +goose StatementEnd

-- +goose StatementBegin
create trigger identity_goes_only_unused before delete on identity when exists (select 1 from entries)
begin
  select raise(abort, 'a book keeps its id');
end;
-- +goose StatementEnd
