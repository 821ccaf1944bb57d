//! How PWG raster squeezes rows: a row that comes again is counted, and within a row so are bytes.
//!
//! Each group of equal rows is one byte, how often the row comes again (0 to 255), and the row in
//! parts. A part is one byte and its bytes: 0 to 127 says how often the one byte behind it comes
//! again; 129 to 255 says that 257 less that many different bytes follow. 128 is not written.

/// Longest part, of equal bytes or of different ones.
const LONGEST: usize = 128;

/// Most rows in one group.
const GROUP: usize = 256;

/// Writes rows of `width` bytes each.
pub(super) fn pack(out: &mut Vec<u8>, rows: &[u8], width: usize) {
    let mut rows = rows.chunks(width.max(1)).peekable();
    while let Some(row) = rows.next() {
        let mut again = 0;
        while again + 1 < GROUP && rows.next_if(|next| *next == row).is_some() {
            again += 1;
        }
        out.push(again as u8);
        pack_row(out, row);
    }
}

fn pack_row(out: &mut Vec<u8>, mut row: &[u8]) {
    while let Some(first) = row.first() {
        let equal = row.iter().take(LONGEST).take_while(|byte| *byte == first);
        let (equal, different) = (equal.count(), different(row));
        // A single byte counts as equal to itself: no number stands for one different byte.
        let part = if equal > 1 || different < 2 {
            out.extend([(equal - 1) as u8, *first]);
            equal
        } else {
            out.push((257 - different) as u8);
            out.extend(&row[..different]);
            different
        };
        row = &row[part..];
    }
}

/// How many bytes go by before two equal ones follow each other.
fn different(row: &[u8]) -> usize {
    let pair = row
        .windows(2)
        .take(LONGEST)
        .position(|two| two[0] == two[1]);
    pair.unwrap_or(row.len().min(LONGEST))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn unpack(mut packed: &[u8], width: usize) -> Vec<u8> {
        let mut rows = Vec::new();
        let mut take = |count: usize| {
            let (taken, rest) = packed.split_at(count);
            packed = rest;
            (taken.to_vec(), rest.is_empty())
        };
        loop {
            let (again, _) = take(1);
            let mut row = Vec::new();
            let mut last = false;
            while row.len() < width {
                let number = usize::from(take(1).0[0]);
                assert_ne!(number, 128);
                let part = if number < 128 {
                    let (byte, end) = take(1);
                    last = end;
                    byte.repeat(number + 1)
                } else {
                    let (bytes, end) = take(257 - number);
                    last = end;
                    bytes
                };
                row.extend(part);
            }
            assert_eq!(row.len(), width, "a part runs over the end of its row");
            rows.extend(row.repeat(usize::from(again[0]) + 1));
            if last {
                return rows;
            }
        }
    }

    /// Rows of which some come again, with bytes of which some do.
    fn rows() -> impl Strategy<Value = (usize, Vec<u8>)> {
        (1..400_usize).prop_flat_map(|width| {
            let run = (0..4_u8, 1..150_usize).prop_map(|(byte, count)| vec![byte; count]);
            let mixed = prop::collection::vec(any::<u8>(), 1..150);
            let parts = prop::collection::vec(prop_oneof![run, mixed], 1..8);
            let row = parts.prop_map(move |parts| {
                parts
                    .concat()
                    .into_iter()
                    .cycle()
                    .take(width)
                    .collect::<Vec<u8>>()
            });
            let group = (row, 1..600_usize).prop_map(|(row, count)| row.repeat(count));
            prop::collection::vec(group, 1..4).prop_map(move |groups| (width, groups.concat()))
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]

        #[test]
        fn what_was_packed_comes_out((width, rows) in rows()) {
            let mut packed = Vec::new();
            pack(&mut packed, &rows, width);
            prop_assert!(unpack(&packed, width) == rows);
        }
    }

    #[test]
    fn bytes_as_the_standard_writes_them() {
        let packed = |row: &[u8]| {
            let mut out = Vec::new();
            pack(&mut out, &row.repeat(300), row.len());
            out
        };
        // 256 rows in one group, 44 in the next; one byte, two different ones, three equal ones.
        let row = [1, 1, 1, 2, 3, 3, 7];
        let parts = [2, 1, 0, 2, 1, 3, 0, 7];
        let expected = [&[255], &parts[..], &[43], &parts[..]].concat();
        assert_eq!(packed(&row), expected);
        assert_eq!(packed(&[4, 5, 6])[..5], [255, 254, 4, 5, 6]);
    }
}
