DROP TABLE incident_reports;
