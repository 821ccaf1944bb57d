//! A square code's mask: of eight patterns that turn modules over, the one that leaves the picture
//! easiest to read (ISO/IEC 18004).
//!
//! The `qrcode` crate makes the code and tries the masks module by module, which takes longer than
//! all the rest of a label. Here a row of modules is one word, and a word is tried at once. The
//! choice is that crate's own, so the picture is the same, module for module.

use qrcode::canvas::{Canvas, MaskPattern, Module};
use qrcode::types::QrResult;
use qrcode::{Color, EcLevel, Version, bits, ec};

/// The masks in the order of their numbers; of two equally good ones the first is taken.
const PATTERNS: [MaskPattern; 8] = [
    MaskPattern::Checkerboard,
    MaskPattern::HorizontalLines,
    MaskPattern::VerticalLines,
    MaskPattern::DiagonalLines,
    MaskPattern::LargeCheckerboard,
    MaskPattern::Fields,
    MaskPattern::Diamonds,
    MaskPattern::Meadow,
];

/// Rows after which every mask begins anew.
const PERIOD: usize = 12;

/// The rows of each mask, a one where a module is turned over.
static MASKS: [[u128; PERIOD]; 8] = masks();

const fn masks() -> [[u128; PERIOD]; 8] {
    let mut masks = [[0; PERIOD]; 8];
    let (mut mask, mut y, mut x) = (0, 0, 0);
    while mask < masks.len() {
        if turns_over(mask, x, y) {
            masks[mask][y] |= 1 << x;
        }
        x += 1;
        if x == u128::BITS as usize {
            (x, y) = (0, y + 1);
        }
        if y == PERIOD {
            (y, mask) = (0, mask + 1);
        }
    }
    masks
}

const fn turns_over(mask: usize, x: usize, y: usize) -> bool {
    0 == match mask {
        0 => (x + y) % 2,
        1 => y % 2,
        2 => x % 3,
        3 => (x + y) % 3,
        4 => (y / 2 + x / 3) % 2,
        5 => (x * y) % 2 + (x * y) % 3,
        6 => ((x * y) % 2 + (x * y) % 3) % 2,
        _ => ((x + y) % 2 + (x * y) % 3) % 2,
    }
}

/// The smallest square code for a payload: its width in modules, and its modules row by row.
///
/// # Errors
/// When the payload is longer than any square code can hold.
pub(crate) fn symbol(payload: &[u8], level: EcLevel) -> QrResult<(usize, Vec<Color>)> {
    let bits = bits::encode_auto(payload, level)?;
    let version = bits.version();
    let (data, correction) = ec::construct_codewords(&bits.into_bytes(), version, level)?;
    let mut canvas = Canvas::new(version, level);
    canvas.draw_all_functional_patterns();
    canvas.draw_data(&data, &correction);
    match ModuleGrid::read(&canvas, version) {
        Some(grid) => canvas.apply_mask(PATTERNS[grid.best(level)]),
        None => canvas = canvas.apply_best_mask(),
    }
    Ok((
        usize::from(version.width().unsigned_abs()),
        canvas.into_colors(),
    ))
}

/// The modules before masking, the leftmost in the lowest bit.
struct ModuleGrid {
    width: usize,
    dark: Vec<u128>,
    /// Which of them a mask may turn over.
    open: Vec<u128>,
}

impl ModuleGrid {
    /// `None` for a code of more modules than a word has bits; no label has room for one.
    fn read(canvas: &Canvas, version: Version) -> Option<ModuleGrid> {
        let width = version.width();
        let in_word = u32::from(width.unsigned_abs()) <= u128::BITS;
        in_word.then(|| {
            let row = |y: i16, holds: fn(Module) -> bool| -> u128 {
                let bit = |x: i16| u128::from(holds(canvas.get(x, y)));
                (0..width).fold(0, |row, x| row | (bit(x) << x))
            };
            let rows = |holds| (0..width).map(|y| row(y, holds)).collect();
            ModuleGrid {
                width: usize::from(width.unsigned_abs()),
                dark: rows(Module::is_dark),
                open: rows(|module| !matches!(module, Module::Masked(_))),
            }
        })
    }

    /// The number of the mask with the lowest penalty.
    fn best(&self, level: EcLevel) -> usize {
        let penalty = |mask: &usize| penalty(&self.masked(*mask, level));
        (0..PATTERNS.len()).min_by_key(penalty).unwrap_or(0)
    }

