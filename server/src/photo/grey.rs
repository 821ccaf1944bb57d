//! A photo as grey dots. Its own colours say nothing of a code.

use png::{ColorType, Transformations};
use std::io::Cursor;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

/// The most dots of a photo. The largest phones make that many.
pub const MOST_DOTS: usize = 50_000_000;
/// The longest side.
const LONGEST: usize = 12_000;

/// Why bytes are no photo.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotAPhoto {
    /// Neither a JPEG nor a PNG that can be read.
    Unreadable,
    /// More dots than we take in.
    TooManyDots,
}

/// A grey picture: one byte a dot, row by row; 0 is black.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Grey {
    /// Its width, in dots.
    pub width: usize,
    /// Its height.
    pub height: usize,
    /// The dots.
    pub dots: Vec<u8>,
}

/// Reads a JPEG or a PNG.
///
/// # Errors
/// It is neither, or too large.
pub fn read(bytes: &[u8]) -> Result<Grey, NotAPhoto> {
    let grey = match bytes {
        [0x89, b'P', b'N', b'G', ..] => png(bytes)?,
        [0xff, 0xd8, ..] => jpeg(bytes)?,
        _ => return Err(NotAPhoto::Unreadable),
    };
    let whole = grey.width * grey.height;
    match grey.dots.len() == whole && whole > 0 {
        true => Ok(grey),
        false => Err(NotAPhoto::Unreadable),
    }
}

fn bounded(width: usize, height: usize) -> Result<(), NotAPhoto> {
    let fits = width.max(height) <= LONGEST && width.saturating_mul(height) <= MOST_DOTS;
    fits.then_some(()).ok_or(NotAPhoto::TooManyDots)
}

fn jpeg(bytes: &[u8]) -> Result<Grey, NotAPhoto> {
    let options = DecoderOptions::default()
        .jpeg_set_out_colorspace(ColorSpace::Luma)
        .set_max_width(LONGEST * 4)
        .set_max_height(LONGEST * 4);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    decoder
        .decode_headers()
        .map_err(|_| NotAPhoto::Unreadable)?;
    let info = decoder.info().ok_or(NotAPhoto::Unreadable)?;
    let (width, height) = (usize::from(info.width), usize::from(info.height));
    bounded(width, height)?;
    let dots = decoder.decode().map_err(|_| NotAPhoto::Unreadable)?;
    Ok(Grey {
        width,
        height,
        dots,
    })
}

fn png(bytes: &[u8]) -> Result<Grey, NotAPhoto> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(Transformations::EXPAND | Transformations::STRIP_16);
    let mut reader = decoder.read_info().map_err(|_| NotAPhoto::Unreadable)?;
    let (width, height) = (reader.info().width as usize, reader.info().height as usize);
    bounded(width, height)?;
    let size = reader.output_buffer_size().ok_or(NotAPhoto::TooManyDots)?;
    let mut raw = vec![0; size];
    let frame = reader
        .next_frame(&mut raw)
        .map_err(|_| NotAPhoto::Unreadable)?;
    raw.truncate(frame.buffer_size());
    let dots = match frame.color_type {
        ColorType::Grayscale => raw,
        ColorType::GrayscaleAlpha => raw
            .chunks_exact(2)
            .map(|dot| over(dot[0], dot[1]))
            .collect(),
        ColorType::Rgb => raw.chunks_exact(3).map(of_colour).collect(),
        ColorType::Rgba => raw
            .chunks_exact(4)
            .map(|dot| over(of_colour(dot), dot[3]))
            .collect(),
        ColorType::Indexed => return Err(NotAPhoto::Unreadable),
    };
    Ok(Grey {
        width,
        height,
        dots,
    })
}

/// How bright a colour is to the eye, in 256ths of red, green and blue (the weights of ITU-R BT.601, from memory).
fn of_colour(dot: &[u8]) -> u8 {
    let [red, green, blue] = [dot[0], dot[1], dot[2]].map(u32::from);
    ((77 * red + 150 * green + 29 * blue) >> 8) as u8
}

/// What is seen through lies on white.
fn over(bright: u8, alpha: u8) -> u8 {
    let (bright, alpha) = (u32::from(bright), u32::from(alpha));
    ((bright * alpha + 255 * (255 - alpha)) / 255) as u8
}

impl Grey {
    /// The same smaller, where its longest side has more dots than that: each dot is the mean of those that it
    /// stands for.
    pub fn at_most(&self, longest: usize) -> Grey {
        let by = self.width.max(self.height).div_ceil(longest.max(1)).max(1);
        if by == 1 {
            return self.clone();
        }
        let (width, height) = ((self.width / by).max(1), (self.height / by).max(1));
        let mut dots = Vec::with_capacity(width * height);
        for row in 0..height {
            for column in 0..width {
                let (mut sum, mut count) = (0_u32, 0_u32);
                for y in row * by..((row + 1) * by).min(self.height) {
                    let line = y * self.width;
                    for x in column * by..((column + 1) * by).min(self.width) {
                        sum += u32::from(self.dots[line + x]);
                        count += 1;
                    }
                }
                dots.push((sum / count.max(1)) as u8);
            }
        }
        Grey {
            width,
            height,
            dots,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_smaller_picture_is_the_mean_of_the_larger() {
        let grey = Grey {
            width: 4,
            height: 2,
            dots: vec![0, 100, 200, 200, 100, 200, 200, 200],
        };
        let small = grey.at_most(2);
        assert_eq!(
            (small.width, small.height, small.dots),
            (2, 1, vec![100, 200])
        );
        assert_eq!(grey.at_most(4), grey);
        assert_eq!(grey.at_most(0).dots.len(), 1);
    }

    #[test]
    fn what_is_no_photo_is_none() {
        for bytes in [&b""[..], b"GIF89a", b"\xff\xd8", b"\x89PNG\r\n"] {
            assert_eq!(read(bytes), Err(NotAPhoto::Unreadable), "{bytes:?}");
        }
    }

    #[test]
    fn white_is_behind_what_is_seen_through() {
        assert_eq!((over(0, 255), over(0, 0), over(100, 255)), (0, 255, 100));
        assert_eq!(
            (of_colour(&[255, 255, 255]), of_colour(&[0, 0, 0])),
            (255, 0)
        );
    }
}
