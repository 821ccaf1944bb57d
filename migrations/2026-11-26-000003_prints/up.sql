-- Texts that many rows share, once each, by the SHA-256 of their UTF-8: a template's file, the words
-- that the labels of one deed have in common.
CREATE TABLE kept_texts (
    id INTEGER PRIMARY KEY,
    hash TEXT NOT NULL UNIQUE,
    text TEXT NOT NULL
);

-- Labels that somebody asked a printer for, one row a label: what was asked and what the label says.
-- Never edited. What becomes of it is in print_runs.
CREATE TABLE prints (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    printer_id INTEGER NOT NULL REFERENCES entries (id),
    version_id INTEGER NOT NULL REFERENCES versions (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    pack_id INTEGER NOT NULL REFERENCES packs (id),
    number INTEGER NOT NULL CHECK (number > 0),
    template TEXT NOT NULL,
    form_id INTEGER NOT NULL REFERENCES kept_texts (id),
    base_id INTEGER NOT NULL REFERENCES kept_texts (id),
    own TEXT NOT NULL,
    dpi INTEGER NOT NULL CHECK (dpi > 0),
    use_by DATE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 0),
    instead_of INTEGER REFERENCES prints (id)
);
CREATE INDEX prints_by_lot ON prints (lot_id, number);
CREATE INDEX prints_by_deed ON prints (deed_id);
CREATE INDEX prints_by_printer ON prints (printer_id);

-- How far each has come: one row a label, changed as the printer works. step counts the changes, and
-- a change names the step it has seen: of two processes one is too late.
CREATE TABLE print_runs (
    id INTEGER PRIMARY KEY REFERENCES prints (id),
    printer_id INTEGER NOT NULL REFERENCES entries (id),
    state TEXT NOT NULL,
    step INTEGER NOT NULL,
    attempt INTEGER NOT NULL,
    perhaps_out BOOLEAN NOT NULL,
    broken_off INTEGER NOT NULL,
    token TEXT,
    job_id INTEGER,
    printer_up INTEGER,
    out_at TIMESTAMP,
    format TEXT,
    document_hash TEXT,
    trouble TEXT,
    changed_at TIMESTAMP NOT NULL
);
CREATE INDEX print_runs_open ON print_runs (printer_id, id) WHERE state IN ('waiting', 'sending', 'sent');
CREATE INDEX print_runs_by_state ON print_runs (state, id);

-- Every change of a label's state, in order.
CREATE TABLE print_events (
    print_id INTEGER NOT NULL REFERENCES prints (id),
    step INTEGER NOT NULL,
    state TEXT NOT NULL,
    says TEXT,
    at TIMESTAMP NOT NULL,
    PRIMARY KEY (print_id, step)
);

-- Which process talks to a printer now, until when, and what is wrong there.
CREATE TABLE printer_leases (
    id INTEGER PRIMARY KEY REFERENCES entries (id),
    owner TEXT NOT NULL,
    until TIMESTAMP NOT NULL,
    trouble TEXT
);
