//! The icons: pictures of every size, made from the drawings beside them.
//!
//! With DRAW_ICONS set they are made anew; otherwise they must still be what the drawings give.

use crate::desktop;
use std::fs;
use std::path::PathBuf;
use std::process::Command;
use std::sync::LazyLock;

/// The program's icon and that of a course file.
const ICONS: [&str; 2] = ["program", "course"];

/// The sizes as files of their own, in pixels.
const SIZES: [u32; 7] = [16, 24, 32, 48, 64, 128, 256];

/// Up to this size a drawing of its own is used, with fewer stones and on whole pixels.
const SMALL: u32 = 32;

/// What an icon of Windows holds.
const IN_ICO: [u32; 6] = [16, 24, 32, 48, 64, 256];

/// What an icon of macOS holds, each picture under the name Apple gave it; the sizes with two
/// names are also half as large on a screen twice as fine.
const IN_ICNS: [(&[u8; 4], u32); 8] = [
    (b"ic11", 32),
    (b"ic12", 64),
    (b"ic07", 128),
    (b"ic13", 256),
    (b"ic08", 256),
    (b"ic14", 512),
    (b"ic09", 512),
    (b"ic10", 1024),
];

fn file(name: &str) -> PathBuf {
    desktop("icons").join(name)
}

/// An icon at a size, as PNG, from its drawing.
fn drawn(icon: &str, size: u32) -> Vec<u8> {
    let small = if size <= SMALL { "-small" } else { "" };
    let pixels = size.to_string();
    let output = Command::new("rsvg-convert")
        .args(["--width", &pixels, "--height", &pixels])
        .arg(file(&format!("{icon}{small}.svg")))
        .output()
        .expect("rsvg-convert is there (librsvg2-bin)");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{said}");
    output.stdout
}

/// Red, green, blue and cover of every pixel, from the top left.
fn pixels(picture: &[u8]) -> (u32, Vec<u8>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(picture))
        .read_info()
        .expect("a picture");
    let mut pixels = vec![0; reader.output_buffer_size().expect("a size")];
    let about = reader.next_frame(&mut pixels).expect("a picture");
    assert_eq!(about.color_type, png::ColorType::Rgba);
    assert_eq!(about.width, about.height);
    (about.width, pixels)
}

/// How far apart two pictures are on the average, in 255ths.
fn apart(one: &[u8], other: &[u8]) -> f64 {
    let (ones, others) = (pixels(one), pixels(other));
    assert_eq!(ones.0, others.0, "the sizes differ");
    let pairs = ones.1.iter().zip(&others.1);
    let sum: u64 = pairs.map(|(a, b)| u64::from(a.abs_diff(*b))).sum();
    sum as f64 / ones.1.len() as f64
}

/// A bitmap as Windows icons hold small pictures: from the bottom up, blue first, then a mask
/// of one bit for each pixel that nobody asks for any more.
fn bitmap(picture: &[u8]) -> Vec<u8> {
    let (size, pixels) = pixels(picture);
    let mut out = Vec::new();
    out.extend(40u32.to_le_bytes());
    out.extend(size.to_le_bytes());
    // Picture and mask count as one, twice as high.
    out.extend((2 * size).to_le_bytes());
    out.extend(1u16.to_le_bytes());
    out.extend(32u16.to_le_bytes());
    out.extend([0; 24]);
    for row in pixels.chunks_exact(4 * size as usize).rev() {
        for pixel in row.chunks_exact(4) {
            out.extend([pixel[2], pixel[1], pixel[0], pixel[3]]);
        }
    }
    let bytes_of_a_mask_row = size.div_ceil(32) * 4;
    out.extend(vec![0; (bytes_of_a_mask_row * size) as usize]);
    out
}

/// An icon for Windows: a list of pictures, then the pictures.
fn ico(icon: &str) -> Vec<u8> {
    let entry = |size: &u32| {
        let picture = drawn(icon, *size);
        // The largest may be a PNG; older readers want the others as bitmaps.
        let whole = *size == 256;
        (*size, if whole { picture } else { bitmap(&picture) })
    };
    let entries: Vec<(u32, Vec<u8>)> = IN_ICO.iter().map(entry).collect();
    let mut out = Vec::new();
    for number in [0, 1, entries.len() as u16] {
        out.extend(number.to_le_bytes());
    }
    let mut start = 6 + 16 * entries.len() as u32;
    for (size, picture) in &entries {
        // A side of 256 is written as 0.
        let side = (*size % 256) as u8;
        out.extend([side, side, 0, 0, 1, 0, 32, 0]);
        out.extend((picture.len() as u32).to_le_bytes());
        out.extend(start.to_le_bytes());
        start += picture.len() as u32;
    }
    out.extend(entries.into_iter().flat_map(|(_, picture)| picture));
    out
}

