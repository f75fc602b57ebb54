//! Photographs that a survey names: shown small and without what a camera wrote into
//! them, or as a named empty frame.

use std::fs;
use std::path::Path;

use base64::Engine;
use image::ImageEncoder;
use image::RgbImage;
use image::codecs::jpeg::JpegEncoder;

use crate::harness::run_in;

/// What a camera writes into its pictures, made up: an orientation (turned right) and
/// words that must not travel.
fn exif() -> Vec<u8> {
    let mut tiff: Vec<u8> = b"II*\0\x08\0\0\0".to_vec();
    tiff.extend([1, 0]); // one entry
    tiff.extend([0x12, 0x01, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0]); // orientation 6
    tiff.extend([0, 0, 0, 0]);
    tiff.extend(b"47.3769N 8.5417E at home");
    tiff
}

fn jpeg(path: &Path, wide: u32, high: u32) {
    let picture = RgbImage::from_fn(wide, high, |x, y| {
        image::Rgb([
            u8::try_from(x % 251).unwrap_or(0),
            u8::try_from(y % 241).unwrap_or(0),
            90,
        ])
    });
    let mut bytes = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 90);
    encoder.set_exif_metadata(exif()).expect("taken");
    encoder
        .encode(&picture, wide, high, image::ExtendedColorType::Rgb8)
        .expect("a Vec takes everything");
    fs::write(path, bytes).expect("written");
}

/// The page of a survey that names these photographs.
fn page(folder: &Path, photos: &[(&str, &str)]) -> (String, String) {
    let mut survey = "unit,guard,item,reading,note\n,porch,place,porch,\n,porch,drop,4 ft,\n,porch,height,34 in,\n".to_owned();
    for (name, note) in photos {
        survey.push_str(&format!(",porch,photo,{name},{note}\n"));
    }
    fs::write(folder.join("s.csv"), survey).expect("written");
    let ran = run_in(folder, &["check", "@s.csv", "--format", "html"], "");
    (ran.out, ran.err)
}

fn pictures(page: &str) -> Vec<Vec<u8>> {
    let parts = page.split("data:image/jpeg;base64,").skip(1);
    parts
        .map(|part| {
            let text = part.split('"').next().expect("an end");
            base64::engine::general_purpose::STANDARD
                .decode(text)
                .expect("base64")
        })
        .collect()
}

#[test]
fn a_photograph_is_carried_small_upright_and_without_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join("photos")).expect("a folder");
    jpeg(&folder.path().join("photos/deck.jpg"), 1600, 800);
    let original = fs::read(folder.path().join("photos/deck.jpg")).expect("there");
    let has = |bytes: &[u8], words: &[u8]| bytes.windows(words.len()).any(|part| part == words);
    assert!(has(&original, b"47.3769N"), "the camera wrote it");
    let (page, err) = page(folder.path(), &[("photos/deck.jpg", "from the garden")]);
    assert_eq!(err, "");
    let all = pictures(&page);
    assert_eq!(all.len(), 1);
    assert!(!has(&all[0], b"47.3769N") && !has(&all[0], b"Exif"));
    let shown = image::load_from_memory(&all[0]).expect("a picture");
    assert_eq!(
        (shown.width(), shown.height()),
        (500, 1000),
        "turned, and no larger"
    );
    assert!(page.contains("width=\"500\" height=\"1000\" alt=\"Photograph: from the garden\""));
}

#[test]
fn a_photograph_that_cannot_be_shown_is_a_named_empty_frame() {
    let folder = tempfile::tempdir().expect("a folder");
    let outside = tempfile::tempdir().expect("a folder");
    jpeg(&outside.path().join("secret.jpg"), 40, 40);
    fs::write(
        folder.path().join("broken.jpg"),
        b"\xff\xd8\xff\xe0 and no more",
    )
    .expect("written");
    fs::write(folder.path().join("words.png"), "<svg onload=alert(1)>").expect("written");
    // a picture that says it is 60 000 pixels wide
    let mut png = Vec::new();
    image::codecs::png::PngEncoder::new(&mut png)
        .write_image(&[0; 3], 1, 1, image::ExtendedColorType::Rgb8)
        .expect("a Vec takes everything");
    png[16..24].copy_from_slice(&[0, 0, 0xEA, 0x60, 0, 0, 0xEA, 0x60]);
    fs::write(folder.path().join("huge.png"), png).expect("written");
    let secret = outside.path().join("secret.jpg").display().to_string();
    let (page, _) = page(
        folder.path(),
        &[
            ("broken.jpg", ""),
            ("words.png", ""),
            ("huge.png", ""),
            ("not-there.jpg", "the gap"),
            ("../secret.jpg", ""),
            (&secret, ""),
        ],
    );
    assert_eq!(page.matches("class=\"no-photo\"").count(), 6);
    assert!(pictures(&page).is_empty());
    for name in [
        "broken.jpg",
        "words.png",
        "huge.png",
        "not-there.jpg: “the gap”",
        "../secret.jpg",
    ] {
        assert!(page.contains(name), "{name}");
    }
    assert!(page.contains("there is no such file"));
    assert_eq!(
        page.matches("it does not lie beside the survey or below it")
            .count(),
        2
    );
}
