-- What is recorded at the boards. One SQL for SQLite and PostgreSQL; ${clustered} is WITHOUT ROWID on SQLite, else empty.
-- Words that may be missing in a record ('bag', 'face', 'approach', ...) are '' and not null, so that they can be keys.
-- Flags are 0 or 1. Instants are ISO-8601 text with the offset as given; *_ms is the same instant in epoch milliseconds.

create table player (
  id integer not null primary key,
  name text not null unique,
  hand text not null default 'right' check (hand in ('left', 'right')),
  throws_from text not null default 'left' check (throws_from in ('left', 'right')),
  preferences text not null default '{}',
  -- Grows with every change of the player's records; what is derived from them is cached under it.
  version bigint not null default 0,
  created_at text not null
);

create table bag (
  player integer not null references player (id),
  id text not null,
  name text not null,
  slow_speed integer check (slow_speed between 1 and 10),
  fast_speed integer check (fast_speed between 1 and 10),
  weight_oz double precision check (weight_oz > 0),
  fill text not null default '',
  note text not null default '',
  retired integer not null default 0 check (retired in (0, 1)),
  primary key (player, id),
  unique (player, name)
);

create table board (
  player integer not null references player (id),
  id text not null,
  name text not null,
  kind text not null check (kind in ('regulation', 'narrow')),
  width_in double precision not null default 24 check (width_in > 0 and width_in <= 24),
  front_in double precision not null default 3.5 check (front_in between 2 and 6),
  note text not null default '',
  retired integer not null default 0 check (retired in (0, 1)),
  primary key (player, id),
  unique (player, name)
);

create table session (
  player integer not null references player (id),
  id text not null,
  started_at text not null,
  started_ms bigint not null,
  -- The date of started_at in its own offset.
  day text not null,
  note text not null default '',
  primary key (player, id)
);
create index session_by_start on session (player, started_ms, id);

create table run (
  player integer not null,
  id text not null,
  session text not null,
  drill text not null,
  started_at text not null,
  started_ms bigint not null,
  -- The session's day, kept here too so that a window of days is one index range.
  day text not null,
  warm_up integer not null default 0 check (warm_up in (0, 1)),
  opponent text not null default '',
  target integer,
  game integer,
  trial text not null default '',
  note text not null default '',
  -- What the next run of this drill starts from: JSON, see boardside.app.practice.Setup.
  setup text not null default '{}',
  finished_at text,
  deleted_at text,
  -- Sums over the player's own sides, kept up to date with every change of a round.
  rounds integer not null default 0,
  thrown integer not null default 0,
  bags_in integer not null default 0,
  -- 3 in + on; null where only the bags in were counted, or nothing but the bags thrown.
  points integer,
  primary key (player, id),
  foreign key (player, session) references session (player, id)
);
create index run_by_session on run (player, session);
create index run_by_day on run (player, day);
create index run_by_drill on run (player, drill, started_ms, id);
create index run_by_start on run (player, started_ms, id);
create index run_open on run (player, started_ms, id) where finished_at is null and deleted_at is null;
-- All that a run is measured against is read from this alone.
create index run_result on run (player, drill, rounds, started_ms, id, day, thrown, bags_in, points)
  where finished_at is not null and deleted_at is null and warm_up = 0;

-- One side's bags of one round. A round taken back stays as a row without lines, so that a late repeat of an older
-- upload cannot bring it back.
create table round (
  player integer not null,
  run text not null,
  number integer not null check (number >= 1),
  side text not null check (side in ('me', 'a', 'b', 'versus')),
  -- The client's id (UUIDv7) of the newest upload that was applied; '' when imported.
  op text not null default '',
  -- Changed after it was first stored; such a round wins over an import.
  corrected integer not null default 0 check (corrected in (0, 1)),
  primary key (player, run, number, side),
  foreign key (player, run) references run (player, id)
) ${clustered};

