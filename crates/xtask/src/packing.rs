//! Bytes as text for a script element: thirty-one bits in every four bytes of a file in UTF-16, where base64 has twelve in
//! those four bytes.
//!
//! The bits are cut into groups of 31 and each group is written as two digits to the base 46341, whose square is just above
//! 2^31. A digit is a character from U+00A0 on: none of them is a control, a mark of HTML, or half of a pair of
//! surrogates. `start.js` reads it back.

/// The least number whose square is at least 2^31.
const BASE: u32 = 46_341;
/// The character of the digit 0.
const FIRST: u32 = 0xa0;

/// The text. The count of bytes is not in it: whoever unpacks must know it.
pub fn pack(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 16 / 31 * 3 + 6);
    let mut digit = |d: u32| text.extend(char::from_u32(FIRST + d));
    let (mut held, mut bits) = (0_u64, 0);
    let mut group = |held: u64| {
        let group = (held & 0x7fff_ffff) as u32;
        digit(group / BASE);
        digit(group % BASE);
    };
    for byte in bytes {
        held = held << 8 | u64::from(*byte);
        bits += 8;
        if bits >= 31 {
            bits -= 31;
            group(held >> bits);
        }
    }
    if bits > 0 {
        // The last is filled up with zeros.
        group(held << (31 - bits));
    }
    text
}

/// A page as the bytes of a file: UTF-16, the mark at its start saying so louder than a server that says otherwise.
pub fn as_file(page: &str) -> Vec<u8> {
    let units = std::iter::once(0xfeff).chain(page.encode_utf16());
    units.flat_map(u16::to_le_bytes).collect()
}

/// What `start.js` does, in the same steps.
#[cfg(test)]
pub fn unpack(text: &str, count: usize) -> Vec<u8> {
    let mut bytes = vec![0; count];
    let (mut held, mut bits, mut n) = (0_u32, 0, 0);
    let mut add = |group: u32, more: u32| {
        held = held << more | group;
        bits += more;
        while bits > 7 {
            bits -= 8;
            if let Some(byte) = bytes.get_mut(n) {
                *byte = (held >> bits & 0xff) as u8;
            }
            n += 1;
        }
    };
    let digits: Vec<u32> = text.chars().map(|c| u32::from(c) - FIRST).collect();
    for pair in digits.chunks(2) {
        let group = pair[0] * BASE + pair[1];
        add(group >> 15, 16);
        add(group & 0x7fff, 15);
    }
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn any_bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            let text = pack(&bytes);
            prop_assert!(text.chars().all(|c| (0xa0..0xd800).contains(&u32::from(c))));
            prop_assert_eq!(unpack(&text, bytes.len()), bytes);
        }
    }

    #[test]
    fn worked_by_hand() {
        // 31 ones are 2^31 - 1 = 46340 x 46341 + 41707; the one left over, filled up with zeros, is 2^30.
        let ones = (1_u32 << 31) - 1;
        assert_eq!((ones / BASE, ones % BASE), (46_340, 41_707));
        let text = pack(&[0xff, 0xff, 0xff, 0xff]);
        let codes: Vec<u32> = text.chars().map(u32::from).collect();
        let rest = 1_u32 << 30;
        assert_eq!(
            codes,
            [
                FIRST + 46_340,
                FIRST + 41_707,
                FIRST + rest / BASE,
                FIRST + rest % BASE
            ]
        );
        assert_eq!(pack(&[]), "");
    }

    #[test]
    fn nearly_all_bits_of_the_file_are_used() {
        let bytes = vec![0x5a; 31_000];
        // 31 of 32, two bytes a character.
        assert_eq!(pack(&bytes).encode_utf16().count() * 2, 32_000);
    }

    #[test]
    fn a_file_says_its_encoding_first() {
        assert_eq!(as_file("a\u{b585}"), [0xff, 0xfe, b'a', 0, 0x85, 0xb5]);
    }

    #[test]
    fn the_page_counts_to_the_same_base() {
        let start = include_str!("start.js");
        assert!(start.contains(&BASE.to_string()) && start.contains(&FIRST.to_string()));
    }
}
