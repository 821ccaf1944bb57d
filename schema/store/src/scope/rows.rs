//! The rows that a scope is loaded from.

use chrono::NaiveDateTime;
use diesel::QueryableByName;
use diesel::sql_types::{BigInt, Binary, Bool, Integer, Nullable, Text, Timestamp};

#[derive(QueryableByName)]
pub(super) struct Key {
    #[diesel(sql_type = Integer)]
    pub id: i32,
}

#[derive(QueryableByName)]
pub(super) struct Uid {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Binary)]
    pub uid: Vec<u8>,
}

#[derive(QueryableByName)]
pub(super) struct LotFound {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Text)]
    pub code: String,
    #[diesel(sql_type = Text)]
    pub product: String,
    #[diesel(sql_type = Nullable<Text>)]
    pub note: Option<String>,
    #[diesel(sql_type = Text)]
    pub species: String,
    #[diesel(sql_type = Integer)]
    pub deed_id: i32,
    #[diesel(sql_type = Integer)]
    pub born_place_id: i32,
}

#[derive(QueryableByName)]
pub(super) struct PackFound {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Integer)]
    pub lot_id: i32,
    #[diesel(sql_type = Integer)]
    pub number: i32,
    #[diesel(sql_type = BigInt)]
    pub made_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub left_mg: i64,
    #[diesel(sql_type = Integer)]
    pub place_id: i32,
}

#[derive(QueryableByName)]
pub(super) struct EventFound {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Integer)]
    pub deed_id: i32,
    #[diesel(sql_type = Integer)]
    pub pack_id: i32,
    #[diesel(sql_type = Text)]
    pub account: String,
    #[diesel(sql_type = BigInt)]
    pub mg: i64,
    #[diesel(sql_type = Bool)]
    pub whole_pack: bool,
    #[diesel(sql_type = Nullable<Integer>)]
    pub place_id: Option<i32>,
}

#[derive(QueryableByName)]
pub(super) struct DeedFound {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Text)]
    pub kind: String,
    #[diesel(sql_type = Timestamp)]
    pub at: NaiveDateTime,
    #[diesel(sql_type = Nullable<Timestamp>)]
    pub began_at: Option<NaiveDateTime>,
    #[diesel(sql_type = Nullable<Integer>)]
    pub place_id: Option<i32>,
    #[diesel(sql_type = Text)]
    pub person: String,
}
