DROP INDEX measurements_by_place;
