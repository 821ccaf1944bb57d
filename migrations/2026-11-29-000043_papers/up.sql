-- A paper that belongs to a deed: a delivery note, a certificate, a photo, a print-out. It is a deed itself, and
-- never changed: `hash` is the SHA-256 of its content, which is in the chain with all the rest.
CREATE TABLE papers (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    of_deed_id INTEGER NOT NULL REFERENCES deeds (id),
    kind TEXT NOT NULL,
    name TEXT,
    form TEXT NOT NULL,
    bytes BIGINT NOT NULL CHECK (bytes > 0),
    hash TEXT NOT NULL
);
CREATE INDEX papers_by_deed ON papers (of_deed_id);
-- The content of papers, in parts of 256 KB. It is in no chain by itself: the hash of its paper is.
CREATE TABLE paper_parts (
    id INTEGER PRIMARY KEY,
    paper_id INTEGER NOT NULL REFERENCES papers (id),
    part BYTEA NOT NULL
);
CREATE INDEX paper_parts_by_paper ON paper_parts (paper_id);
-- That the content of a paper was thrown away when nobody had to keep it any more. The paper itself stays.
CREATE TABLE thinnings (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    paper_id INTEGER NOT NULL UNIQUE REFERENCES papers (id)
);
CREATE INDEX thinnings_by_deed ON thinnings (deed_id);
