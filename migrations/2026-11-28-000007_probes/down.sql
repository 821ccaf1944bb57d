ALTER TABLE measurements DROP COLUMN probe_id;
DROP TABLE core_readings;
DROP TABLE probe_checks;
