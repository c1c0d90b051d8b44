-- Plans with their blocks, what was refused, goals, and who may see whose form and plan.
-- ${clustered} is WITHOUT ROWID on SQLite, else empty.

create table plan (
  player integer not null references player (id),
  id text not null,
  -- yyyy-mm-dd, the day it was made for.
  day text not null,
  minutes integer not null check (minutes >= 1),
  energy text not null,
  bag_sets integer not null check (bag_sets >= 1),
  -- Kinds of board, with commas between.
  boards text not null,
  company integer not null check (company in (0, 1)),
  limited integer not null check (limited in (0, 1)),
  -- Points a round as the records told them when it was made; null where they told nothing.
  before double precision,
  before_low double precision,
  before_high double precision,
  -- When the player put it away, or ''.
  closed_at text not null default '',
  primary key (player, id)
);

create table plan_block (
  player integer not null,
  plan text not null,
  place integer not null check (place >= 0),
  -- What it is, as JSON.
  value text not null,
  -- The run it was thrown in, or ''.
  run text not null default '',
  -- When it was done without a run (a break, a test of the boards), or ''.
  done_at text not null default '',
  primary key (player, plan, place),
  foreign key (player, plan) references plan (player, id)
) ${clustered};
create index plan_block_by_run on plan_block (player, run) where run <> '';

create table refusal (
  player integer not null references player (id),
  id text not null,
  day text not null,
  choice text not null,
  primary key (player, id)
);

create table goal (
  player integer not null references player (id),
  id text not null,
  kind text not null,
  value double precision not null,
  -- yyyy-mm-dd
  by_day text not null,
  set_on text not null,
  -- yyyy-mm-dd when it was given up or put away, or ''.
  dropped_on text not null default '',
  primary key (player, id)
);

-- Not in backups: a permission is given anew.
create table share (
  player integer not null references player (id),
  coach integer not null references player (id),
  granted_at text not null,
  primary key (player, coach),
  check (player <> coach)
);
create index share_by_coach on share (coach);
