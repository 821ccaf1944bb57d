-- Recalls, and drills of one. What was asked is kept with each act that says how far it goes.
CREATE TABLE incidents (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    number TEXT NOT NULL UNIQUE,
    told_by TEXT NOT NULL,
    told_at TIMESTAMP NOT NULL,
    hazard TEXT NOT NULL,
    drill BOOLEAN NOT NULL,
    holds BOOLEAN NOT NULL,
    why TEXT NOT NULL
);
CREATE TABLE incident_scopes (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    incident_id INTEGER NOT NULL REFERENCES incidents (id),
    question TEXT NOT NULL,
    digest TEXT NOT NULL,
    lots INTEGER NOT NULL,
    why TEXT NOT NULL
);
CREATE INDEX incident_scopes_by_incident ON incident_scopes (incident_id);
-- What else was done in it: notes, whether guests are told, its end.
CREATE TABLE incident_acts (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    incident_id INTEGER NOT NULL REFERENCES incidents (id),
    kind TEXT NOT NULL,
    whom TEXT,
    text TEXT NOT NULL
);
CREATE INDEX incident_acts_by_incident ON incident_acts (incident_id);
-- The incident that a hold is for.
ALTER TABLE stops ADD COLUMN incident_id INTEGER;
CREATE INDEX stops_by_incident ON stops (incident_id) WHERE incident_id IS NOT NULL;
