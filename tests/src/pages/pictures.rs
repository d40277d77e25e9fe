//! Reference pictures: the first page of every document of the metric example, as it was when
//! somebody last looked at it.
//!
//! `cargo xtask pictures` takes them anew into `pictures/pages`; look at what has changed.

use super::look::printed;
use checks::courses::planned;
use checks::folder;
use checks::paper::Paper;
use documents::{Course, DOCUMENTS};
use files::Library;
use files::course::set;
use std::fs::File;
use std::io::{BufReader, BufWriter};
use std::path::{Path, PathBuf};

/// Enough to see a line of text moved, and no more.
const DOTS_PER_INCH: u32 = 40;

/// The side of a block whose shade is compared, in points of the picture.
const BLOCK: usize = 16;

/// How far the shade of a whole page may be off, of 255: another version of the tool draws the
/// edges of letters a little lighter or darker.
const PAGE_OFF: f64 = 1.5;

/// How far that of a block may be off: a word more or less is some 30.
const BLOCK_OFF: f64 = 16.0;

struct Picture {
    width: usize,
    height: usize,
    shades: Vec<u8>,
}

fn first_page(course: &Course, document: &documents::Document) -> Picture {
    let paper = Paper::new(&printed(course, document).pdf);
    let (width, height, shades) = paper.picture(1, DOTS_PER_INCH);
    Picture {
        width,
        height,
        shades,
    }
}

fn kept_in(name: &str) -> PathBuf {
    folder("pictures").join("pages").join(format!("{name}.png"))
}

fn write(path: &Path, picture: &Picture) {
    std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder is made");
    let file = BufWriter::new(File::create(path).expect("the picture is written"));
    let side = |many: usize| u32::try_from(many).expect("a small picture");
    let mut png = png::Encoder::new(file, side(picture.width), side(picture.height));
    png.set_color(png::ColorType::Grayscale);
    png.set_compression(png::Compression::High);
    let mut writer = png.write_header().expect("a head");
    writer.write_image_data(&picture.shades).expect("a picture");
}

fn read(path: &Path) -> Option<Picture> {
    let decoder = png::Decoder::new(BufReader::new(File::open(path).ok()?));
    let mut reader = decoder.read_info().ok()?;
    let mut shades = vec![0; reader.output_buffer_size()?];
    let info = reader.next_frame(&mut shades).ok()?;
    shades.truncate(info.buffer_size());
    Some(Picture {
        width: info.width as usize,
        height: info.height as usize,
        shades,
    })
}

/// How far two pictures of one size are off on the whole, and where most.
fn off(one: &Picture, other: &Picture) -> (f64, f64) {
    let mut blocks = Vec::new();
    for top in (0..one.height).step_by(BLOCK) {
        for left in (0..one.width).step_by(BLOCK) {
            let (mut sum, mut many) = (0.0, 0.0);
            for down in top..one.height.min(top + BLOCK) {
                for across in left..one.width.min(left + BLOCK) {
                    let at = down * one.width + across;
                    sum += f64::from(one.shades[at]) - f64::from(other.shades[at]);
                    many += 1.0;
                }
            }
            blocks.push(f64::abs(sum / many));
        }
    }
    let mean = blocks.iter().sum::<f64>() / blocks.len() as f64;
    (mean, blocks.into_iter().fold(0.0, f64::max))
}

fn differs(one: &Picture, other: &Picture) -> Option<String> {
    if (one.width, one.height) != (other.width, other.height) {
        return Some("the paper has another size".to_owned());
    }
    let (page, block) = off(one, other);
    (PAGE_OFF < page || BLOCK_OFF < block)
        .then(|| format!("off by {page:.1} on the whole and {block:.0} at the worst place"))
}

#[test]
fn first_pages_look_as_they_did_when_last_looked_at() {
    let course = planned(Library::example(false));
    let taking = std::env::var_os("TAKE_PICTURES").is_some();
    let mut faults = Vec::new();
    for document in DOCUMENTS {
        let page = first_page(&course, document);
        let path = kept_in(document.name);
        if taking {
            write(&path, &page);
            continue;
        }
        let fault = match read(&path) {
            Some(kept) => differs(&page, &kept),
            None => Some("there is no picture of it yet".to_owned()),
        };
        if let Some(fault) = fault {
            let now = std::env::temp_dir().join(format!("{}-now.png", document.name));
            write(&now, &page);
            faults.push(format!(
                "{}: {fault}; now: {}",
                document.name,
                now.display()
            ));
        }
    }
    let cure = "Look at both; if the new page is right, take it with: cargo xtask pictures";
    assert!(faults.is_empty(), "\n{}\n{cure}\n", faults.join("\n"));
}

/// The check sees one figure that is another, and takes no offence at a breath of grey.
#[test]
fn another_figure_on_a_page_is_seen() {
    let sheet = documents::named("setting-out").expect("a sheet");
    let text = Library::example(false);
    let page = first_page(&planned(text), sheet);
    let other = set(text, "wall.top_width", "0.37 m").expect("an edit");
    assert!(differs(&page, &first_page(&planned(&other), sheet)).is_some());
    let paler = Picture {
        width: page.width,
        height: page.height,
        shades: page.shades.iter().map(|it| it.saturating_sub(1)).collect(),
    };
    assert_eq!(differs(&page, &paler), None);
}
