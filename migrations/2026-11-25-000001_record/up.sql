-- Where the next key comes from (SQLite; PostgreSQL has a sequence for it, made at start).
CREATE TABLE counters (
    id INTEGER PRIMARY KEY,
    next INTEGER NOT NULL
);
INSERT INTO counters (id, next) VALUES (1, 1);

-- Running numbers, by what they run under. `next` only grows.
CREATE TABLE series (
    id INTEGER PRIMARY KEY,
    key TEXT NOT NULL UNIQUE,
    next INTEGER NOT NULL
);

-- The kitchen's lists: products, places, farms ... Every version of an entry is kept.
CREATE TABLE entries (
    id INTEGER PRIMARY KEY,
    list TEXT NOT NULL,
    code TEXT NOT NULL,
    version_id INTEGER NOT NULL,
    UNIQUE (list, code)
);
CREATE TABLE versions (
    id INTEGER PRIMARY KEY,
    entry_id INTEGER NOT NULL REFERENCES entries (id),
    number INTEGER NOT NULL,
    body TEXT NOT NULL,
    search TEXT NOT NULL,
    recorded_at TIMESTAMP NOT NULL,
    UNIQUE (entry_id, number)
);

-- Farm and kitchen codes share one namespace, for ever.
CREATE TABLE house_codes (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE,
    owner TEXT NOT NULL
);

-- Every deed, once. Never edited, never deleted.
CREATE TABLE deeds (
    id INTEGER PRIMARY KEY,
    uid BYTEA NOT NULL UNIQUE,
    kind TEXT NOT NULL,
    at TIMESTAMP NOT NULL,
    began_at TIMESTAMP,
    recorded_at TIMESTAMP NOT NULL,
    day DATE NOT NULL,
    late BOOLEAN NOT NULL,
    person TEXT NOT NULL,
    place_id INTEGER REFERENCES entries (id),
    note TEXT,
    request TEXT NOT NULL
);
CREATE INDEX deeds_by_time ON deeds (recorded_at);

-- What was answered, to be answered again.
CREATE TABLE answers (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    body TEXT NOT NULL
);

-- Which deed voided which.
CREATE TABLE voids (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    deed_id INTEGER NOT NULL UNIQUE REFERENCES deeds (id),
    why TEXT NOT NULL
);

-- How the weights of a step close. animal_mg: the inputs that have any source animal.
CREATE TABLE steps (
    id INTEGER PRIMARY KEY REFERENCES deeds (id),
    loss_mg BIGINT NOT NULL CHECK (loss_mg >= 0),
    animal_mg BIGINT NOT NULL
);
CREATE TABLE additions (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    what TEXT NOT NULL,
    mg BIGINT NOT NULL CHECK (mg > 0)
);
CREATE INDEX additions_by_deed ON additions (deed_id);

-- Source animals, as first told. A correction points the lot at another row.
CREATE TABLE animals (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    stem TEXT,
    farm TEXT NOT NULL,
    species TEXT NOT NULL,
    killed_on DATE NOT NULL,
    abattoir TEXT,
    carcass TEXT,
    tag TEXT,
    head INTEGER NOT NULL CHECK (head > 0)
);
CREATE INDEX animals_by_day ON animals (farm, killed_on);
CREATE INDEX animals_by_carcass ON animals (carcass);
CREATE INDEX animals_by_deed ON animals (deed_id);

