//! Changes that somebody could make past the program, each with what must be said of it.

/// A change, whom it names, and what is said of that.
pub(super) type Change = (&'static str, &'static str, &'static str);

const CHANGED: &str = "was changed after it was sealed";

/// Whatever can be changed alike on both engines.
pub(super) const CHANGES: &[Change] = &[
    // Deeds.
    (
        "UPDATE deeds SET person = 'Nobody' WHERE id = (SELECT MAX(id) FROM deeds WHERE kind = 'sell')",
        "(sell, Nobody,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET note = 'all well' WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cook')",
        "(cook,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET day = '2026-01-01' WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cook')",
        "(cook,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET recorded_at = '2026-01-01 10:00:00' WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cook')",
        "(cook,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET at = '2026-01-01 10:00:00' WHERE id = (SELECT MAX(id) FROM deeds WHERE kind = 'clean-down')",
        "(clean-down,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET place_id = (SELECT MAX(id) FROM entries WHERE list = 'places') WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cook')",
        "(cook,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET request = '{}' WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cure')",
        "(cure,",
        "deeds: was changed",
    ),
    (
        "UPDATE deeds SET late = NOT late WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'cure')",
        "(cure,",
        "deeds: was changed",
    ),
    (
        "UPDATE answers SET body = '' WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'grind')",
        "(grind,",
        "answers: was changed",
    ),
    (
        "DELETE FROM answers WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'grind')",
        "(grind,",
        "answers: 1 were sealed, and there are 0",
    ),
    // Papers.
    (
        "UPDATE papers SET kind = 'photo'",
        "(paper,",
        "papers: was changed",
    ),
    (
        "UPDATE papers SET of_deed_id = (SELECT MIN(id) FROM deeds)",
        "(paper,",
        "papers: was changed",
    ),
    (
        "DELETE FROM paper_parts; DELETE FROM papers",
        "(paper,",
        "papers: 1 were sealed, and there are 0",
    ),
    (
        "UPDATE paper_parts SET part = (SELECT uid FROM deeds WHERE id = (SELECT MIN(id) FROM deeds))",
        "paper ",
        "what it holds is not what its hash says",
    ),
    (
        "DELETE FROM paper_parts",
        "paper ",
        "what it held is gone, and nobody thinned it",
    ),
    (
        "INSERT INTO thinnings (id, deed_id, paper_id) SELECT 900001, (SELECT MIN(id) FROM deeds), MIN(id) FROM papers",
        "deed ",
        "thinnings: 0 were sealed, and there are 1",
    ),
    (
        "UPDATE voids SET why = 'no reason'",
        "(void,",
        "voids: was changed",
    ),
    (
        "DELETE FROM voids",
        "(void,",
        "voids: 1 were sealed, and there are 0",
    ),
    (
        "UPDATE steps SET loss_mg = loss_mg + 1 WHERE id = (SELECT MIN(id) FROM steps)",
        "deed ",
        "steps: was changed",
    ),
    (
        "UPDATE additions SET what = 'water' WHERE id = (SELECT MAX(id) FROM additions) AND what <> 'water'; UPDATE additions SET mg = mg + 1 WHERE id = (SELECT MAX(id) FROM additions)",
        "deed ",
        "additions: was changed",
    ),
    // What came in.
    (
        "UPDATE animals SET killed_on = '2026-06-20' WHERE id = (SELECT MIN(id) FROM animals)",
        "(receive,",
        "animals: was changed",
    ),
    (
        "UPDATE animals SET carcass = '1' WHERE id = (SELECT MIN(id) FROM animals)",
        "(receive,",
        "animals: was changed",
    ),
    (
        "UPDATE sources SET supplier_lot = 'X' WHERE id = (SELECT MAX(id) FROM sources WHERE supplier IS NOT NULL)",
        "(receive,",
        "sources: was changed",
    ),
    (
        "UPDATE sources SET use_by = '2027-01-01' WHERE id = (SELECT MIN(id) FROM sources WHERE supplier IS NOT NULL)",
        "(receive,",
        "sources: was changed",
    ),
    (
        "UPDATE sources SET is_current = NOT is_current WHERE id = (SELECT MIN(id) FROM sources)",
        "lot ",
        "its source is not the last",
    ),
    // Lots and packs.
    (
        "UPDATE lots SET allergens = '' WHERE id = (SELECT MAX(id) FROM lots WHERE allergens <> '')",
        "deed ",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET species = 'cattle' WHERE id = (SELECT MIN(id) FROM lots)",
        "(receive,",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET made_at = '2026-06-26 12:00:00' WHERE id = (SELECT MIN(id) FROM lots)",
        "(receive,",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET note = 'fine' WHERE id = (SELECT MIN(id) FROM lots)",
        "(receive,",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET born_use_by = '2027-01-01' WHERE id = (SELECT MAX(id) FROM lots WHERE born_use_by IS NOT NULL)",
        "deed ",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET later = NULL WHERE id = (SELECT MAX(id) FROM lots WHERE later IS NOT NULL)",
        "deed ",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET version_id = (SELECT MAX(id) FROM versions) WHERE id = (SELECT MIN(id) FROM lots)",
        "(receive,",
        "lots: was changed",
    ),
    (
        "UPDATE lots SET seq = 0 WHERE id = (SELECT MIN(lot_id) FROM pack_events)",
        "lot ",
        "has had more happen to it than it counts",
    ),
    (
        "UPDATE packs SET made_mg = made_mg + 1 WHERE id = (SELECT MAX(id) FROM packs)",
        "deed ",
        "packs: was changed",
    ),
    (
        "UPDATE packs SET use_by = '2027-01-01' WHERE id = (SELECT MAX(id) FROM packs WHERE left_mg > 0)",
        "/",
        "its events make",
    ),
    (
        "UPDATE packs SET place_id = (SELECT MAX(id) FROM entries WHERE list = 'places' AND id <> place_id) WHERE id = (SELECT MAX(id) FROM packs WHERE left_mg > 0)",
        "/",
        "its events make",
    ),
    (
        "UPDATE packs SET printed = NOT printed WHERE id = (SELECT MIN(id) FROM packs)",
        "lot ",
        "is marked as printed without a label",
    ),
    (
        "UPDATE pack_events SET mg = mg - 1 WHERE id = (SELECT MAX(id) FROM pack_events WHERE account = 'sold')",
        "deed ",
        "pack_events: was changed",
    ),
    (
        "UPDATE pack_events SET account = 'discarded' WHERE id = (SELECT MAX(id) FROM pack_events WHERE account = 'sold')",
        "deed ",
        "pack_events: was changed",
    ),
    // What was read, why, what stops it.
    (
        "UPDATE measurements SET millionths = 75000000 WHERE id = (SELECT MIN(id) FROM measurements)",
        "deed ",
        "measurements: was changed",
    ),
    (
        "DELETE FROM measurements WHERE id = (SELECT MAX(id) FROM measurements)",
        "deed ",
        "measurements: ",
    ),
    (
        "UPDATE reasons SET said = '{}' WHERE id = (SELECT MIN(id) FROM reasons)",
        "deed ",
        "reasons: was changed",
    ),
    (
        "DELETE FROM reasons WHERE id = (SELECT MAX(id) FROM reasons)",
        "deed ",
        "reasons: ",
    ),
    (
        "UPDATE conditions SET condition = 'ready' WHERE id = (SELECT MIN(id) FROM conditions)",
        "deed ",
        "conditions: was changed",
    ),
    (
        "UPDATE stops SET since = '2026-06-26 00:00:00' WHERE id = (SELECT MIN(id) FROM stops)",
        "deed ",
        "stops: was changed",
    ),
    ("DELETE FROM stop_ends", "(hold-release,", "stop_ends: "),
    (
        "UPDATE probe_checks SET millionths = 0",
        "(check-probe,",
        "probe_checks: was changed",
    ),
    // Corrections and recalls.
    (
        "UPDATE corrections SET now = was",
        "(correct,",
        "corrections: was changed",
    ),
    ("DELETE FROM judged_again", "(correct,", "judged_again: "),
    (
        "UPDATE incidents SET hazard = 'label'",
        "(incident,",
        "incidents: was changed",
    ),
    (
        "UPDATE incidents SET drill = TRUE",
        "(incident,",
        "incidents: was changed",
    ),
    (
        "UPDATE incident_scopes SET lots = 99",
        "(incident,",
        "incident_scopes: was changed",
    ),
    (
        "UPDATE incident_acts SET text = 'nothing'",
        "deed ",
        "incident_acts: was changed",
    ),
    // Labels.
    (
        "UPDATE prints SET use_by = '2026-01-01' WHERE id = (SELECT MAX(id) FROM prints)",
        "(print,",
        "prints: was changed",
    ),
    (
        "UPDATE prints SET own = '{}' WHERE id = (SELECT MAX(id) FROM prints)",
        "(print,",
        "prints: was changed",
    ),
    (
        "UPDATE kept_texts SET text = 'x' WHERE id = (SELECT MIN(form_id) FROM prints)",
        "kept text ",
        "is not what its hash says",
    ),
    // 2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881 is the SHA-256 of "x".
    (
        "UPDATE kept_texts SET text = 'x', hash = '2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881' WHERE id = (SELECT MAX(form_id) FROM prints)",
        "(print,",
        "prints: was changed",
    ),
    // Lists.
    (
        "UPDATE versions SET body = REPLACE(body, '\"days\":', '\"days\":1') WHERE id = (SELECT MAX(id) FROM versions WHERE body LIKE '%\"days\":%')",
        "versions ",
        CHANGED,
    ),
    (
        "UPDATE entries SET code = 'other' WHERE id = (SELECT MAX(id) FROM entries WHERE list = 'suppliers')",
        "entries ",
        CHANGED,
    ),
    (
        "UPDATE entries SET version_id = (SELECT MIN(id) FROM versions) WHERE id = (SELECT MAX(id) FROM entries)",
        " ",
        "does not stand at its last version",
    ),
    (
        "UPDATE house_codes SET owner = 'farm XXX' WHERE id = (SELECT MAX(id) FROM house_codes)",
        "house_codes ",
        CHANGED,
    ),
    (
        "UPDATE series SET next = 0",
        "",
        "does not stand past its highest number",
    ),
    // The chain itself.
    (
        "UPDATE chain SET parts = 'deeds 1 00' WHERE id = 700",
        "link 700",
        "does not follow from the one before",
    ),
    (
        "UPDATE chain SET late = TRUE WHERE id = 500",
        "link 500",
        "does not follow from the one before",
    ),
    (
        "DELETE FROM chain WHERE id BETWEEN 510 AND 512",
        "the chain",
        "links 510 to 512 are gone",
    ),
    (
        "DELETE FROM chain WHERE id = (SELECT MAX(id) FROM chain)",
        "deed ",
        "is in no link of the chain",
    ),
    (
        "INSERT INTO clock_words (id, at, person, why) VALUES (900, '2026-06-26 10:00:00', 'Nobody', 'late')",
        "clock_words 900",
        "is in no link of the chain",
    ),
];

/// What no foreign key refuses on PostgreSQL either: `check` does.
pub(super) const ASTRAY: Change = (
    "UPDATE stops SET lot_id = 1 WHERE id = (SELECT MIN(id) FROM stops)",
    "stop ",
    "on a lot, that is not there",
);

/// What foreign keys and a file of its own allow on SQLite alone, with what is only seen against an anchor.
pub(super) const OF_SQLITE: &[Change] = &[
    ("DELETE FROM deeds WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'clean-down')", "deed ", "is not on record any more"),
    ("DELETE FROM chain WHERE of_id = (SELECT MIN(id) FROM deeds WHERE kind = 'clean-down') AND kind = 'deed';
      DELETE FROM answers WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'clean-down');
      DELETE FROM deeds WHERE id = (SELECT MIN(id) FROM deeds WHERE kind = 'clean-down')", "the chain", "are gone"),
    ("DELETE FROM lots WHERE id = (SELECT MAX(id) FROM lots)", "deed ", "lots: "),
    ("DELETE FROM animals WHERE id = (SELECT MIN(id) FROM animals)", "(receive,", "animals: "),
    ("DELETE FROM versions WHERE id = (SELECT MIN(id) FROM versions)", "versions ", "is not on record any more"),
    ("DELETE FROM stops WHERE id = (SELECT MIN(id) FROM stops)", "deed ", "stops: "),
    ("INSERT INTO deeds SELECT id + 1000000, x'00112233445566778899aabbccddeeff', kind, at, began_at, recorded_at, day, late,
      'Nobody', place_id, note, request FROM deeds WHERE kind = 'sell' LIMIT 1", "(sell, Nobody,", "is in no link of the chain"),
    ("UPDATE counters SET next = 1", "counters", "does not stand past the keys"),
    ("PRAGMA writable_schema = ON; UPDATE sqlite_master SET rootpage = rootpage + 1 WHERE name = 'deeds_by_time'; PRAGMA writable_schema = RESET", "the ", ""),
];
