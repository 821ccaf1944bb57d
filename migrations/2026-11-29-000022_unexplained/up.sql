-- What a count could not explain is looked for lot by lot.
CREATE INDEX unexplained_by_lot ON pack_events (lot_id) WHERE account = 'unexplained';
