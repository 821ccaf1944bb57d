//! Why there is no label.

use domain::code::LotCode;
use domain::messages;
use domain::says::Says;

messages! {
    /// Why there is no label.
    LabelSays in "label-refused" {
        NotLawful "not-lawful" { lot: LotCode, finding: Says },
    }
}
