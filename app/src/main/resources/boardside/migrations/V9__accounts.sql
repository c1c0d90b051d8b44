-- Accounts of hosted mode: who may sign in, where they are signed in, links that work once, and tries that failed.
-- Here instants are epoch milliseconds alone: they are compared, and told in the zone of whoever asks.

create table account (
  id text not null primary key,
  -- As it is shown, and as it is looked up: compatibility forms folded (NFKC), in lower case.
  name text not null,
  sign_in text not null unique,
  role text not null check (role in ('player', 'organiser', 'host')),
  -- Argon2id with its parameters and salt, in the usual form ($argon2id$v=19$m=...,t=...,p=...$salt$hash).
  password text not null,
  made_ms bigint not null,
  -- When it was closed; null while it may sign in.
  closed_ms bigint
);

-- Whose a player is; null for those of a household without accounts.
alter table player add column account text references account (id);
-- What their account calls them, which others may call theirs too; '' without an account. The name stays unique.
alter table player add column called text not null default '';
create index player_by_account on player (account, id);

-- Numbers of players are given once: pages, phones and answers kept in memory know players by them.
create table player_number (
  only_row integer not null primary key check (only_row = 1),
  last integer not null
);
insert into player_number (only_row, last) select 1, coalesce(max(id), 0) from player;

-- Where an account is signed in; the token itself is never stored.
create table login (
  id text not null primary key,
  account text not null references account (id),
  token_hash text not null unique,
  device text not null,
  made_ms bigint not null,
  seen_ms bigint not null
);
create index login_by_account on login (account, made_ms);

-- Links that work once: an invitation, or a new password for an account. The token itself is never stored.
create table ticket (
  id text not null primary key,
  kind text not null check (kind in ('invitation', 'reset')),
  token_hash text not null unique,
  -- The role an invitation gives, and for whom it was made, as whoever made it noted.
  role text not null default 'player' check (role in ('player', 'organiser', 'host')),
  note text not null default '',
  -- The account whose password a reset sets; null for an invitation.
  account text references account (id),
  made_ms bigint not null,
  until_ms bigint not null
);

-- Tries to sign in that count against a name or an address (both as hashes), within a window that begins with the first.
create table attempt (
  subject text not null primary key,
  tries integer not null,
  since_ms bigint not null
);
create index attempt_by_start on attempt (since_ms);

-- The code that lets devices of a house in: one at a time, for minutes.
create table pairing (
  only_row integer not null primary key check (only_row = 1),
  code text not null,
  until_ms bigint not null,
  guesses integer not null
);
