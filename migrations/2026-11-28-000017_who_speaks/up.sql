-- Which deed was the last when a manager said that the clock is right: only later ones say what time it was since.
ALTER TABLE clock_words ADD COLUMN last_deed INTEGER;
-- May a program with that token speak for others? Those that are there could.
ALTER TABLE tokens ADD COLUMN speaks BOOLEAN NOT NULL DEFAULT TRUE;
