-- What a correction found wrong in what another deed said, and what is right: its fields as they were
-- asked, as JSON. The deed itself stays as it was.
CREATE TABLE corrections (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    was TEXT NOT NULL,
    now TEXT NOT NULL
);
CREATE INDEX corrections_by_deed ON corrections (deed_id);

-- What a correction, or the void of one, made of a lot: what it was born as, judged again. `condition` is
-- that of its birth; none for a lot of the time before that was asked. `was` and `now` hold the columns of
-- lots that changed, as JSON.
CREATE TABLE judged_again (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    condition TEXT,
    was TEXT NOT NULL,
    now TEXT NOT NULL
);
CREATE INDEX judged_again_by_lot ON judged_again (lot_id);
CREATE INDEX judged_again_by_deed ON judged_again (deed_id);

-- Whose readings these are instead of, where a correction or what was judged again brings them: all that
-- the deed said of that lot.
ALTER TABLE measurements ADD COLUMN of_deed_id INTEGER;
CREATE INDEX measurements_instead ON measurements (of_deed_id) WHERE of_deed_id IS NOT NULL;
