-- Trials: fair comparisons of ways to throw. Which runs belong to one is said in run.trial.

create table trial (
  player integer not null references player (id),
  id text not null,
  name text not null,
  -- Ways to throw, JSON: see boardside.app.practice.TrialPlan.
  candidates text not null,
  board text not null check (board in ('regulation', 'narrow')),
  -- Blocks after which it ends.
  longest integer not null check (longest >= 1),
  -- Points a round within which candidates count as equal.
  margin double precision not null check (margin > 0),
  -- Where the order of its blocks comes from.
  seed bigint not null,
  made_at text not null,
  state text not null check (state in ('open', 'paused', 'stopped')),
  deleted integer not null default 0 check (deleted in (0, 1)),
  primary key (player, id)
);
create index run_by_trial on run (player, trial) where trial <> '';