-- Lots. What a lot is never changes; the totals are sums of pack_events, kept beside it.
CREATE TABLE lots (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    version_id INTEGER NOT NULL REFERENCES versions (id),
    made_at TIMESTAMP NOT NULL,
    made_mg BIGINT NOT NULL CHECK (made_mg > 0),
    pack_count INTEGER NOT NULL CHECK (pack_count > 0),
    origin TEXT NOT NULL,
    animal_id INTEGER REFERENCES animals (id),
    allergens TEXT NOT NULL,
    species TEXT NOT NULL,
    note TEXT,
    born_place_id INTEGER NOT NULL REFERENCES entries (id),
    born_state TEXT NOT NULL,
    born_use_by DATE,
    born_days_left INTEGER,
    voided BOOLEAN NOT NULL,
    seq INTEGER NOT NULL,
    on_hand_mg BIGINT NOT NULL CHECK (on_hand_mg >= 0),
    used_mg BIGINT NOT NULL CHECK (used_mg >= 0),
    sold_mg BIGINT NOT NULL CHECK (sold_mg >= 0),
    sold_packs INTEGER NOT NULL,
    served_mg BIGINT NOT NULL CHECK (served_mg >= 0),
    discarded_mg BIGINT NOT NULL CHECK (discarded_mg >= 0),
    shipped_mg BIGINT NOT NULL CHECK (shipped_mg >= 0),
    returned_mg BIGINT NOT NULL CHECK (returned_mg >= 0),
    lost_mg BIGINT NOT NULL,
    unexplained_mg BIGINT NOT NULL,
    taken_back_mg BIGINT NOT NULL CHECK (taken_back_mg >= 0)
);
CREATE INDEX lots_by_deed ON lots (deed_id);
CREATE INDEX lots_by_version ON lots (version_id);

-- Packs: how each is now. Made = what it was born with.
CREATE TABLE packs (
    id INTEGER PRIMARY KEY,
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    number INTEGER NOT NULL CHECK (number > 0),
    made_mg BIGINT NOT NULL CHECK (made_mg > 0),
    left_mg BIGINT NOT NULL CHECK (left_mg >= 0),
    being TEXT NOT NULL,
    place_id INTEGER NOT NULL REFERENCES entries (id),
    state TEXT NOT NULL,
    use_by DATE,
    days_left INTEGER,
    taken_back BOOLEAN NOT NULL,
    UNIQUE (lot_id, number)
);
CREATE INDEX packs_on_hand ON packs (use_by, lot_id) WHERE left_mg > 0;

-- What happened to packs. seq orders the events of one lot. account 'used' is the genealogy.
CREATE TABLE pack_events (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    pack_id INTEGER NOT NULL REFERENCES packs (id),
    seq INTEGER NOT NULL,
    account TEXT NOT NULL,
    mg BIGINT NOT NULL,
    whole_pack BOOLEAN NOT NULL,
    place_id INTEGER REFERENCES entries (id),
    state TEXT,
    day DATE NOT NULL
);
CREATE INDEX uses_by_lot ON pack_events (lot_id, deed_id) WHERE account = 'used';
CREATE INDEX pack_events_by_deed ON pack_events (deed_id);
CREATE INDEX pack_events_by_lot ON pack_events (lot_id, seq);

-- What is known of the source of a received lot. A correction adds a row; one is current.
CREATE TABLE sources (
    id INTEGER PRIMARY KEY,
    lot_id INTEGER NOT NULL REFERENCES lots (id),
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    is_current BOOLEAN NOT NULL,
    animal_id INTEGER REFERENCES animals (id),
    side TEXT,
    supplier TEXT,
    supplier_lot TEXT,
    packed_on DATE,
    use_by DATE,
    gtin TEXT
);
CREATE INDEX sources_by_lot ON sources (lot_id);
CREATE INDEX sources_by_animal ON sources (animal_id);

-- Readings, one quantity a row, in millionths of the quantity's unit.
CREATE TABLE measurements (
    id INTEGER PRIMARY KEY,
    deed_id INTEGER NOT NULL REFERENCES deeds (id),
    lot_id INTEGER REFERENCES lots (id),
    place_id INTEGER REFERENCES entries (id),
    quantity TEXT NOT NULL,
    millionths BIGINT NOT NULL
);
CREATE INDEX measurements_by_lot ON measurements (lot_id);
CREATE INDEX measurements_by_deed ON measurements (deed_id);
