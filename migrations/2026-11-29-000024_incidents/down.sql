DROP INDEX stops_by_incident;
ALTER TABLE stops DROP COLUMN incident_id;
DROP TABLE incident_acts;
DROP TABLE incident_scopes;
DROP TABLE incidents;
