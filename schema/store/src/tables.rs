//! The tables, as the migrations make them. A test selects every one through these on both engines.

diesel::table! {
    chain (id) { id -> Integer, kind -> Text, of_id -> Integer, late -> Bool, parts -> Text, head -> Text, }
}
diesel::table! { chain_due (id) { id -> Integer, } }
diesel::table! { counters (id) { id -> Integer, next -> Integer, } }
diesel::table! { series (id) { id -> Integer, key -> Text, next -> Integer, } }
diesel::table! { entries (id) { id -> Integer, list -> Text, code -> Text, version_id -> Integer, } }
diesel::table! {
    versions (id) {
        id -> Integer, entry_id -> Integer, number -> Integer, body -> Text, search -> Text, recorded_at -> Timestamp,
    }
}
diesel::table! { house_codes (id) { id -> Integer, code -> Text, owner -> Text, } }
diesel::table! {
    deeds (id) {
        id -> Integer, uid -> Binary, kind -> Text, at -> Timestamp, began_at -> Nullable<Timestamp>,
        recorded_at -> Timestamp, day -> Date, late -> Bool, person -> Text, place_id -> Nullable<Integer>,
        note -> Nullable<Text>, request -> Text,
    }
}
diesel::table! { answers (id) { id -> Integer, body -> Text, } }
diesel::table! { voids (id) { id -> Integer, deed_id -> Integer, why -> Text, } }
diesel::table! { steps (id) { id -> Integer, loss_mg -> BigInt, animal_mg -> BigInt, } }
diesel::table! { additions (id) { id -> Integer, deed_id -> Integer, what -> Text, mg -> BigInt, } }
diesel::table! {
    animals (id) {
        id -> Integer, deed_id -> Integer, stem -> Nullable<Text>, farm -> Text, species -> Text, killed_on -> Date,
        abattoir -> Nullable<Text>, carcass -> Nullable<Text>, tag -> Nullable<Text>, head -> Integer,
    }
}
diesel::table! {
    lots (id) {
        id -> Integer, code -> Text, deed_id -> Integer, version_id -> Integer, made_at -> Timestamp,
        made_mg -> BigInt, pack_count -> Integer, origin -> Text, animal_id -> Nullable<Integer>,
        allergens -> Text, species -> Text, note -> Nullable<Text>, born_place_id -> Integer, born_state -> Text,
        born_use_by -> Nullable<Date>, born_days_left -> Nullable<Integer>, voided -> Bool, seq -> Integer,
        on_hand_mg -> BigInt, used_mg -> BigInt, sold_mg -> BigInt, sold_packs -> Integer, served_mg -> BigInt,
        discarded_mg -> BigInt, shipped_mg -> BigInt, returned_mg -> BigInt, lost_mg -> BigInt,
        unexplained_mg -> BigInt, taken_back_mg -> BigInt, later -> Nullable<Text>,
        packaging -> Nullable<Text>, stopped -> Bool,
    }
}
diesel::table! {
    packs (id) {
        id -> Integer, lot_id -> Integer, number -> Integer, made_mg -> BigInt, left_mg -> BigInt, being -> Text,
        place_id -> Integer, state -> Text, use_by -> Nullable<Date>, days_left -> Nullable<Integer>, taken_back -> Bool,
        printed -> Bool,
    }
}
diesel::table! {
    pack_events (id) {
        id -> Integer, deed_id -> Integer, lot_id -> Integer, pack_id -> Integer, seq -> Integer, account -> Text,
        mg -> BigInt, whole_pack -> Bool, place_id -> Nullable<Integer>, state -> Nullable<Text>, day -> Date,
    }
}
diesel::table! {
    sources (id) {
        id -> Integer, lot_id -> Integer, deed_id -> Integer, is_current -> Bool, animal_id -> Nullable<Integer>,
        side -> Nullable<Text>, supplier -> Nullable<Text>, supplier_lot -> Nullable<Text>,
        packed_on -> Nullable<Date>, use_by -> Nullable<Date>, gtin -> Nullable<Text>,
    }
}
diesel::table! {
    measurements (id) {
        id -> Integer, deed_id -> Integer, lot_id -> Nullable<Integer>, place_id -> Nullable<Integer>,
        quantity -> Text, millionths -> BigInt, probe_id -> Nullable<Integer>, of_deed_id -> Nullable<Integer>,
    }
}
diesel::table! {
    core_readings (id) {
        id -> Integer, deed_id -> Integer, at -> Timestamp, quantity -> Text, millionths -> BigInt,
        probe_id -> Nullable<Integer>,
    }
}
diesel::table! {
    probe_checks (id) { id -> Integer, probe_id -> Integer, bath -> Text, quantity -> Text, millionths -> BigInt, }
}

diesel::table! {
    reasons (id) {
        id -> Integer, deed_id -> Integer, lot_id -> Integer, topic -> Text, says -> Text, rule -> Text, source -> Text,
        said -> Nullable<Text>,
        basis -> Nullable<Text>,
    }
}

