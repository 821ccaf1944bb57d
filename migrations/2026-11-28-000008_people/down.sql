DROP TABLE tokens;
DROP TABLE sessions;
DROP TABLE person_roles;
DROP TABLE people;
