-- People, what each may do, and how they show who they are. None of it is part of the record of deeds: a
-- deed keeps the name of who did it as it was then. Secrets are kept as hashes only.
CREATE TABLE people (
    id INTEGER PRIMARY KEY,
    uid BYTEA NOT NULL UNIQUE,
    name TEXT NOT NULL UNIQUE,
    -- argon2id of the PIN; none until it is chosen.
    pin TEXT,
    -- SHA-256 of a word that signs in once; none where none was given out.
    word BYTEA,
    language TEXT,
    active BOOLEAN NOT NULL,
    number INTEGER NOT NULL,
    made_at TIMESTAMP NOT NULL
);

-- What a person may do is theirs at one kitchen. `kitchen` is empty while a record holds only one.
CREATE TABLE person_roles (
    id INTEGER PRIMARY KEY,
    person_id INTEGER NOT NULL REFERENCES people (id),
    kitchen TEXT NOT NULL,
    role TEXT NOT NULL,
    UNIQUE (person_id, kitchen, role)
);

-- Who was signed in on which device, from when to when.
CREATE TABLE sessions (
    id INTEGER PRIMARY KEY,
    person_id INTEGER NOT NULL REFERENCES people (id),
    hash BYTEA NOT NULL UNIQUE,
    device TEXT NOT NULL,
    began_at TIMESTAMP NOT NULL,
    ends_at TIMESTAMP NOT NULL
);
CREATE INDEX sessions_by_device ON sessions (device, began_at);

-- Tokens for programs. Shown once.
CREATE TABLE tokens (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    kitchen TEXT NOT NULL,
    role TEXT NOT NULL,
    hash BYTEA NOT NULL UNIQUE,
    made_at TIMESTAMP NOT NULL,
    made_by TEXT NOT NULL,
    ends_at TIMESTAMP
);
