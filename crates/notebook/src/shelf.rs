//! Where texts are kept, behind a trait: the page works the same without one.

/// Why something could not be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShelfProblem {
    /// Storage is refused here.
    Refused,
    /// No room is left.
    Full,
}

/// A place that keeps texts by name. Others may write to it at any time.
pub trait Shelf {
    /// The text under a name.
    fn load(&self, name: &str) -> Option<String>;
    /// Keeps a text under a name.
    fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem>;
    /// Takes what is under a name off the shelf.
    fn remove(&self, name: &str);
    /// Every name on the shelf, others' too, in any order.
    fn names(&self) -> Vec<String>;
}

/// A shelf that keeps nothing: storage is refused, or there is no browser.
pub struct NoShelf;

impl Shelf for NoShelf {
    fn load(&self, _: &str) -> Option<String> {
        None
    }
    fn save(&self, _: &str, _: &str) -> Result<(), ShelfProblem> {
        Err(ShelfProblem::Refused)
    }
    fn remove(&self, _: &str) {}
    fn names(&self) -> Vec<String> {
        Vec::new()
    }
}

/// A mark that tells one text from another: FNV-1a, 64 bits, in hex.
pub(crate) fn mark(text: &str) -> String {
    let hash = text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_mark_is_the_published_hash() {
        // Fowler, Noll, Vo: test vectors of FNV-1a 64, published with the function.
        assert_eq!(super::mark(""), "cbf29ce484222325");
        assert_eq!(super::mark("foobar"), "85944171f73967e8");
    }
}
