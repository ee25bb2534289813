//! Which byte separates the fields: found from the first line that holds anything.

/// How much of the header is looked at, in bytes.
pub(super) const LOOKED_AT: usize = 16 * 1024;

/// The delimiters that are looked for; of two that are as frequent the earlier one wins, for a name of a column holds
/// a comma sooner than a tab.
const KNOWN: [u8; 3] = [b'\t', b';', b','];

/// The delimiter of the header at the start of `head`, or `None` if more of the header is needed.
///
/// The most frequent of tab, semicolon and comma outside quotes, up to the line end outside quotes; a comma if there is
/// none of them. `whole` says that no more bytes will come or be looked at. A quote that is still open then is not believed:
/// the first line alone decides.
pub(super) fn detect(head: &[u8], whole: bool) -> Option<u8> {
    let mut counts = [0_usize; KNOWN.len()];
    let mut counts_of_line = None;
    let (mut quoted, mut field_start) = (false, true);
    for &byte in head {
        let line_end = byte == b'\n' || byte == b'\r';
        if quoted {
            quoted = byte != b'"';
            if line_end && counts_of_line.is_none() {
                counts_of_line = Some(counts);
            }
            continue;
        }
        if line_end {
            return Some(most_frequent(&counts));
        }
        // A doubled quote closes and opens again, which is right: after a closing quote a field may reopen.
        quoted = byte == b'"' && field_start;
        let delimiter = KNOWN.iter().position(|known| *known == byte);
        if let Some(index) = delimiter {
            counts[index] += 1;
        }
        field_start = delimiter.is_some() || (field_start && byte == b'"');
    }
    whole.then(|| most_frequent(&if quoted { counts_of_line.unwrap_or(counts) } else { counts }))
}

fn most_frequent(counts: &[usize; KNOWN.len()]) -> u8 {
    let most = counts.iter().max().copied().unwrap_or(0);
    if most == 0 {
        return b',';
    }
    counts.iter().position(|count| *count == most).map_or(b',', |index| KNOWN[index])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_most_frequent_delimiter_of_the_header_wins() {
        assert_eq!(detect(b"a,b;c,d\n;;;;;;", false), Some(b','));
        assert_eq!(detect(b"a;b;\"c,d,e,f\"\n", false), Some(b';'));
        assert_eq!(detect(b"a\tb, c\td, e\r", false), Some(b'\t'));
        assert_eq!(detect(b"alone\n1;2\n", false), Some(b','));
    }

    #[test]
    fn a_header_that_has_not_ended_is_waited_for() {
        assert_eq!(detect(b"a;b", false), None);
        assert_eq!(detect(b"a;b", true), Some(b';'));
        assert_eq!(detect(b"\"a\nb\";c", false), None);
        assert_eq!(detect(b"\"a\nb\";c\n", false), Some(b';'));
    }

    #[test]
    fn an_inch_mark_in_a_name_opens_no_quote() {
        assert_eq!(detect(b"size (24\");price, net;name\n", false), Some(b';'));
    }

    #[test]
    fn doubled_quotes_stay_inside() {
        assert_eq!(detect(b"\"a \"\"x,y,z\"\" b\";c\n", false), Some(b';'));
    }

    #[test]
    fn a_header_with_an_open_quote_is_judged_by_its_first_line() {
        assert_eq!(detect(b"a;b;\"c\n1,2,3\n4,5,6\n", true), Some(b';'));
    }
}
