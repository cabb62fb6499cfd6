//! How thick for what. Common practice, no source, except: a plated shell above 175 um stops breaking (review of
//! electroformed tool electrodes, Arthur and Dickens, seen as an excerpt), which the band for handled shells contains; and
//! the wear of a ring (18 carat gold, 0.39 mm3 in a year on a 5 mm band of 20 mm, 1.24 um a year over its surface,
//! derived from a wear study of wedding rings of 2008, seen as an abstract).

use crate::answer::{Counts, UseBand};
use crate::job::Use;
use quantity::{Thickness, Time};

/// The layer a use asks for, by the metal laid down: of a copper shell the mean, of a finish the thinnest place. None
/// for metals without a usual figure.
pub fn layer(of: Use, metal: &str) -> Option<UseBand> {
    let (counts, least, most) = match metal {
        "Cu" => {
            let (least, most) = match of {
                Use::Keepsake => (60.0, 150.0),
                Use::Earring => (80.0, 200.0),
                Use::Pendant => (150.0, 300.0),
                Use::Ring => (250.0, 500.0),
                Use::Handled => (200.0, 300.0),
            };
            (Counts::Mean, least, most)
        }
        "Au" => {
            let (least, most) = match of {
                Use::Keepsake => (0.1, 0.5),
                Use::Earring => (0.5, 1.0),
                Use::Pendant => (0.5, 2.0),
                Use::Ring => (2.5, 5.0),
                Use::Handled => (1.0, 3.0),
            };
            (Counts::Thinnest, least, most)
        }
        "Ag" => {
            let (least, most) = match of {
                Use::Keepsake => (2.0, 5.0),
                Use::Earring => (5.0, 10.0),
                Use::Pendant => (5.0, 15.0),
                Use::Ring => (15.0, 30.0),
                Use::Handled => (10.0, 20.0),
            };
            (Counts::Thinnest, least, most)
        }
        "Rh" => {
            let (least, most) = match of {
                Use::Keepsake => (0.1, 0.1),
                Use::Earring | Use::Pendant => (0.1, 0.3),
                Use::Ring => (0.3, 0.5),
                Use::Handled => (0.3, 0.3),
            };
            (Counts::Thinnest, least, most)
        }
        _ => return None,
    };
    Some(UseBand {
        of,
        counts,
        least: Thickness::um(least),
        middle: Thickness::um((least + most) / 2.0),
        most: Thickness::um(most),
    })
}

/// What wear takes from a finish in a time, at its mean; edges lose two to four times that. None for what is not worn.
pub fn worn(of: Use, time: Time) -> Option<Thickness> {
    let um_per_year = match of {
        Use::Ring => 1.2,
        Use::Earring | Use::Pendant => 0.15,
        Use::Handled => 0.3,
        Use::Keepsake => return None,
    };
    const YEAR: Time = Time::hours(24.0 * 365.25);
    Some(Thickness::um(um_per_year * (time / YEAR)))
}
