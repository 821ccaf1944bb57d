-- What a lot is from a deed on: a person let it go, a reading or a proof came later. How it was born is
-- in lots.later, before the rules of its later life. A voided deed changed nothing.
CREATE TABLE conditions (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    condition TEXT NOT NULL
);
CREATE INDEX conditions_by_lot ON conditions (lot_id);
CREATE INDEX conditions_by_deed ON conditions (deed_id);
