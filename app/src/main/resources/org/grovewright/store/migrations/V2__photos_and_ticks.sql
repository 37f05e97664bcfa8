-- ${bytes} is what the database calls a column of bytes.

create table journal_photo (
  entry_id text primary key references journal_entry (id) on delete cascade,
  type text not null,
  hash text not null,
  size bigint not null,
  content ${bytes} not null,
  account_id text,
  author text not null,
  added bigint not null
);

create table shopping_tick (
  site_id text not null references site (id) on delete cascade,
  item text not null,
  ticked integer not null,
  changed bigint not null,
  account_id text,
  author text not null,
  primary key (site_id, item)
);
