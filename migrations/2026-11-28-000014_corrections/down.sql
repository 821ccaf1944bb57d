DROP INDEX measurements_instead;
ALTER TABLE measurements DROP COLUMN of_deed_id;
DROP TABLE judged_again;
DROP TABLE corrections;
