//! Who may do what: rights are named by the deed, and a role is a set of rights. One closed type for the
//! whole program; every route names one of these.

use crate::words::words;

words! {
    /// What somebody may do.
    Right {
        /// Nothing that anybody could not do: sign in, look how the service is.
        Anyone = "anyone",
        /// Ask what may be sold.
        Scan = "scan",
        /// Read the record and the lists.
        See = "see",
        /// Work at the bench: receive, step, move, weigh, count, clean, put things right.
        Work = "work",
        /// Let packs leave, and take them back.
        Sell = "sell",
        /// Put a stop on what is doubtful: nobody is asked twice.
        Hold = "hold",
        /// Print labels and say which came out.
        Print = "print",
        /// Take one's own deed back.
        Undo = "undo",
        /// Take another's deed back.
        Void = "void",
        /// Release a cured piece.
        Release = "release",
        /// Correct what is known of a source.
        Correct = "correct",
        /// Lift a stop or a hold.
        Lift = "lift",
        /// Lead a recall: say how far it goes, hold, tell guests, close it.
        Recall = "recall",
        /// Throw away or send back what is held.
        Destroy = "destroy",
        /// Confirm a row of the law.
        Confirm = "confirm",
        /// Throw the content of papers away that nobody has to keep any more.
        Thin = "thin",
        /// Set the kitchen and its lists up.
        SetUp = "set-up",
        /// Say who the people are, and give tokens.
        People = "people",
        /// Read the figures of the service.
        Watch = "watch",
        /// Record a deed in another's name: a script, or a device that sends what waited.
        Speak = "speak",
    }
}

words! {
    /// What somebody is in a kitchen.
    Role { Cook = "cook", Counter = "counter", Manager = "manager", }
}

impl Role {
    /// Does the role have a right? `Speak` is no role's: a token has it.
    pub const fn may(self, right: Right) -> bool {
        use Right::*;
        match right {
            Anyone | Scan | See | Sell | Hold | Print | Undo => true,
            Work => matches!(self, Role::Cook | Role::Manager),
            Void | Release | Correct | Lift | Recall | Destroy | Confirm | Thin | SetUp
            | People | Watch => {
                matches!(self, Role::Manager)
            }
            Speak => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_manager_may_all_that_any_role_may() {
        for right in Right::ALL {
            for role in Role::ALL {
                assert!(!role.may(*right) || Role::Manager.may(*right), "{right}");
            }
        }
    }

    #[test]
    fn what_sets_food_free_is_a_managers() {
        for right in [
            Right::Release,
            Right::Lift,
            Right::Recall,
            Right::Destroy,
            Right::Correct,
            Right::Void,
            Right::Confirm,
        ] {
            let who: Vec<Role> = Role::ALL
                .iter()
                .copied()
                .filter(|role| role.may(right))
                .collect();
            assert_eq!(who, [Role::Manager], "{right}");
        }
    }
}