create table line (
  player integer not null,
  run text not null,
  number integer not null,
  side text not null,
  bag text not null default '',
  face text not null default '' check (face in ('', 'slow', 'fast')),
  approach text not null default '' check (approach in ('', 'conservative', 'aggressive')),
  board text not null default 'regulation' check (board in ('regulation', 'narrow')),
  setting text not null default 'practice' check (setting in ('practice', 'league', 'tournament')),
  conditions text not null default '' check (conditions in ('', 'slow', 'normal', 'fast')),
  ghost integer check (ghost between 0 and 12),
  thrown integer not null check (thrown between 0 and 100),
  bags_in integer check (bags_in between 0 and thrown),
  bags_on integer check (bags_on between 0 and thrown),
  bags_off integer check (bags_off between 0 and thrown),
  miss_left integer,
  miss_right integer,
  miss_short integer,
  miss_long integer,
  at text not null default '',
  note text not null default '',
  primary key (player, run, number, side, bag, face),
  foreign key (player, run, number, side) references round (player, run, number, side),
  check ((bags_on is null) = (bags_off is null)),
  check (bags_on is null or bags_in is not null and bags_in + bags_on + bags_off = thrown)
) ${clustered};
-- Notes are few; the journal's search reads them through this.
create index line_with_note on line (player, run) where note <> '';

-- Single throws, where they were recorded; the line holds their counts. Inches on the board, see the glossary.
create table throw (
  player integer not null,
  run text not null,
  number integer not null,
  side text not null,
  ordinal integer not null check (ordinal >= 1),
  bag text not null default '',
  face text not null default '',
  outcome text not null check (outcome in ('in', 'on', 'off')),
  miss text not null default '' check (miss in ('', 'left', 'right', 'short', 'long')),
  shot text not null default '',
  aim_x double precision,
  aim_y double precision,
  land_x double precision,
  land_y double precision,
  rest_x double precision,
  rest_y double precision,
  primary key (player, run, number, side, ordinal),
  foreign key (player, run, number, side) references round (player, run, number, side)
) ${clustered};

-- Counts by run and what was thrown how: what analyses read instead of single rounds. Derived from line, in the same
-- transaction.
create table tally (
  player integer not null,
  run text not null,
  side text not null,
  bag text not null,
  face text not null,
  approach text not null,
  board text not null,
  setting text not null,
  conditions text not null,
  rounds integer not null,
  thrown integer not null,
  bags_in integer not null,
  -- Of those bags, the ones whose on and off were counted too, with how they ended.
  known integer not null,
  known_in integer not null,
  known_on integer not null,
  -- Full rounds of four by finish, in the order of boardside.engine.rules.Finish.values(); a round of several lines
  -- counts with its first.
  f00 integer not null, f01 integer not null, f02 integer not null, f03 integer not null, f04 integer not null,
  f10 integer not null, f11 integer not null, f12 integer not null, f13 integer not null,
  f20 integer not null, f21 integer not null, f22 integer not null,
  f30 integer not null, f31 integer not null,
  f40 integer not null,
  primary key (player, run, side, bag, face, approach, board, setting, conditions),
  foreign key (player, run) references run (player, id)
) ${clustered};

create index tally_by_bag on tally (player, bag, run);

-- Every correction and deletion with the earlier version; an undo is one more entry.
create table history (
  player integer not null references player (id),
  id text not null,
  at text not null,
  -- What happened, in the words of boardside.app.practice.Change.Kind.
  kind text not null,
  -- Id of the run, session or bag set concerned, as the kind says.
  subject text not null default '',
  -- JSON of the thing before and after; '' where it did not exist.
  earlier text not null default '',
  later text not null default '',
  undone_at text,
  primary key (player, id)
);
create index history_by_subject on history (player, subject);

-- Devices let in by a pairing code; the token itself is never stored.
create table device (
  id text not null primary key,
  token_hash text not null unique,
  name text not null,
  paired_at text not null,
  seen_at text not null,
  revoked_at text
);
