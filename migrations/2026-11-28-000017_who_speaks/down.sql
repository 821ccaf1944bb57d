ALTER TABLE tokens DROP COLUMN speaks;
ALTER TABLE clock_words DROP COLUMN last_deed;
