//! The letters of one word packed into a few machine words, so that a word is compared and hashed at once and not letter
//! by letter.

/// How many machine words hold the letters.
pub(super) const CHUNKS: usize = 4;

/// The most bytes of a spelling. An ASCII or Cyrillic letter takes one, any other letter three.
pub(in crate::reading) const LONGEST: usize = CHUNKS * 8;

const EACH: u64 = u64::MAX / 0xff;
const TOP_BITS: u64 = EACH * 0x80;

/// A folded word: its letters in order, then zeros. Letters after the [`LONGEST`] bytes are only counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::reading) struct Spelling {
    pub(super) chunks: [u64; CHUNKS],
    pub(super) length: usize,
}

impl Spelling {
    /// No letters.
    pub(in crate::reading) const EMPTY: Self = Self { chunks: [0; CHUNKS], length: 0 };

    /// The first `length` letters, at most eight, in a machine word.
    pub(in crate::reading) const fn short(first: u64, length: usize) -> Self {
        Self { chunks: [first, 0, 0, 0], length }
    }

    /// The ASCII letters from `at` on, lower-cased; their number is the spelling's length.
    pub(in crate::reading) fn of_ascii(bytes: &[u8], at: usize) -> Self {
        let (first, length) = letters(eight(bytes, at));
        let mut word = Self { chunks: [first, 0, 0, 0], length };
        let mut taken = length;
        while taken == 8 {
            let (more, n) = letters(eight(bytes, at + word.length));
            if let Some(chunk) = word.chunks.get_mut(word.length / 8) {
                *chunk = more;
            }
            word.length += n;
            taken = n;
        }
        word
    }

    /// How many bytes the letters take.
    pub(in crate::reading) const fn letters(&self) -> usize {
        self.length
    }

    /// The first eight bytes, the first letter in the lowest one: enough to tell most words apart.
    pub(in crate::reading) const fn first(&self) -> u64 {
        self.chunks[0]
    }

    /// Adds a letter or digit, folded. In place, since a copy made straight after a letter was stored waits for it.
    pub(in crate::reading) const fn push(&mut self, letter: u32) {
        match letter {
            0..0x80 => self.push_byte(letter as u64),
            // Cyrillic
            0x430..0x450 => self.push_byte(letter as u64 - 0x430 + 0x80),
            _ => {
                self.push_byte(0xa0 | (letter as u64 >> 12) & 0x1f);
                self.push_byte(0x40 | (letter as u64 >> 6) & 0x3f);
                self.push_byte(0x40 | letter as u64 & 0x3f);
            }
        }
    }

    const fn push_byte(&mut self, byte: u64) {
        if self.length < LONGEST {
            self.chunks[self.length / 8] |= byte << (self.length % 8 * 8);
        }
        self.length += 1;
    }

    /// Takes the last letter away, which takes one byte.
    pub(in crate::reading) fn pop(&mut self) {
        let Some(last) = self.length.checked_sub(1) else { return };
        if let Some(chunk) = self.chunks.get_mut(last / 8) {
            *chunk &= !(0xff << (last % 8 * 8));
        }
        self.length = last;
    }

    /// A number that differs between nearly all words.
    pub(super) const fn hash(&self) -> u64 {
        let [a, b, c, d] = self.chunks;
        mix(a ^ b.rotate_left(21) ^ c.rotate_left(42) ^ d.rotate_left(11))
    }
}

/// The hash of a word of at most eight letters.
pub(super) const fn mix(letters: u64) -> u64 {
    (letters ^ (letters >> 29)).wrapping_mul(0x9e37_79b9_7f4a_7c15)
}

/// The eight bytes from `at` on, the first in the lowest place; zeros after the end.
#[inline]
pub(in crate::reading) fn eight(bytes: &[u8], at: usize) -> u64 {
    match bytes.get(at..).and_then(<[u8]>::first_chunk::<8>) {
        Some(chunk) => u64::from_le_bytes(*chunk),
        None => last_bytes(bytes, at),
    }
}

#[cold]
fn last_bytes(bytes: &[u8], at: usize) -> u64 {
    let rest = bytes.get(at..).unwrap_or_default();
    rest.iter().rev().fold(0, |all, &b| all << 8 | u64::from(b))
}

/// The ASCII letters at the start of eight bytes, lower-cased, and how many there are.
#[inline]
pub(in crate::reading) fn letters(eight: u64) -> (u64, usize) {
    let lower = eight | (EACH * 0x20);
    let seven_bits = lower & !TOP_BITS;
    let from_a = seven_bits + EACH * (0x80 - 0x61);
    let past_z = seven_bits + EACH * (0x7f - 0x7a);
    let other = (!from_a | past_z | eight) & TOP_BITS;
    (lower & before_first(other), other.trailing_zeros() as usize / 8)
}

/// The bytes before the first one whose top bit is set, of bytes of which no other bits are.
#[inline]
pub(in crate::reading) const fn before_first(top_bits: u64) -> u64 {
    ((top_bits & top_bits.wrapping_neg()) >> 7).wrapping_sub(1)
}
