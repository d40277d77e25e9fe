//! Checks on written drawings: well-formed, the same every time, to scale, complete.

use crate::fixture;
use crate::fixture::heaps::heaps_of;
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Room, Scene};
use craft::course::{Course, End};
use craft::quantity::{Read, metres};

const PAGE: Room = Room {
    width_mm: 180.0,
    height_mm: 240.0,
};

fn scenes(course: &Course) -> Vec<Scene> {
    let plan = fixture::plan(course);
    vec![
        crate::section(&plan, course, PAGE),
        crate::section_blank(&plan, course, PAGE).0,
        crate::elevation(&plan, course, PAGE),
        crate::setting_out(&plan, course, PAGE),
        crate::gauge(&plan, course, PAGE),
        crate::line_plan(&plan, course, PAGE),
        crate::frame(&plan, course, PAGE),
        crate::heap_plan(&plan, course, &heaps_of(&plan, course), PAGE),
    ]
}

fn drawn(scene: &Scene, pen: Pen) -> usize {
    let with = |mark: &&Mark| matches!(mark, Mark::Polygon { pen: own, .. } if *own == pen);
    scene.marks.iter().filter(with).count()
}

/// What is wrong with a text as XML: a small reader that knows elements, attributes in
/// double quotes and the four entities the writer uses.
pub(crate) fn xml_fault(svg: &str) -> Option<String> {
    let mut open: Vec<&str> = Vec::new();
    let mut ids: Vec<&str> = Vec::new();
    let mut rest = svg;
    while let Some(start) = rest.find('<') {
        let (text, tag) = rest.split_at(start);
        if let Some(fault) = text_fault(text) {
            return Some(fault);
        }
        let end = tag.find('>')?;
        let inside = &tag[1..end];
        rest = &tag[end + 1..];
        if let Some(name) = inside.strip_prefix('/') {
            if open.pop() != Some(name) {
                return Some(format!("</{name}> closes nothing"));
            }
            continue;
        }
        let body = inside.strip_suffix('/').unwrap_or(inside);
        let (name, attributes) = body.split_once(' ').unwrap_or((body, ""));
        if !inside.ends_with('/') {
            open.push(name);
        }
        let mut left = attributes.trim();
        while !left.is_empty() {
            let (key, after) = left.split_once("=\"")?;
            let (value, after) = after.split_once('"')?;
            if key.contains(char::is_whitespace) || key == "style" || key.starts_with("on") {
                return Some(format!("attribute {key}"));
            }
            if key == "id" {
                ids.push(value);
            }
            if let Some(fault) = text_fault(value) {
                return Some(fault);
            }
            left = after.trim_start();
        }
    }
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    if !open.is_empty() || !rest.trim().is_empty() || ids.len() != count {
        return Some(format!(
            "left open {open:?}, after the end {rest:?}, ids {ids:?}"
        ));
    }
    None
}

fn text_fault(text: &str) -> Option<String> {
    let plain = ["&amp;", "&lt;", "&gt;", "&quot;"]
        .iter()
        .fold(text.to_owned(), |text, entity| text.replace(entity, ""));
    let bad = |letter: char| "<&".contains(letter) || (letter.is_control() && letter != '\n');
    plain
        .contains(bad)
        .then(|| format!("not escaped: {text:?}"))
}

#[test]
fn every_drawing_is_sound_xml_and_the_same_every_time() {
    for (name, course) in fixture::courses() {
        let again = scenes(&course);
        for (scene, again) in scenes(&course).iter().zip(&again) {
            let svg = scene.svg();
            assert_eq!(xml_fault(&svg), None, "{name}, {}", scene.name);
            assert_eq!(svg, again.svg(), "{name}, {}", scene.name);
            for forbidden in ["<style", "<script", "style=", "href", "url(", "NaN", "inf"] {
                let found = svg.contains(forbidden) && !scene.description.contains(forbidden);
                assert!(!found, "{name}, {}: {forbidden}", scene.name);
            }
            let title = format!("<title id=\"{}-title\">", scene.name);
            assert!(svg.contains("role=\"img\"") && svg.contains(&title));
            assert!(!scene.description.is_empty() && !scene.description.contains("  "));
        }
    }
}

/// The reader itself must see what is wrong.
#[test]
fn broken_xml_is_found() {
    assert_eq!(xml_fault("<a b=\"c\"><d/>e</a>"), None);
    for broken in [
        "<a>",
        "<a></b>",
        "<a>&</a>",
        "<a style=\"x\"/>",
        "<a id=\"x\"><b id=\"x\"/></a>",
    ] {
        assert!(xml_fault(broken).is_some(), "{broken}");
    }
}

#[test]
fn drawings_in_one_page_share_no_id() {
    let all: String = scenes(&fixture::weekend()).iter().map(Scene::svg).collect();
    assert_eq!(xml_fault(&format!("<div>{all}</div>")), None);
}

