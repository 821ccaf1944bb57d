ALTER TABLE people DROP COLUMN temperatures;
ALTER TABLE people DROP COLUMN weights;
