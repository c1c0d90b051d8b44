-- A game's final score as it was told: the only one there is where the other side's rounds were not all recorded.
alter table run add column score_mine integer;
alter table run add column score_theirs integer;