/// By hand: 16 in + 2 · 42 in / 6 = 30 in at the ground, 762 mm; at 1:12 that is 63.5 mm,
/// and the height, 42 in = 1066.8 mm, is 88.9 mm.
#[test]
fn the_section_is_to_scale() {
    let course = fixture::imperial();
    let scene = crate::section(&fixture::plan(&course), &course, PAGE);
    assert_eq!(scene.scale, Some(12));
    let body = scene.marks.iter().rev().find_map(|mark| match mark {
        Mark::Polygon {
            pen: Pen::Outline, ..
        } => Some(mark.extent()),
        _ => None,
    });
    let body = body.expect("the body has an outline");
    assert!((body.width() - 63.5).abs() < 1e-6, "{}", body.width());
    assert!((body.height() - 88.9).abs() < 1e-6, "{}", body.height());
}

/// By hand for the weekend's wall: 9 m / 0.1 m = 90 copes, 9 m / 0.9 m = 10 throughs. On a
/// sheet so large that copes are drawn with their own weight.
#[test]
fn every_cope_and_through_is_drawn() {
    let course = fixture::weekend();
    let large = Room {
        width_mm: 420.0,
        height_mm: 297.0,
    };
    let scene = crate::elevation(&fixture::plan(&course), &course, large);
    assert_eq!(drawn(&scene, Pen::Cope), 90);
    assert_eq!(drawn(&scene, Pen::Through), 10);
}

/// In stretches and with raked ends: no through is lost or drawn twice.
#[test]
fn throughs_are_as_many_as_the_plan_counts_in_every_drawing() {
    for (name, mut course) in fixture::courses() {
        for ends in [[End::Head, End::Joined], [End::Raked, End::Raked]] {
            course.wall.ends = ends;
            let plan = fixture::plan(&course);
            let scene = crate::elevation(&plan, &course, PAGE);
            let pens = [Pen::Through, Pen::HiddenThrough, Pen::Later];
            let count: usize = pens.iter().map(|pen| drawn(&scene, *pen)).sum();
            assert_eq!(count, plan.stone.through_count(), "{name} {ends:?}");
        }
    }
}

/// By hand: offsets 0.41 / 2 + 1.07 / 6 = 0.383 m; trench 0.767 + 0.1 = 0.867 m; a through
/// 0.41 + 0.52 / 3 = 0.583 m; strings 0.55 / 3 and 0.52 / 3 apart; diagonal of a bay
/// sqrt(3² + 0.767²) = 3.096 m. Along a bar 1.07 · sqrt(1 + 1/36) = 1.085 m, and of 1.83 m
/// with 0.60 m in the ground 0.145 m is left; diagonals sqrt((0.383 + 0.205)² + 1.07²) =
/// 1.221 m.
#[test]
fn the_words_hold_the_real_figures() {
    let course = fixture::weekend();
    let [section, _, elevation, setting_out, gauge, _, frame, _] =
        <[Scene; 8]>::try_from(scenes(&course)).expect("eight drawings");
    assert_eq!(
        section.description,
        "Cross-section at 1:12, seen looking along the wall from station 0. The wall is 0.767 m \
         wide at the ground and 0.41 m wide under the cope, 1.07 m high from the ground to the \
         underside of the cope; both faces battered 1 in 6. The cope is 0.25 m high: 90 stones, \
         each 0.10 m thick along the wall. The footing lies in a trench 0.15 m deep and 0.867 m \
         wide, 0.05 m beyond each face. Through rows above the ground: 10 throughs at 0.55 m, \
         each 0.583 m long. At the ground the bars stand 0.383 m left and 0.383 m right of the \
         centre line, 0.60 m of bar in the ground; the underside of the board is the top of the \
         wall. Strings stand at 0.183 m, 0.367 m, 0.55 m, 0.723 m, 0.897 m and 1.07 m above the \
         ground. Inside are two faces of large stones with small hearting between them."
    );
    assert!(
        elevation
            .description
            .contains("At the far end: joined to standing wall.")
    );
    assert!(
        elevation
            .description
            .contains("4 frames stand at 0.00 m, 3.00 m, 6.00 m and 9.00 m")
    );
    assert!(
        setting_out
            .description
            .contains("square when both its diagonals measure 3.096 m")
    );
    assert!(
        gauge
            .description
            .contains("plumb edge 1.20 m, 0.20 m wide at the top")
    );
    for said in [
        "1.83 m long: along each bar 0.60 m in the ground, 1.085 m from there to the board and \
         0.145 m above it.",
        "The board is 0.576 m long, 0.10 m wide and 0.03 m thick; its eyes are 0.426 m apart from \
         middle to middle and 0.024 m across.",
        "both measure 1.221 m.",
        "All 4 frames are alike.",
        "Leave a gap 0.066 m wide in the footing for each bar. Below the trench 0.448 m of bar \
         grips.",
        "1 end profile for the built end (plumb).",
    ] {
        assert!(
            frame.description.contains(said),
            "{said}\n{}",
            frame.description
        );
    }
}

