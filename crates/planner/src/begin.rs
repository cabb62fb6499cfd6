//! How a step is begun at the bench: current on before the work enters or not, and where the meter's lead goes.

use crate::answer::{Entry, Socket};
use crate::job::{Base, Piece};
use crate::plan::PlanBath;
use chemistry::notes::RULE_LIVE_ENTRY;
use chemistry::touch::{Base as Kind, base_of};
use quantity::{Current, Quantity};

/// How the work enters this bath. Common practice, no source: a sheet to be etched is connected with the current off; on
/// a coat, silver, steel, old nickel, an unknown metal, and in solutions that ask for it, the current is on before the
/// work touches the liquid, since metal that comes down by itself peels and a thin coat dissolves.
pub fn entry(pieces: &[Piece], bath: &PlanBath) -> Entry {
    if bath.etches() {
        return Entry::CurrentOff;
    }
    let asked = bath
        .solution
        .rules
        .iter()
        .any(|r| r.value == RULE_LIVE_ENTRY);
    if asked || pieces.iter().any(|p| p.base.as_ref().is_some_and(live)) {
        Entry::Live
    } else {
        Entry::AtOnce
    }
}

fn live(base: &Base) -> bool {
    match base {
        Base::Nonconductor(_) | Base::Unknown => true,
        Base::Metal(stock) => matches!(
            base_of(&stock.id),
            Some(Kind::Silver | Kind::Steel | Kind::Stainless | Kind::Nickel | Kind::NickelSilver)
        ),
    }
}

/// The socket of a usual multimeter for this current: its fine range has a fuse of 0.2 A or a little more, its coarse one
/// of 10 A (from memory). None above that.
pub fn socket(set: Current) -> Option<Socket> {
    let amperes = set.si();
    if amperes <= 0.2 {
        Some(Socket::Fine)
    } else if amperes <= 10.0 {
        Some(Socket::Coarse)
    } else {
        None
    }
}
