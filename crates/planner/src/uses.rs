//! How thick for what. Common practice, no source, except that a plated shell above 175 um stops breaking (review of
//! electroformed tool electrodes, Arthur and Dickens, seen as an excerpt), which the band for handled shells contains.

use crate::answer::UseBand;
use crate::job::Use;
use quantity::Thickness;

/// Mean thickness of a copper shell for a use: the usual band and its middle.
pub fn copper_shell(of: Use) -> UseBand {
    let (least, most) = match of {
        Use::Keepsake => (60.0, 150.0),
        Use::Earring => (80.0, 200.0),
        Use::Pendant => (150.0, 300.0),
        Use::Ring => (250.0, 500.0),
        Use::Handled => (200.0, 300.0),
    };
    UseBand {
        of,
        least: Thickness::um(least),
        middle: Thickness::um((least + most) / 2.0),
        most: Thickness::um(most),
    }
}
