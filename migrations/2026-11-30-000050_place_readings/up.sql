-- A scan asks how warm the place of a pack was when it was read last.
CREATE INDEX measurements_by_place ON measurements (place_id, id) WHERE place_id IS NOT NULL;