    fn masked(&self, mask: usize, level: EcLevel) -> Vec<u128> {
        let turned = MASKS[mask].iter().cycle();
        let both = self.dark.iter().zip(&self.open);
        let mut rows: Vec<u128> = both
            .zip(turned)
            .map(|((dark, open), turned)| dark ^ (open & turned))
            .collect();
        self.draw_format(&mut rows, format(level, mask));
        rows
    }

    /// The two copies of level and mask number, highest bit first, beside the three eyes.
    fn draw_format(&self, rows: &mut [u128], format: u32) {
        const NEAR: [(usize, usize); 15] = [
            (0, 8),
            (1, 8),
            (2, 8),
            (3, 8),
            (4, 8),
            (5, 8),
            (7, 8),
            (8, 8),
            (8, 7),
            (8, 5),
            (8, 4),
            (8, 3),
            (8, 2),
            (8, 1),
            (8, 0),
        ];
        let mut put = |x: usize, y: usize, dark: u128| {
            rows[y] = rows[y] & !(1 << x) | dark << x;
        };
        for (nth, (x, y)) in NEAR.into_iter().enumerate() {
            let dark = u128::from(format >> (14 - nth) & 1);
            put(x, y, dark);
            match nth {
                0..=6 => put(8, self.width - 1 - nth, dark),
                _ => put(self.width - 15 + nth, 8, dark),
            }
        }
    }
}

/// Level and mask number with their own error correction, fifteen bits (ISO/IEC 18004).
pub(crate) fn format(level: EcLevel, mask: usize) -> u32 {
    const GENERATOR: u32 = 0b101_0011_0111;
    const NEVER_BLANK: u32 = 0b101_0100_0001_0010;
    let level = match level {
        EcLevel::L => 0b01,
        EcLevel::M => 0b00,
        EcLevel::Q => 0b11,
        EcLevel::H => 0b10,
    };
    let data = (level << 3 | mask as u32) << 10;
    let rest = (10..15).rev().fold(data, |rest, bit| {
        if rest >> bit & 1 == 1 {
            rest ^ GENERATOR << (bit - 10)
        } else {
            rest
        }
    });
    (data | rest) ^ NEVER_BLANK
}

/// How hard a picture is to read, by the four rules of ISO/IEC 18004. The share of dark modules
/// counts as the `qrcode` crate has it: point by point, where the standard goes by steps of 5 %.
fn penalty(rows: &[u128]) -> u32 {
    let width = rows.len();
    let row = |y: usize| rows.get(y).copied().unwrap_or(0);
    let all = u128::MAX >> (u128::BITS as usize - width);
    // A one where a module is like its neighbour to the right, or below.
    let like_right = |y: usize| !(row(y) ^ row(y) >> 1) & all >> 1;
    let like_below = |y: usize| {
        if y + 1 < width {
            !(row(y) ^ row(y + 1)) & all
        } else {
            0
        }
    };
    let (mut runs, mut blocks, mut eyes, mut dark) = (0, 0, 0, 0);
    let mut run_above = 0;
    for y in 0..width {
        dark += row(y).count_ones();
        let (right, below) = (like_right(y), like_below(y));
        // Five alike in a row are four likenesses: three points, and one for each more.
        let run = right & right >> 1 & right >> 2 & right >> 3;
        runs += run.count_ones() + 2 * (run & !(run << 1)).count_ones();
        let run = below & like_below(y + 1) & like_below(y + 2) & like_below(y + 3);
        runs += run.count_ones() + 2 * (run & !run_above).count_ones();
        run_above = run;
        // Two by two alike.
        if y + 1 < width {
            blocks += (right & like_right(y + 1) & below).count_ones();
        }
        let across = |n: i32| shifted(row(y), n);
        let down = |n: i32| y.checked_add_signed(n as isize).map_or(0, row);
        eyes += looks_like_an_eye(across).count_ones() + looks_like_an_eye(down).count_ones();
    }
    let share = dark * 200 / (width * width) as u32;
    runs + 3 * blocks + 40 * eyes + share.abs_diff(100)
}

/// A row as seen `n` modules further on; what is outside counts as light.
fn shifted(row: u128, n: i32) -> u128 {
    if n >= 0 { row >> n } else { row << -n }
}

/// A one where a row of modules begins that could be taken for the middle of an eye: dark, light,
/// three dark, light, dark, with four light ones before or behind.
fn looks_like_an_eye(at: impl Fn(i32) -> u128) -> u128 {
    let eye = at(0) & !at(1) & at(2) & at(3) & at(4) & !at(5) & at(6);
    if eye == 0 {
        return 0;
    }
    let before = at(-4) | at(-3) | at(-2) | at(-1);
    let behind = at(7) | at(8) | at(9) | at(10);
    eye & !(before & behind)
}