#[test]
fn letters_follow_one_another_and_parts_that_are_not_there_get_none() {
    let key = |course: &Course| crate::section_blank(&fixture::plan(course), course, PAGE).1;
    let full = key(&fixture::weekend());
    let names: Vec<&str> = full.iter().map(|(_, name)| *name).collect();
    assert_eq!(
        names,
        [
            "cope",
            "through",
            "hearting",
            "face stone",
            "footing",
            "batter of the face",
            "string",
            "bar"
        ]
    );
    let letters: String = full.iter().map(|(letter, _)| *letter).collect();
    assert_eq!(letters, "ABCDEFGH");
    let mut bare = fixture::weekend();
    bare.wall.cope_height = metres(0.0);
    bare.wall.footing = None;
    bare.wall.through_rows.clear();
    let letters: String = key(&bare).iter().map(|(letter, _)| *letter).collect();
    assert_eq!(letters, "ABCDE");
}

/// The sheet to be filled in must not hold its answers.
#[test]
fn letters_are_all_that_is_written_on_the_blank() {
    let course = fixture::weekend();
    let (scene, key) = crate::section_blank(&fixture::plan(&course), &course, PAGE);
    for mark in &scene.marks {
        if let Mark::Text(text) = mark {
            assert_eq!(text.words.chars().count(), 1, "{}", text.words);
        }
    }
    for (_, name) in key {
        assert!(name == "bar" || !scene.description.contains(name), "{name}");
    }
}

/// On a page of the usual size nothing of the usual size needs a larger sheet.
#[test]
fn usual_walls_fit_the_page() {
    for (name, course) in fixture::courses() {
        if 20.0 < plan_length(&course) {
            continue;
        }
        for scene in scenes(&course) {
            let fits = scene.width_mm <= PAGE.width_mm && scene.height_mm <= PAGE.height_mm;
            assert!(fits, "{name}, {}: {}", scene.name, scene.height_mm);
        }
    }
}

fn plan_length(course: &Course) -> f64 {
    fixture::plan(course).sizing.length.si()
}

fn course(name: &str) -> Course {
    let mut courses = fixture::courses().into_iter();
    let found = courses.find(|(its, _)| *its == name);
    found.expect("a course of that name").1
}

fn in_words(name: &str) -> [String; 2] {
    let course = course(name);
    let plan = fixture::plan(&course);
    [
        crate::section(&plan, &course, PAGE).description,
        crate::frame(&plan, &course, PAGE).description,
    ]
}

/// By hand: the ground is 0.02 m higher at the left face and 0.03 m lower at the right one, so
/// the rises are 1.05 m and 1.10 m, the offsets 0.205 + 1.05 / 6 = 0.38 m and 0.205 + 1.10 / 6
/// = 0.388 m; diagonals sqrt(0.585² + 1.05²) = 1.202 m and sqrt(0.593² + 1.10²) = 1.25 m.
#[test]
fn each_side_of_a_slope_has_its_own_figures() {
    let [section, frame] = in_words("falling ground, level top");
    for said in [
        "0.02 m above it at the left face and 0.03 m below it at the right face.",
        "the wall's top is 1.05 m above the ground on the left and 1.10 m on the right",
        "the bars stand 0.38 m left and 0.388 m right of the centre line",
    ] {
        assert!(section.contains(said), "{said}\n{section}");
    }
    for said in [
        "from the left foot 1.202 m, from the right foot 1.25 m",
        "Frame 1 of 4, at station 0. For the others see the table.",
    ] {
        assert!(frame.contains(said), "{said}\n{frame}");
    }
}

#[test]
fn a_bank_is_told_of_and_a_free_wall_has_none() {
    let [section, _] = in_words("holding a sloping bank on the left, no cope");
    for said in [
        "a bank on the left: the right face is the front, the left face the back.",
        "drainage stone 0.30 m thick, measured level",
        "reaches 1.07 m above the ground in front and rises from there at 15 degrees.",
    ] {
        assert!(section.contains(said), "{said}\n{section}");
    }
    let scene = |name| {
        let course = course(name);
        crate::section(&fixture::plan(&course), &course, PAGE)
    };
    let pebbles = |scene: &Scene| {
        let drainage = |mark: &&Mark| {
            matches!(
                mark,
                Mark::Circle {
                    pen: Pen::Drainage,
                    ..
                }
            )
        };
        scene.marks.iter().filter(drainage).count()
    };
    assert!(50 < pebbles(&scene("holding a bank on the right")));
    assert_eq!(pebbles(&scene("weekend")), 0);
    assert!(!scene("weekend").description.contains("bank"));
}

/// By hand: a leg 1.07 · sqrt(1 + 1/36) + 0.1 = 1.185 m, sawn atan(1/6) = 9.5 degrees; top rail
/// 0.41 + 2 · 0.05 · 1.0138 + 0.1 = 0.611 m; the lower rail 0.87 / 3 = 0.29 m more.
#[test]
fn a_timber_frame_is_told_of_piece_by_piece() {
    let [section, frame] = in_words("timber frames");
    for said in [
        "left leg 1.185 m, ends 9.5 degrees off square; right leg 1.185 m",
        "top rail 0.611 m, ends square; lower rail 0.901 m, ends square; brace ",
        "Battens 0.05 m by 0.025 m",
    ] {
        assert!(frame.contains(said), "{said}\n{frame}");
    }
    assert!(!frame.contains("bar") && !section.contains("board"));
}
