-- What can still change the dates of a lot's packs, fixed when it was made: `opened=7/1 freeze-day-counts`.
-- None for lots made before this was kept: for them the product's own rule says it.
ALTER TABLE lots ADD COLUMN later TEXT;
-- How it is packed, where air was taken out.
ALTER TABLE lots ADD COLUMN packaging TEXT;

-- Why: the links of each chain, in order, as they were when the deed was done.
CREATE TABLE reasons (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    topic TEXT NOT NULL,
    says TEXT NOT NULL,
    rule TEXT NOT NULL,
    source TEXT NOT NULL
);
CREATE INDEX reasons_by_lot ON reasons (lot_id);
