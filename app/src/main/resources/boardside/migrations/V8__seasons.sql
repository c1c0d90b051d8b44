-- Seasons that are run here: who plays, who meets whom in which week, what was thrown, and what was changed. They belong to
-- nobody's practice. ${clustered} is WITHOUT ROWID on SQLite, else empty. Flags are 0 or 1.

create table season (
  id text not null primary key,
  name text not null,
  -- IANA name of the time zone its clocks are in.
  zone text not null,
  -- When its first week begins, as its clocks show it, yyyy-mm-ddThh:mm.
  starts text not null,
  games integer not null check (games >= 1),
  rounds integer not null check (rounds >= 1),
  win_points integer not null,
  tie_points integer not null,
  loss_points integer not null,
  -- Words in the order asked, with commas between.
  tie_breaks text not null,
  meetings text not null check (meetings in ('single', 'double')),
  qualifiers integer not null check (qualifiers >= 0),
  handicap integer not null check (handicap in (0, 1)),
  -- When the first round of its play-off begins, or ''.
  playoff_starts text not null default '',
  -- Whether anyone may see tables, results and calendars.
  open integer not null default 0 check (open in (0, 1)),
  -- Where the lots come from.
  seed bigint not null,
  note text not null default '',
  made_at text not null,
  -- Grows with each change.
  version bigint not null default 0,
  deleted integer not null default 0 check (deleted in (0, 1))
);

create table season_division (
  season text not null references season (id),
  place integer not null check (place >= 0),
  name text not null,
  primary key (season, place)
) ${clustered};

create table season_entrant (
  season text not null,
  id text not null,
  division integer not null,
  -- In the division's schedule.
  number integer not null check (number >= 1),
  name text not null,
  standing text not null check (standing in ('in', 'left', 'struck')),
  -- In the play-off, or 0.
  seed integer not null default 0 check (seed >= 0),
  -- Whose records are kept here too, or null.
  player integer references player (id) on delete set null,
  primary key (season, id),
  foreign key (season, division) references season_division (season, place)
) ${clustered};

create table season_match (
  season text not null,
  id text not null,
  stage text not null check (stage in ('league', 'play-off')),
  division integer not null,
  -- Week of the season, or round of the play-off.
  week integer not null check (week >= 1),
  place integer not null check (place >= 1),
  first_entrant text not null,
  second_entrant text not null,
  -- When it closes where that was put off, as the season's clocks show it, or ''.
  extended text not null default '',
  state text not null check (state in ('open', 'reported', 'confirmed', 'disputed', 'forfeited')),
  -- Which players have said that the totals are right.
  said text not null check (said in ('nobody', 'first', 'second', 'both')),
  -- Who is given the games that were not thrown, or ''.
  forfeit text not null default '' check (forfeit in ('', 'first', 'second', 'neither')),
  first_substitute text not null default '',
  second_substitute text not null default '',
  -- Points the side named first is given in each game; negative, the other side.
  head_start integer not null default 0,
  note text not null default '',
  primary key (season, id),
  foreign key (season, first_entrant) references season_entrant (season, id),
  foreign key (season, second_entrant) references season_entrant (season, id)
) ${clustered};
create index season_match_by_week on season_match (season, stage, week, division, place);

create table season_game (
  season text not null,
  match_id text not null,
  game integer not null check (game >= 1),
  first_total integer check (first_total >= 0),
  second_total integer check (second_total >= 0),
  primary key (season, match_id, game),
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};

-- Rounds of a game as they came in, for matches that are thrown live.
create table season_round (
  season text not null,
  match_id text not null,
  game integer not null check (game >= 1),
  side text not null check (side in ('first', 'second')),
  round integer not null check (round >= 1),
  -- The client's id of the newest upload applied; an older one that comes late changes nothing.
  op text not null,
  in_count integer not null check (in_count >= 0),
  on_count integer not null check (on_count >= 0),
  off_count integer not null check (off_count >= 0),
  -- When it was thrown as the client has it, and when the server had it; ISO-8601.
  thrown_at text not null,
  received_at text not null,
  -- Sent as it was thrown, kept on the phone and sent late, or typed in afterwards.
  way text not null check (way in ('live', 'late', 'typed')),
  primary key (season, match_id, game, side, round),
  foreign key (season, match_id) references season_match (season, id)
) ${clustered};

-- Corrections and whatever else was changed, with the parts concerned before and after as JSON.
create table season_change (
  season text not null references season (id),
  id text not null,
  at text not null,
  kind text not null,
  earlier text not null,
  later text not null,
  undone_at text,
  primary key (season, id)
) ${clustered};
