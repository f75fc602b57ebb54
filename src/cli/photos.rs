//! Photographs beside a survey: decoded within bounds, made small, and written anew, so
//! that place, time and camera stay behind.

use std::fs;
use std::fs::File;
use std::io::BufReader;
use std::io::Read;
use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use image::DynamicImage;
use image::ImageDecoder;
use image::ImageReader;
use image::Limits;
use image::codecs::jpeg::JpegEncoder;

use crate::cli::survey_rules::folder_of;
use crate::report::PhotoShown;
use crate::report::PhotoSource;

/// A file is no larger than this.
const LARGEST_FILE: u64 = 40 << 20;
/// A picture is no wider and no higher, in pixels, and takes no more to decode.
const WIDEST: u32 = 20_000;
const MOST_MEMORY: u64 = 400 << 20;
/// Shown no wider and no higher.
const SHOWN: u32 = 1_000;
/// How good it is shown, of a hundred.
const QUALITY: u8 = 75;
/// All photographs of a page together, as they stand in it.
const MOST_IN_A_PAGE: usize = 24 << 20;

/// Photographs from the folders of these surveys.
pub(super) struct PhotosBeside<'s> {
    surveys: &'s [PathBuf],
    carried: usize,
}

impl PhotosBeside<'_> {
    pub(super) fn new(surveys: &[PathBuf]) -> PhotosBeside<'_> {
        PhotosBeside {
            surveys,
            carried: 0,
        }
    }
}

impl PhotoSource for PhotosBeside<'_> {
    fn photo(&mut self, survey: &str, written: &str) -> Result<PhotoShown, String> {
        let path = beside(&folder_of(survey, self.surveys), written)?;
        if self.carried > MOST_IN_A_PAGE {
            return Err(format!(
                "the page holds {} MB of photographs already",
                MOST_IN_A_PAGE >> 20
            ));
        }
        let shown = shown(&path)?;
        self.carried += shown.jpeg.len();
        Ok(shown)
    }
}

/// The file, where it lies beside the survey or below it.
fn beside(folder: &Path, written: &str) -> Result<PathBuf, String> {
    let elsewhere = || "it does not lie beside the survey or below it".to_owned();
    let inside = Path::new(written.trim());
    let plain = |step: Component<'_>| matches!(step, Component::Normal(_) | Component::CurDir);
    if !inside.components().all(plain) {
        return Err(elsewhere());
    }
    let full = folder.join(inside);
    match (full.canonicalize(), folder.canonicalize()) {
        (Ok(full), Ok(folder)) if full.starts_with(&folder) => Ok(full),
        (Ok(_), Ok(_)) => Err(elsewhere()),
        (Err(_), _) | (_, Err(_)) => Err("there is no such file".to_owned()),
    }
}

/// The picture, small and upright, without what the camera wrote into it.
fn shown(path: &Path) -> Result<PhotoShown, String> {
    let about = fs::metadata(path).map_err(|error| error.to_string())?;
    if !about.is_file() {
        return Err("this is no file".to_owned());
    }
    if about.len() > LARGEST_FILE {
        return Err(format!("the file is larger than {} MB", LARGEST_FILE >> 20));
    }
    let file = File::open(path).map_err(|error| error.to_string())?;
    let mut bytes = Vec::new();
    BufReader::new(file)
        .take(LARGEST_FILE)
        .read_to_end(&mut bytes)
        .map_err(|error| error.to_string())?;
    let broken = |_| "this is no JPEG, PNG or WebP picture that can be read".to_owned();
    let mut reader = ImageReader::new(std::io::Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|error| error.to_string())?;
    let mut limits = Limits::default();
    limits.max_image_width = Some(WIDEST);
    limits.max_image_height = Some(WIDEST);
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(broken)?;
    let upright = decoder.orientation();
    let mut picture = DynamicImage::from_decoder(decoder).map_err(broken)?;
    if let Ok(upright) = upright {
        picture.apply_orientation(upright);
    }
    if picture.width() > SHOWN || picture.height() > SHOWN {
        picture = picture.thumbnail(SHOWN, SHOWN);
    }
    let plain = picture.to_rgb8();
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, QUALITY)
        .encode_image(&plain)
        .map_err(|error| error.to_string())?;
    Ok(PhotoShown {
        jpeg: STANDARD.encode(&jpeg),
        wide: plain.width(),
        high: plain.height(),
    })
}
