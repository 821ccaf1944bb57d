-- What was read when a place failed is how warm it was read last: a scan asks for that.
CREATE INDEX place_failures ON deeds (place_id, at) WHERE kind = 'place-failed';
