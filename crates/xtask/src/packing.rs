//! Bytes as text for a script element: seven bits in every byte of the file, where base64 has six.
//!
//! The bits are cut into groups of seven and each group is written as the ASCII character of its number. The few that
//! cannot stand there take the group after them along into one character of two bytes, so they cost nothing.
//! `start.js` reads it back.

/// Groups whose own character would not come back as it was written or would end the text: a parser of HTML puts another
/// character for NUL, reads CR as a line end and may take `<` for a tag; old tools take ^Z for the end of a file.
const FOLDED: [u8; 4] = [0x00, 0x0d, 0x1a, b'<'];

/// The text. The count of bytes is not in it: whoever unpacks must know it.
pub fn pack(bytes: &[u8]) -> String {
    let mut groups = Groups { bytes, at: 0 };
    let mut text = String::with_capacity(bytes.len() / 7 * 8 + 2);
    while let Some(group) = groups.next() {
        let character = match (0..).zip(FOLDED).find(|(_, folded)| *folded == group) {
            None => char::from(group),
            // From U+0100 on, 128 characters for each: past the second set of control characters, two bytes in UTF-8.
            Some((place, _)) => {
                let next = u32::from(groups.next().unwrap_or_default());
                char::from_u32((place + 2) * 128 + next).unwrap_or_default()
            }
        };
        text.push(character);
    }
    text
}

/// The bits in groups of seven; the last is filled up with zeros.
struct Groups<'a> {
    bytes: &'a [u8],
    /// The next bit.
    at: usize,
}

impl Iterator for Groups<'_> {
    type Item = u8;

    fn next(&mut self) -> Option<u8> {
        let byte = |place| u16::from(self.bytes.get(place).copied().unwrap_or_default());
        let place = self.at / 8;
        if place >= self.bytes.len() {
            return None;
        }
        let two = byte(place) << 8 | byte(place + 1);
        let group = two >> (9 - self.at % 8) & 0x7f;
        self.at += 7;
        u8::try_from(group).ok()
    }
}

/// What `start.js` does, in the same steps.
#[cfg(test)]
pub fn unpack(text: &str, count: usize) -> Vec<u8> {
    let mut bytes = vec![0; count];
    let (mut held, mut bits, mut n) = (0_u32, 0, 0);
    let mut add = |group: u32| {
        held = held << 7 | group;
        bits += 7;
        if bits > 7 {
            bits -= 8;
            if let Some(byte) = bytes.get_mut(n) {
                *byte = (held >> bits & 0xff) as u8;
            }
            n += 1;
        }
    };
    for character in text.chars() {
        let code = u32::from(character);
        if code > 127 {
            add(u32::from(FOLDED[code as usize / 128 - 2]));
        }
        add(code % 128);
    }
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn safe(text: &str) -> bool {
        text.chars().all(|c| {
            !matches!(c, '\0' | '\r' | '\u{1a}' | '<')
                && !('\u{80}'..'\u{100}').contains(&c)
                && c < '\u{300}'
        })
    }

    proptest! {
        #[test]
        fn any_bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            let text = pack(&bytes);
            prop_assert!(safe(&text));
            prop_assert_eq!(unpack(&text, bytes.len()), bytes);
        }

        /// Groups that are folded, wherever they stand, the end included.
        #[test]
        fn folded_groups_come_back(groups in prop::collection::vec(prop::sample::select(&[0_u8, 13, 26, 60, 1, 127]), 0..64)) {
            let bits: Vec<u8> = groups.iter().flat_map(|g| (0..7).rev().map(move |bit| g >> bit & 1)).collect();
            let bytes: Vec<u8> = bits.chunks(8).map(|byte| byte.iter().fold(0, |all, bit| all << 1 | bit)).collect();
            let text = pack(&bytes);
            prop_assert!(safe(&text));
            prop_assert_eq!(unpack(&text, bytes.len()), bytes);
        }
    }

    #[test]
    fn worked_by_hand() {
        // 0100000 1010000 1001000 011(0000): space, P, H, 0.
        assert_eq!(pack(b"ABC"), " PH0");
        // 0111100 0100000 00(00000): '<', place 3 of the folded, takes the space along: (3 + 2) x 128 + 32. Then NUL,
        // which finds no next.
        assert_eq!(pack(&[0x78, 0x80]), "\u{2a0}\u{100}");
        assert_eq!(pack(&[]), "");
    }

    #[test]
    fn seven_bits_a_byte_whatever_is_folded() {
        let all: Vec<u8> = (0..70_000_u32)
            .map(|n| (n.wrapping_mul(n) / 7) as u8)
            .collect();
        for bytes in [vec![0; 70_000], vec![255; 70_000], all] {
            assert_eq!(pack(&bytes).len(), 80_000);
        }
    }

    #[test]
    fn the_page_folds_the_same_groups() {
        let list = FOLDED.map(|group| group.to_string()).join(", ");
        assert!(include_str!("start.js").contains(&format!("[{list}]")));
    }
}
