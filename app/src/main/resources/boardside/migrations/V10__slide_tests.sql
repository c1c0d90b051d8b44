-- Slide tests: a few bags tapped where they landed and where they stopped.

create table slide_test (
  player integer not null references player (id),
  id text not null,
  -- The client's id (UUIDv7) of the newest upload that was applied.
  op text not null,
  -- Deleted; the row stays, so that a late repeat of an older upload cannot bring it back, without what was tapped.
  taken_back integer not null default 0 check (taken_back in (0, 1)),
  at text not null default '',
  at_ms bigint not null default 0,
  -- The day in its own offset, yyyy-mm-dd.
  day text not null default '',
  bag text not null default '',
  face text not null default '' check (face in ('', 'slow', 'fast')),
  board text not null default 'regulation' check (board in ('regulation', 'narrow')),
  conditions text not null default '' check (conditions in ('', 'slow', 'normal', 'fast')),
  -- JSON, see boardside.app.practice.SlideTest.
  slides text not null default '[]',
  primary key (player, id)
);
create index slide_test_by_day on slide_test (player, day) where taken_back = 0;