diesel::table! {
    stops (id) {
        id -> Integer, deed_id -> Integer, lot_id -> Integer, pack_id -> Nullable<Integer>, root_id -> Integer,
        kind -> Text, topic -> Text, said -> Text, basis -> Text, since -> Timestamp, incident_id -> Nullable<Integer>,
    }
}
diesel::table! {
    incidents (id) {
        id -> Integer, number -> Text, told_by -> Text, told_at -> Timestamp, hazard -> Text, drill -> Bool,
        holds -> Bool, why -> Text,
    }
}
diesel::table! {
    incident_scopes (id) {
        id -> Integer, incident_id -> Integer, question -> Text, digest -> Text, lots -> Integer, why -> Text,
    }
}
diesel::table! {
    incident_acts (id) {
        id -> Integer, incident_id -> Integer, kind -> Text, whom -> Nullable<Text>, text -> Text,
    }
}
diesel::table! {
    papers (id) {
        id -> Integer, of_deed_id -> Integer, kind -> Text, name -> Nullable<Text>, form -> Text, bytes -> BigInt,
        hash -> Text,
    }
}
diesel::table! { paper_parts (id) { id -> Integer, paper_id -> Integer, part -> Binary, } }
diesel::table! { thinnings (id) { id -> Integer, deed_id -> Integer, paper_id -> Integer, } }
diesel::table! { incident_reports (id) { id -> Integer, incident_id -> Integer, facts -> Text, } }
diesel::table! { conditions (id) { id -> Integer, deed_id -> Integer, lot_id -> Integer, condition -> Text, } }
diesel::table! { corrections (id) { id -> Integer, deed_id -> Integer, was -> Text, now -> Text, } }
diesel::table! {
    judged_again (id) {
        id -> Integer, deed_id -> Integer, lot_id -> Integer, condition -> Nullable<Text>, was -> Text, now -> Text,
    }
}
diesel::table! { stop_ends (id) { id -> Integer, deed_id -> Integer, stop_id -> Integer, what -> Text, } }

diesel::table! { kept_texts (id) { id -> Integer, hash -> Text, text -> Text, } }
diesel::table! {
    prints (id) {
        id -> Integer, deed_id -> Integer, printer_id -> Integer, version_id -> Integer, lot_id -> Integer,
        pack_id -> Integer, number -> Integer, template -> Text, form_id -> Integer, base_id -> Integer,
        own -> Text, dpi -> Integer, use_by -> Nullable<Date>, ordinal -> Integer, instead_of -> Nullable<Integer>,
        claims_id -> Nullable<Integer>, net_mg -> Nullable<BigInt>,
    }
}
diesel::table! {
    print_runs (id) {
        id -> Integer, printer_id -> Integer, state -> Text, step -> Integer, attempt -> Integer,
        perhaps_out -> Bool, broken_off -> Integer, token -> Nullable<Text>, job_id -> Nullable<Integer>,
        printer_up -> Nullable<Integer>, out_at -> Nullable<Timestamp>, format -> Nullable<Text>,
        document_hash -> Nullable<Text>, trouble -> Nullable<Text>, changed_at -> Timestamp,
    }
}
diesel::table! {
    print_events (print_id, step) {
        print_id -> Integer, step -> Integer, state -> Text, says -> Nullable<Text>, at -> Timestamp,
    }
}
diesel::table! {
    printer_leases (id) {
        id -> Integer, owner -> Text, until -> Timestamp, trouble -> Nullable<Text>, tried_at -> Nullable<Timestamp>,
    }
}

diesel::table! { label_truths (id) { id -> Integer, claims_id -> Integer, } }
diesel::table! {
    wrong_labels (id) { id -> Integer, lot_id -> Integer, print_id -> Integer, untrue -> Text, since -> Timestamp, }
}

diesel::allow_tables_to_appear_in_same_query!(
    additions,
    animals,
    answers,
    chain,
    chain_due,
    clock_words,
    conditions,
    copies,
    core_readings,
    corrections,
    counters,
    deeds,
    entries,
    house_codes,
    identities,
    incident_acts,
    incident_reports,
    incident_scopes,
    incidents,
    judged_again,
    kept_texts,
    label_truths,
    lots,
    measurements,
    pack_events,
    packs,
    paper_parts,
    papers,
    people,
    person_roles,
    print_events,
    print_runs,
    printer_leases,
    prints,
    probe_checks,
    reasons,
    record_leases,
    series,
    sessions,
    sources,
    steps,
    stop_ends,
    stops,
    thinnings,
    tokens,
    versions,
    voids,
    wrong_labels,
);
diesel::table! {
    people (id) {
        id -> Integer, uid -> Binary, name -> Text, pin -> Nullable<Text>, word -> Nullable<Binary>,
        language -> Nullable<Text>, active -> Bool, number -> Integer, made_at -> Timestamp,
        weights -> Nullable<Text>, temperatures -> Nullable<Text>,
    }
}
diesel::table! { person_roles (id) { id -> Integer, person_id -> Integer, kitchen -> Text, role -> Text, } }
diesel::table! {
    sessions (id) {
        id -> Integer, person_id -> Integer, hash -> Binary, device -> Text, began_at -> Timestamp, ends_at -> Timestamp,
    }
}
diesel::table! {
    tokens (id) {
        id -> Integer, name -> Text, kitchen -> Text, role -> Text, hash -> Binary, made_at -> Timestamp,
        made_by -> Text, ends_at -> Nullable<Timestamp>, speaks -> Bool,
    }
}
diesel::table! {
    clock_words (id) {
        id -> Integer, at -> Timestamp, ahead_until -> Nullable<Timestamp>, person -> Text, why -> Text,
        last_deed -> Nullable<Integer>,
    }
}
diesel::table! { identities (id) { id -> Integer, mark -> Binary, made_at -> Timestamp, } }
diesel::table! {
    record_leases (id) {
        id -> Integer, mark -> Binary, at -> Timestamp, medium -> Text, place -> Text, why -> Text,
    }
}
diesel::table! {
    copies (id) {
        id -> Integer, at -> Timestamp, what -> Text, trouble -> Nullable<Text>, name -> Text, bytes -> BigInt,
        took_ms -> BigInt, deeds -> BigInt, anchor -> Nullable<Text>, says -> Nullable<Text>,
    }
}
