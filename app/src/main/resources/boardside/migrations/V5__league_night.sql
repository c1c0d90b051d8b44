-- Leagues that somebody else runs, challenges taken up, and what a run did that its sums do not show.
-- ${clustered} is WITHOUT ROWID on SQLite, else empty. Flags are 0 or 1.

create table league (
  player integer not null references player (id),
  id text not null,
  name text not null,
  -- The player's name in its fixtures.
  me text not null,
  -- IANA name of the time zone its deadlines are in.
  zone text not null,
  games integer not null check (games >= 1),
  rounds integer not null check (rounds >= 1),
  win_points integer not null,
  tie_points integer not null,
  loss_points integer not null,
  note text not null default '',
  deleted integer not null default 0 check (deleted in (0, 1)),
  primary key (player, id)
);

create table fixture (
  player integer not null,
  id text not null,
  league text not null,
  -- 0 where none was said.
  week integer not null default 0 check (week >= 0),
  first_name text not null,
  second_name text not null,
  -- As the league's clocks show it, yyyy-mm-ddThh:mm, or ''.
  deadline text not null default '',
  deleted integer not null default 0 check (deleted in (0, 1)),
  primary key (player, id),
  foreign key (player, league) references league (player, id)
);
create index fixture_by_league on fixture (player, league, week, id);

create table fixture_game (
  player integer not null,
  fixture text not null,
  game integer not null check (game >= 1),
  first_total integer check (first_total >= 0),
  second_total integer check (second_total >= 0),
  -- The run the player threw it in, or ''.
  run text not null default '',
  primary key (player, fixture, game),
  foreign key (player, fixture) references fixture (player, id)
) ${clustered};
create index fixture_game_by_run on fixture_game (player, run) where run <> '';

create table challenge (
  player integer not null,
  id text not null,
  day text not null,
  kind text not null,
  rounds integer not null,
  ghost integer not null,
  need integer not null,
  chance double precision not null,
  low double precision not null,
  high double precision not null,
  run text not null,
  primary key (player, id),
  foreign key (player, run) references run (player, id)
);
create index challenge_by_run on challenge (player, run);

-- Derived from the rounds of a run, in the same transaction, as tally is.
create table feat (
  player integer not null,
  run text not null,
  -- Most full rounds of four in a row that all went in.
  streak integer not null,
  -- Most points of five full rounds in a row, 20 bags; null where there were none.
  twenty integer,
  -- Whether the game was won (1) or lost (0); null where there was none or it is not over.
  won integer check (won in (0, 1)),
  -- The ghost's points, where they were the same in every round.
  ghost integer,
  primary key (player, run),
  foreign key (player, run) references run (player, id)
) ${clustered};
