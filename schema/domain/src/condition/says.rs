//! What is said of a condition.

use crate::messages;
use crate::says::{Says, Texts};
use crate::words::DeedKind;

messages! {
    /// Why food is what it is, and what would prove more.
    ConditionSays in "condition" {
        FromTheAnimal "from-the-animal",
        RawBought "raw-bought",
        Listed "listed" { product: Texts },
        DeclaredReady "declared-ready" { product: Texts },
        NoDeclaration "no-declaration" { product: Texts },
        Proven "proven" { says: Says },
        PartsReady "parts-ready" { kind: DeedKind },
        NotReadyPart "not-ready-part" { part: Says },
        NothingProves "nothing-proves" { kind: DeedKind },
        Approved "approved" { number: String },
        ApprovedNotFreed "approved-not-freed" { number: String, part: Says },
        Released "released",
        LetGo "let-go" { by: String, why: String },
        ProofRule "proof-rule",
        ListRule "list-rule",
        ApprovalRule "approval-rule",
        Nature "nature" { says: Says },
        PartsStable "parts-stable",
        JudgedBefore "judged-before",
    }
}
