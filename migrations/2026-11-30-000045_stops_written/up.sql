-- Nothing on SQLite. On PostgreSQL stops are written without a look at their lot and deed for each row: see `migrate.rs`,
-- which drops those two foreign keys where this is pending, for SQLite knows no such statement.
SELECT 1;
