-- Which record it is: the same in every copy of it. One row, made when it is first served.
CREATE TABLE identities (
    id INTEGER PRIMARY KEY,
    mark BYTEA NOT NULL,
    made_at TIMESTAMP NOT NULL
);

-- In which file or database it is worked in: a row each time that changed. Of one place: carried nowhere.
CREATE TABLE record_leases (
    id INTEGER PRIMARY KEY,
    mark BYTEA NOT NULL,
    at TIMESTAMP NOT NULL,
    medium TEXT NOT NULL,
    place TEXT NOT NULL,
    why TEXT NOT NULL CHECK (why IN ('made', 'restored', 'moved'))
);

-- What came of each copy and of each trial of one. Of one place: carried nowhere.
CREATE TABLE copies (
    id INTEGER PRIMARY KEY,
    at TIMESTAMP NOT NULL,
    what TEXT NOT NULL CHECK (what IN ('copy', 'drill')),
    trouble TEXT,
    name TEXT NOT NULL,
    bytes BIGINT NOT NULL CHECK (bytes >= 0),
    took_ms BIGINT NOT NULL CHECK (took_ms >= 0),
    deeds BIGINT NOT NULL CHECK (deeds >= 0),
    anchor TEXT,
    says TEXT
);
