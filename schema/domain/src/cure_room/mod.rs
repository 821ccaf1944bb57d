//! The cure room: what hangs there, how it dries, when it may come down.
//!
//! Loss of weight is a sign that a piece has dried. By itself it makes nothing safe: many
//! authorities want a water activity or a validated process, and local codes and licensed practice
//! decide (`trade-2.2`).

mod alarm;
mod curve;
mod due;
mod forecast;
mod piece;
mod plan;
mod release;
mod rules;
mod salting;
mod says;
mod tag;

pub use alarm::{Alarm, DryingAlarm, alarms, unsigned};
pub use curve::Curve;
pub use due::{RoomTask, due};
pub use forecast::{Basis, Forecast, forecast};
pub use piece::{Piece, PieceStage, PieceWeighing, Signed, loss};
pub use plan::{Hung, Planned, SaltingMethod, Span, Task, Weighings, plan};
pub use release::{Release, ReleaseRule, release};
pub use rules::{CureRoomRules, ReleaseTarget, Spread};
pub use salting::{SaltTime, salt_span};
pub use says::{
    AlarmSays, BasisSays, CurveSays, ForecastSays, ReleaseSays, RoomSays, SaltingSays, TaskSays,
};
pub use tag::{Likely, likely_tag};
