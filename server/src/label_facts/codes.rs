//! What the codes of a pack hold.

use super::writer::Writer;
use labels::Facts;

/// The codes of a pack, without any text yet.
pub fn of_pack(writer: &Writer<'_>, number: u32, _for_a_customer: bool) -> Facts {
    let code = &writer.lot.code;
    Facts {
        qr: format!("{}/L/{code}/{number}", writer.app.address(writer.kitchen)),
        linear: format!("{code}/{number}"),
        ..Facts::default()
    }
}
