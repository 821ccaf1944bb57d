-- What was done at a place in a time, what was under way there then, and when it was cleaned.
CREATE INDEX deeds_by_place ON deeds (place_id, at);
CREATE INDEX deeds_under_way ON deeds (place_id, began_at) WHERE began_at IS NOT NULL;
CREATE INDEX clean_downs ON deeds (place_id, at) WHERE kind = 'clean-down';
-- What was moved to a place.
CREATE INDEX moves_by_place ON pack_events (place_id) WHERE account = 'moved';
-- Where somebody starts from who knows a day, or a supplier.
CREATE INDEX sources_by_supplier ON sources (supplier) WHERE supplier IS NOT NULL;
