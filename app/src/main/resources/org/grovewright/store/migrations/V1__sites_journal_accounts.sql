-- Runs unchanged on SQLite and on PostgreSQL: text and whole numbers only, times as milliseconds
-- since 1970 in universal time, days as yyyy-mm-dd, yes and no as 1 and 0.

create table account (
  id text primary key,
  name text not null,
  name_key text not null unique,
  password text,
  created bigint not null,
  disabled integer not null default 0
);

create table session (
  token_hash text primary key,
  account_id text not null references account (id) on delete cascade,
  csrf text not null,
  created bigint not null,
  seen bigint not null
);
create index session_by_account on session (account_id);

create table setting (
  account_id text not null references account (id) on delete cascade,
  name text not null,
  value text not null,
  primary key (account_id, name)
);

create table site (
  id text primary key,
  name text not null,
  version bigint not null,
  position bigint not null,
  journal_number bigint not null default 0,
  created bigint not null,
  changed bigint not null,
  deleted bigint
);

create table member (
  site_id text not null references site (id) on delete cascade,
  account_id text not null references account (id) on delete cascade,
  role text not null,
  primary key (site_id, account_id)
);
create index member_by_account on member (account_id);

-- Rows are only ever added. An undo or redo is a row of its own; position is the version whose
-- description holds after the row, parent the one that held before an edit.
create table site_edit (
  site_id text not null references site (id) on delete cascade,
  version bigint not null,
  kind text not null,
  position bigint not null,
  parent bigint,
  client_id text,
  label text not null,
  operation text not null,
  name text,
  description text,
  account_id text,
  author text not null,
  made bigint not null,
  primary key (site_id, version)
);
create unique index site_edit_by_client on site_edit (site_id, client_id);

create table journal_entry (
  id text primary key,
  site_id text not null references site (id) on delete cascade,
  number bigint not null,
  revision bigint not null,
  day text not null,
  kind text not null,
  subject_kind text not null,
  subject text not null,
  amount double precision,
  amount_kind text,
  note text not null,
  account_id text,
  author text not null,
  created bigint not null,
  changed bigint not null,
  deleted integer not null default 0
);
create unique index journal_entry_by_number on journal_entry (site_id, number);

create table feed (
  token_hash text primary key,
  site_id text not null references site (id) on delete cascade,
  account_id text not null references account (id) on delete cascade,
  created bigint not null
);
create index feed_by_site on feed (site_id);

-- The owner who works at the program's own machine needs no password there.
insert into account (id, name, name_key, created) values ('local', 'Owner', 'owner', 0);
