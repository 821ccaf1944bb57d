-- The chain: a link for every deed, and for every row that is part of the record without being a deed's. `kind`
-- is `deed`, or the table of the row; `parts` says of each table how many rows the link is about and what their
-- SHA-256 is; `head` is the SHA-256 of the link and of the head before it. `late` where it was sealed after it
-- was recorded: in a record of the time before the chain.
CREATE TABLE chain (
    id INTEGER PRIMARY KEY,
    kind TEXT NOT NULL,
    of_id INTEGER NOT NULL,
    late BOOLEAN NOT NULL,
    parts TEXT NOT NULL,
    head TEXT NOT NULL
);
-- One row while the record holds what was never sealed: what was there before the chain. It is sealed when the
-- record is opened, and the row goes with the same transaction.
CREATE TABLE chain_due (id INTEGER PRIMARY KEY);
INSERT INTO chain_due (id) VALUES (1);
