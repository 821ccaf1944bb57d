DROP INDEX place_failures;