/// An icon for macOS: pictures, each with its name and length before it.
fn icns(icon: &str) -> Vec<u8> {
    let mut inside = Vec::new();
    for (name, size) in IN_ICNS {
        let picture = drawn(icon, size);
        inside.extend(name);
        inside.extend((picture.len() as u32 + 8).to_be_bytes());
        inside.extend(picture);
    }
    let mut out = b"icns".to_vec();
    out.extend((inside.len() as u32 + 8).to_be_bytes());
    out.extend(inside);
    out
}

/// Makes every icon anew, once and before any check looks at one, where that is asked for.
static DRAWN: LazyLock<()> = LazyLock::new(|| {
    if std::env::var_os("DRAW_ICONS").is_none() {
        return;
    }
    for icon in ICONS {
        for size in SIZES {
            let path = file(&format!("{icon}-{size}.png"));
            fs::write(path, drawn(icon, size)).expect("writes");
        }
    }
    fs::write(file("program.ico"), ico("program")).expect("writes");
    fs::write(file("program.icns"), icns("program")).expect("writes");
});

/// An icon as it lies there.
fn there(name: &str) -> Vec<u8> {
    LazyLock::force(&DRAWN);
    let path = file(name);
    fs::read(&path).unwrap_or_else(|cause| panic!("{}: {cause}", path.display()))
}

#[test]
fn icons_are_what_their_drawings_give() {
    for icon in ICONS {
        for size in SIZES {
            let name = format!("{icon}-{size}.png");
            let off = apart(&there(&name), &drawn(icon, size));
            // Another version of the drawing program may smooth an edge otherwise.
            assert!(off < 2.0, "{name} is off by {off}: cargo xtask icons");
        }
    }
}

/// A number of four bytes in a file.
fn number(bytes: &[u8], at: usize) -> usize {
    let four = bytes[at..at + 4].try_into().expect("four bytes");
    u32::from_le_bytes(four) as usize
}

#[test]
fn the_icon_for_windows_holds_every_size() {
    let icon = there("program.ico");
    assert_eq!(icon[..6], [0, 0, 1, 0, IN_ICO.len() as u8, 0]);
    for (at, size) in IN_ICO.into_iter().enumerate() {
        let entry = &icon[6 + 16 * at..];
        assert_eq!(u32::from(entry[0]), size % 256);
        let (length, start) = (number(entry, 8), number(entry, 12));
        let picture = &icon[start..start + length];
        if size == 256 {
            assert_eq!(pixels(picture).0, 256);
            continue;
        }
        assert_eq!(number(picture, 4), size as usize, "the width of a bitmap");
        // The middle of the icon is stone or cope, and covers all behind it.
        let middle = 40 + 4 * ((size / 4) * size + size / 2) as usize;
        assert_eq!(picture[middle + 3], 255, "{size}");
    }
}

#[test]
fn the_icon_for_macos_holds_every_size() {
    let icon = there("program.icns");
    let length = |at: usize| {
        let four = icon[at + 4..at + 8].try_into().expect("four bytes");
        u32::from_be_bytes(four) as usize
    };
    assert_eq!((&icon[..4], length(0)), (b"icns".as_slice(), icon.len()));
    let (mut at, mut found) = (8, Vec::new());
    while at < icon.len() {
        let picture = &icon[at + 8..at + length(at)];
        found.push((icon[at..at + 4].to_vec(), pixels(picture).0));
        at += length(at);
    }
    let due = IN_ICNS.map(|(name, size)| (name.to_vec(), size));
    assert_eq!(found, due);
}

/// The picture must be told apart where a list of files shows it: light stone on dark slate.
#[test]
fn the_smallest_icon_shows_stone_and_gaps() {
    let (side, pixels) = pixels(&there("program-16.png"));
    let light = |x: u32, y: u32| {
        let at = 4 * (y * side + x) as usize;
        pixels[at..at + 3]
            .iter()
            .map(|it| u32::from(*it))
            .sum::<u32>()
    };
    // Down the middle: cope, gap, course, gap, course, gap, course.
    for (stone, gap) in [(3, 5), (6, 8), (9, 11), (12, 11)] {
        assert!(
            light(8, stone) > 2 * light(8, gap),
            "rows {stone} and {gap}"
        );
    }
    // Both faces lean: a lower course is wider than the one above it.
    let width = |y: u32| (0..side).filter(|x| light(*x, y) > 400).count();
    assert!(width(12) > width(9) && width(9) > width(6), "no batter");
}
