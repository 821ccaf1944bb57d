//! How an area declares what it says.

/// Declares what an area can say: an enum with the arguments of each message, the keys for the check
/// of the catalogue, and the way into [`Says`](crate::says::Says).
///
/// ```
/// use domain::grams::Grams;
/// use domain::says::Says;
///
/// domain::messages! {
///     /// What is said of a draw.
///     DrawSays in "draw" {
///         NotEnough "not-enough" { pack: String, left: Grams },
///         Voided "voided",
///     }
/// }
///
/// let says = Says::from(DrawSays::NotEnough { pack: "A / 1".into(), left: Grams::whole(3) });
/// assert_eq!(says.key(), "draw-not-enough");
/// assert_eq!(DrawSays::KEYS[1], ("draw-voided", &[] as &[&str]));
/// ```
#[macro_export]
macro_rules! messages {
    ($(#[$about:meta])* $name:ident in $area:literal {
        $($(#[$each:meta])* $says:ident $key:literal $({ $($field:ident : $kind:ty),* $(,)? })?),* $(,)?
    }) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Eq)]
        #[allow(missing_docs, reason = "the catalogue has the sentence")]
        pub enum $name { $($(#[$each])* $says $({ $($field: $kind),* })?,)* }

        impl $name {
            /// Each key with the names of its arguments.
            pub const KEYS: $crate::says::Keys = &[
                $((concat!($area, "-", $key), &[$($(stringify!($field)),*)?]),)*
            ];
        }

        impl From<$name> for $crate::says::Says {
            fn from(says: $name) -> $crate::says::Says {
                match says {
                    $($name::$says $({ $($field),* })? => $crate::says::Says::new(
                        concat!($area, "-", $key),
                        vec![$($((stringify!($field), $crate::says::Arg::from($field))),*)?],
                    ),)*
                }
            }
        }

        impl From<$name> for $crate::says::Arg {
            fn from(says: $name) -> $crate::says::Arg {
                $crate::says::Arg::from($crate::says::Says::from(says))
            }
        }
    };
}
