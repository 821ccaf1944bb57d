DROP TABLE stop_ends;
DROP TABLE stops;
ALTER TABLE lots DROP COLUMN stopped;
