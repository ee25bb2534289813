//! What a file is by its first bytes, whatever its name says.

/// How many bytes tell.
pub const MAGIC_LEN: usize = 8;

/// Local file header of a zip archive (PKWARE APPNOTE 4.3.7), and the end record of an empty one (4.3.16).
const ZIP: [&[u8]; 2] = [b"PK\x03\x04", b"PK\x05\x06"];

/// Header signature of a compound file (MS-CFB 2.2).
const COMPOUND: &[u8] = b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";

/// What a file that is not text seems to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A zip archive, as an .xlsx is.
    Zip,
    /// A compound file: an .xls, or a workbook with a password.
    Compound,
}

impl Kind {
    /// The kind of a file that begins with `head`; `None` for text.
    #[must_use]
    pub fn of(head: &[u8]) -> Option<Self> {
        if ZIP.iter().any(|magic| head.starts_with(magic)) {
            return Some(Self::Zip);
        }
        head.starts_with(COMPOUND).then_some(Self::Compound)
    }

    /// Whether more bytes after `head` are needed to tell.
    #[must_use]
    pub fn needs_more(head: &[u8]) -> bool {
        ZIP.iter().chain([&COMPOUND]).any(|magic| head.len() < magic.len() && magic.starts_with(head))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_bytes_tell() {
        assert_eq!(Kind::of(b"PK\x03\x04\x14\0\0\0"), Some(Kind::Zip));
        assert_eq!(Kind::of(b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"), Some(Kind::Compound));
        for text in [&b"PK,claim_w\n"[..], b"listing,title", b"", b"P", b"\xEF\xBB\xBFPK\x03\x04"] {
            assert_eq!(Kind::of(text), None, "{text:?}");
        }
    }

    #[test]
    fn no_more_is_asked_for_than_tells() {
        for (head, more) in [
            (&b""[..], true),
            (b"P", true),
            (b"PK\x03", true),
            (b"PK,", false),
            (b"l", false),
            (b"\xD0\xCF", true),
        ] {
            assert_eq!(Kind::needs_more(head), more, "{head:?}");
        }
    }
}
