-- In which units somebody reads and types; empty where the kitchen's hold. No part of the record of deeds.
ALTER TABLE people ADD COLUMN weights TEXT;
ALTER TABLE people ADD COLUMN temperatures TEXT;
