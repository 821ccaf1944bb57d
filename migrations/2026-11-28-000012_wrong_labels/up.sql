-- What a label claims, as facts (kept_texts), and the net weight that it tells a customer. None for
-- labels of the time before: they stay as they were.
ALTER TABLE prints ADD COLUMN claims_id INTEGER;
ALTER TABLE prints ADD COLUMN net_mg BIGINT;
CREATE INDEX prints_by_pack ON prints (pack_id, id);

-- Was a label of it asked for that keeps its claims? Only then is the label judged when something happens
-- to the pack.
ALTER TABLE packs ADD COLUMN printed BOOLEAN NOT NULL DEFAULT FALSE;

-- What a new label of a lot would claim now: kept from its first print on, changed by whatever changes it.
CREATE TABLE label_truths (
    id INTEGER PRIMARY KEY REFERENCES lots (id),
    claims_id INTEGER NOT NULL REFERENCES kept_texts (id)
);

-- Packs whose last label says what is no longer true, by the pack's key. `untrue` is what it says and what
-- is true, as JSON. It follows from prints, print_runs, packs and label_truths, and goes when the label is
-- printed anew; so it is no part of the digest.
CREATE TABLE wrong_labels (
    id INTEGER PRIMARY KEY REFERENCES packs (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    print_id INTEGER NOT NULL REFERENCES prints (id),
    untrue TEXT NOT NULL,
    since TIMESTAMP NOT NULL
);
CREATE INDEX wrong_labels_by_lot ON wrong_labels (lot_id);
