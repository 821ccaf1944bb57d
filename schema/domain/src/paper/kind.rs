//! What a paper is.

use crate::words::words;

words! {
    /// What a paper is that is kept with a deed.
    PaperKind {
        DeliveryNote = "delivery-note", Certificate = "certificate", Photo = "photo", PrintOut = "print-out",
        Other = "other",
    }
}
