-- Checks of a probe in melting ice or boiling water, with the figure that it showed on its own scale
-- ('celsius' or 'fahrenheit').
CREATE TABLE probe_checks (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    probe_id INTEGER NOT NULL REFERENCES entries (id),
    bath TEXT NOT NULL CHECK (bath IN ('ice', 'boiling')),
    quantity TEXT NOT NULL,
    millionths BIGINT NOT NULL
);
CREATE INDEX probe_checks_by_probe ON probe_checks (probe_id);

-- The points of a heat log, as they were read.
CREATE TABLE core_readings (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    at TIMESTAMP NOT NULL,
    quantity TEXT NOT NULL,
    millionths BIGINT NOT NULL,
    probe_id INTEGER REFERENCES entries (id)
);
CREATE INDEX core_readings_by_deed ON core_readings (deed_id);

-- What a temperature was read with, where somebody says so.
ALTER TABLE measurements ADD COLUMN probe_id INTEGER;
