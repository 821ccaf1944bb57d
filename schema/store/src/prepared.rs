//! Statements whose text is always the same, prepared once on each connection and kept there.

use diesel::backend::Backend;
use diesel::query_builder::{AstPass, Query, QueryFragment, QueryId};
use diesel::{QueryResult, RunQueryDsl};

/// A statement with one text, whatever it binds. Diesel keeps none that updates or that is given as text, for it
/// cannot know how many there may be: each would be parsed and planned again, and on PostgreSQL cost a round trip
/// more, under whatever lock is held.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Prepared<Q>(pub(crate) Q);

impl<Q> QueryId for Prepared<Q> {
    type QueryId = ();
    const HAS_STATIC_QUERY_ID: bool = false;
}

impl<Q: QueryFragment<DB>, DB: Backend> QueryFragment<DB> for Prepared<Q> {
    fn walk_ast<'b>(&'b self, pass: AstPass<'_, 'b, DB>) -> QueryResult<()> {
        self.0.walk_ast(pass)
    }

    fn is_safe_to_cache_prepared(&self, _: &DB) -> QueryResult<bool> {
        Ok(true)
    }
}

impl<Q: Query> Query for Prepared<Q> {
    type SqlType = Q::SqlType;
}

impl<Q, Conn> RunQueryDsl<Conn> for Prepared<Q> {}
