//! People, sessions and tokens on the wire.

use super::{By, HeatUnitsWord, Instant, Line, MassUnitsWord, Word};
use domain::right::{Right, Role};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A word of [`Role`].
pub type RoleWord = Word<Role>;
/// A word of [`Right`].
pub type RightWord = Word<Right>;

/// Somebody signs in.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SignInAsked {
    /// Their name, or their id.
    pub person: Line,
    /// Their PIN, or the word that they were given.
    pub pin: Option<Line>,
    /// Is the device one person's own? A shared one is signed out after an hour without a deed.
    #[serde(default)]
    pub own: bool,
}

/// Who is signed in.
#[derive(Debug, Serialize, ToSchema)]
pub struct SignedIn {
    /// Their name, as deeds have it.
    pub name: String,
    /// What they are here.
    pub roles: Vec<String>,
    /// What they may do.
    pub rights: Vec<String>,
    /// Have they still to choose a PIN?
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub choose_pin: bool,
}

/// Somebody chooses a PIN.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PinAsked {
    /// Four to twelve digits.
    pub pin: Line,
}

/// A person, as they are to be.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PersonAsked {
    /// Their name, as deeds will have it.
    pub name: Line,
    /// What they are here.
    pub roles: Vec<RoleWord>,
    /// Their PIN: four to twelve digits. Left out it stays; a new person gets a word instead.
    pub pin: Option<Line>,
    /// The language they read: `en`, `fr`.
    pub language: Option<Line>,
    /// The units in which they read weights; the kitchen's if left out.
    pub weights: Option<MassUnitsWord>,
    /// The units in which they read temperatures; the kitchen's if left out.
    pub temperatures: Option<HeatUnitsWord>,
    /// May they sign in? Yes, if left out.
    pub active: Option<bool>,
    /// Do they get a new word that signs them in once, and are signed out everywhere?
    #[serde(default)]
    pub new_word: bool,
}

/// How somebody wants to be spoken to. What is left out is as the kitchen, and the browser, have it.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadingAsked {
    /// The language: `en`, `fr`.
    pub language: Option<Line>,
    /// The units of weight.
    pub weights: Option<MassUnitsWord>,
    /// The units of temperature.
    pub temperatures: Option<HeatUnitsWord>,
}

/// A person.
#[derive(Debug, Serialize, ToSchema)]
pub struct PersonRead {
    /// Their id.
    pub id: String,
    /// Their name.
    pub name: String,
    /// What they are here.
    pub roles: Vec<String>,
    /// The language they read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub language: Option<String>,
    /// The units in which they read weights, if not the kitchen's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weights: Option<String>,
    /// The units in which they read temperatures, if not the kitchen's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperatures: Option<String>,
    /// May they sign in?
    pub active: bool,
    /// Which version of the person this is, for `If-Match`.
    pub version: i32,
    /// Have they chosen a PIN?
    pub has_pin: bool,
    /// The word that signs them in once: told now and never again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub word: Option<String>,
}

/// All people.
#[derive(Debug, Serialize, ToSchema)]
pub struct PeopleRead {
    /// By name.
    pub people: Vec<PersonRead>,
}

/// A token, as it is asked for.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TokenAsked {
    /// What it is called: a deed that names nobody has this name.
    pub name: Line,
    /// What it may do.
    pub role: RoleWord,
    /// When it ends, if it does.
    pub until: Option<Instant>,
    /// May deeds that it sends have another's name? A script may, if this is left out.
    pub speaks_for_others: Option<bool>,
}

/// A token.
#[derive(Debug, Serialize, ToSchema)]
pub struct TokenRead {
    /// Its number.
    pub id: i32,
    /// What it is called.
    pub name: String,
    /// What it may do.
    pub role: String,
    /// When it ends, if it does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<String>,
    /// May deeds that it sends have another's name?
    pub speaks_for_others: bool,
    /// The token: told now and never again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub token: Option<String>,
}

/// All tokens.
#[derive(Debug, Serialize, ToSchema)]
pub struct TokensRead {
    /// In the order they were made.
    pub tokens: Vec<TokenRead>,
}

/// A manager's word that the clock is right.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClockAsked {
    /// Who says so.
    #[serde(default)]
    pub by: By,
    /// What was wrong, or why it was doubted.
    pub why: Line,
}

/// What each route asks.
#[derive(Debug, Serialize, ToSchema)]
pub struct RightsRead {
    /// Every route.
    pub routes: Vec<RouteRight>,
}

/// What a route asks.
#[derive(Debug, Serialize, ToSchema)]
pub struct RouteRight {
    /// The method.
    pub method: String,
    /// The path.
    pub path: String,
    /// The right.
    pub right: String,
    /// The roles that have it.
    pub roles: Vec<String>,
}
