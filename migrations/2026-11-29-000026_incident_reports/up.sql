-- What the report of an incident says, kept when it is closed: the same for ever after, whatever the lists say then.
CREATE TABLE incident_reports (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    incident_id INTEGER NOT NULL REFERENCES incidents (id),
    facts TEXT NOT NULL
);
CREATE INDEX incident_reports_by_incident ON incident_reports (incident_id);
