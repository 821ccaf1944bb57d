DROP INDEX animals_by_kill;
ALTER TABLE reasons DROP COLUMN basis;
ALTER TABLE reasons DROP COLUMN said;
