-- The player's version at the run's last change that counts: analyses read again only what has changed since they last did.
alter table run add column version bigint not null default 0;
create index run_by_version on run (player, version);

-- What a fit of the skill model begins with: how the last one ended, as JSON. Derived, so in no backup.
create table learned (
  player integer not null primary key references player (id),
  value text not null
);
