-- From now on a stop is looked for on every lot, and `lots.stopped` no longer says whether one was placed: it marks what has a
-- condition, or a label that is no longer true, to look for. To write a mark on each lot of a recall took longer than the stops
-- themselves. Nothing changes in the tables; a program that relies on the mark refuses this record, and must.
SELECT 1;
