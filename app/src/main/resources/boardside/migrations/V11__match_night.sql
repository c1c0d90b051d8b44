-- Matches of seasons that are thrown live: which run is which game, what was changed later, where the video is, how often what
-- is shown of a match has changed; and whose a season is.

-- The account that made it; null where nobody was signed in (a household, the command line).
alter table season add column owner text references account (id) on delete set null;

-- Organisers whom its owner lets run it too.
create table season_organiser (
  season text not null references season (id),
  account text not null references account (id) on delete cascade,
  primary key (season, account)
) ${clustered};

-- The run that a side of a game is thrown in. It goes with the player's records; the rounds told of the match stay.
create table season_run (
  player integer not null,
  run text not null,
  season text not null,
  match_id text not null,
  game integer not null check (game >= 1),
  side text not null check (side in ('first', 'second')),
  primary key (player, run),
  unique (season, match_id, game, side),
  foreign key (player, run) references run (player, id) on delete cascade,
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};

-- Changes of rounds that came too late to be part of throwing, and all of the organiser's.
create table season_round_edit (
  season text not null,
  match_id text not null,
  id text not null,
  at text not null,
  said_by text not null check (said_by in ('first', 'second', 'organiser')),
  game integer not null check (game >= 1),
  side text not null check (side in ('first', 'second')),
  round integer not null check (round >= 1),
  -- Bags in, on and off as 3-1-0, or '' for none.
  earlier text not null,
  later text not null,
  primary key (season, match_id, id),
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};

-- Where a side shows itself throwing: an https address.
create table season_stream (
  season text not null,
  match_id text not null,
  side text not null check (side in ('first', 'second')),
  address text not null,
  primary key (season, match_id, side),
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};

-- How often what is shown of a match has changed since its first round.
create table season_live (
  season text not null,
  match_id text not null,
  version bigint not null,
  primary key (season, match_id),
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};
