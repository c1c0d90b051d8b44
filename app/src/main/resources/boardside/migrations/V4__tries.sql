-- Placement and situations: single tries, and the situations a player keeps.

create table try (
  player integer not null,
  run text not null,
  number integer not null check (number >= 1),
  -- The client's id (UUIDv7) of the newest upload that was applied.
  op text not null,
  -- Taken back; the row stays, so that a late repeat of an older upload cannot bring it back.
  taken_back integer not null default 0 check (taken_back in (0, 1)),
  side text not null default 'me' check (side in ('me', 'versus')),
  shot text not null,
  -- Depth and lane, such as 2-left, or ''.
  target text not null default '',
  -- What lay on the board: JSON, see boardside.engine.tactics.Position.
  position text not null,
  -- Id of the situation it was set up from, or ''.
  situation text not null default '',
  -- Where it stands in a chain of shots; null where it stands alone.
  go integer,
  step integer,
  steps integer,
  by_hand integer not null check (by_hand in (0, 1)),
  worked integer not null check (worked in (0, 1)),
  -- Where the bag ended: '' where that was not kept. Inches on the board, see the glossary.
  outcome text not null default '' check (outcome in ('', 'in', 'on', 'off')),
  miss text not null default '' check (miss in ('', 'left', 'right', 'short', 'long')),
  rest_x double precision,
  rest_y double precision,
  bag text not null default '',
  face text not null default '' check (face in ('', 'slow', 'fast')),
  approach text not null default '' check (approach in ('', 'conservative', 'aggressive')),
  board text not null default 'regulation' check (board in ('regulation', 'narrow')),
  setting text not null default 'practice' check (setting in ('practice', 'league', 'tournament')),
  conditions text not null default '' check (conditions in ('', 'slow', 'normal', 'fast')),
  at text not null default '',
  primary key (player, run, number),
  foreign key (player, run) references run (player, id)
) ${clustered};

create table situation (
  player integer not null references player (id),
  id text not null,
  op text not null,
  name text not null,
  position text not null,
  retired integer not null default 0 check (retired in (0, 1)),
  primary key (player, id)
);
