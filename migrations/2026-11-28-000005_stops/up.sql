-- What a deed stopped: a lot, or one pack of it, from a moment on. `root_id` is the stop that it was
-- inherited from, its own id where it is the first. `said` and `basis` are a message and its rows, as JSON.
CREATE TABLE stops (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    pack_id INTEGER REFERENCES packs (id),
    root_id INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('failed', 'held')),
    topic TEXT NOT NULL,
    said TEXT NOT NULL,
    basis TEXT NOT NULL,
    since TIMESTAMP NOT NULL
);
CREATE INDEX stops_by_lot ON stops (lot_id);
CREATE INDEX stops_by_deed ON stops (deed_id);

-- What ended a stop, and how. A voided deed ended nothing.
CREATE TABLE stop_ends (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    stop_id INTEGER NOT NULL REFERENCES stops (id),
    what TEXT NOT NULL CHECK (what IN ('discarded', 'returned', 'released', 'put-right'))
);
CREATE INDEX stop_ends_by_stop ON stop_ends (stop_id);

-- Was a stop ever placed on it? Only then is it looked for: nearly no lot has one.
ALTER TABLE lots ADD COLUMN stopped BOOLEAN NOT NULL DEFAULT FALSE;
