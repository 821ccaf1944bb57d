//! Dots to a PNG picture of the right physical size: one bit a pixel, or eight of grey.

use ::png::{BitDepth, ColorType, Encoder, EncodingError, PixelDimensions, Unit};

use crate::raster::{Bitmap, Edges};

/// Writes a picture. One pixel is one bit where letters have sharp edges, else eight of grey.
/// The file says how many pixels make a metre, so that it prints at its true size.
///
/// # Errors
/// A page without a single dot is no picture.
pub fn png(bitmap: &Bitmap) -> Result<Vec<u8>, EncodingError> {
    let size = |pixels| u32::try_from(pixels).unwrap_or(u32::MAX);
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, size(bitmap.width()), size(bitmap.height()));
    encoder.set_color(ColorType::Grayscale);
    encoder.set_depth(match bitmap.edges() {
        Edges::Sharp => BitDepth::One,
        Edges::Smooth => BitDepth::Eight,
    });
    let per_metre = per_metre(bitmap.per_inch());
    encoder.set_pixel_dims(Some(PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: Unit::Meter,
    }));
    let light: Vec<u8> = match bitmap.edges() {
        Edges::Sharp => bitmap.bits().iter().map(|byte| !byte).collect(),
        Edges::Smooth => bitmap.rows().flatten().map(|ink| u8::MAX - ink).collect(),
    };
    let mut writer = encoder.write_header()?;
    writer.write_image_data(&light)?;
    writer.finish()?;
    Ok(file)
}

/// Pixels per metre, to the nearest: 0.0254 m is an inch.
fn per_metre(per_inch: u32) -> u32 {
    (per_inch * 10_000 + 127) / 254
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Dpi;
    use crate::raster::raster;
    use crate::raster::tests::blank;

    #[test]
    fn a_picture_knows_its_true_size() {
        for (edges, depth) in [
            (Edges::Sharp, BitDepth::One),
            (Edges::Smooth, BitDepth::Eight),
        ] {
            let file = png(&raster(&blank(60.0, 40.0, Dpi::D300), 2, edges)).unwrap();
            let reader = ::png::Decoder::new(std::io::Cursor::new(file));
            let reader = reader.read_info().unwrap();
            let info = reader.info();
            assert_eq!(
                (info.width, info.height, info.bit_depth),
                (1416, 944, depth)
            );
            // 600 pixels an inch, 25.4 mm.
            let dims = info.pixel_dims.unwrap();
            assert_eq!((dims.xppu, dims.yppu), (23_622, 23_622));
        }
    }

    #[test]
    fn no_dot_is_no_picture() {
        assert!(png(&raster(&blank(0.0, 40.0, Dpi::D300), 1, Edges::Sharp)).is_err());
    }
}
