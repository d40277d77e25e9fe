//! The figures in a lesson's texts, filled in for one course. Wherever a lesson is shown, its texts
//! come through here.

use crate::{Course, spelling};
use craft::quantity::{metres, show_mark};
use craft::wall::{Batter, Side};
use files::{Figure, Wording, whole};

/// A text of a lesson as this course says it: quantities in its units, its own figures, its
/// spelling.
pub fn filled(course: &Course, wording: &Wording) -> String {
    let units = course.file.course.units;
    let text = wording.filled(units, |it| {
        Some(figure(course, it)).filter(|it| !it.is_empty())
    });
    spelling::text(&text, course.file.language)
}

/// A figure of a course as its other pages write it; empty where it has none.
fn figure(course: &Course, figure: Figure) -> String {
    let (written, given) = (&course.written, &course.file.course);
    let has_throughs = !written.stone.throughs.is_empty();
    let text = match figure {
        Figure::Height => written.wall.height.clone(),
        Figure::BaseWidth => written.wall.base_width.clone(),
        Figure::TopWidth => written.wall.top_width.clone(),
        Figure::Length => written.wall.length.clone(),
        Figure::Batter => return batter(course),
        Figure::FootingDepth => written.wall.footing_depth.clone(),
        Figure::CopeHeight => written.wall.cope_height.clone(),
        Figure::ThroughHeight => {
            let first = written.stone.throughs.first();
            first.map(|row| row.height.clone()).unwrap_or_default()
        }
        Figure::ThroughSpacing if has_throughs => {
            show_mark(given.wall.through_spacing, given.units)
        }
        Figure::ThroughSpacing => String::new(),
        Figure::StringStep => string_step(course),
        Figure::Embedment => {
            let bars = written.frames.bars.as_ref();
            bars.map(|bars| bars.embedment.clone()).unwrap_or_default()
        }
        Figure::FrameSpacing => written.frames.bay.clone(),
        Figure::Students => given.group.students.len().to_string(),
        Figure::Rock => return written.stone.rock.clone(),
    };
    whole(&text)
}

/// `1 in 6`, or each face by itself where they differ.
fn batter(course: &Course) -> String {
    let section = &course.plan.section;
    let one = |batter: Batter| match batter.n() {
        None => "plumb".to_owned(),
        Some(n) => whole(&format!("1 in {}", (n * 100.0).round() / 100.0)),
    };
    let [left, right] = [Side::Left, Side::Right].map(|side| section.batter(side));
    if left == right {
        return one(left);
    }
    format!("{} on the left and {} on the right", one(left), one(right))
}

/// The furthest that the string is moved up at once.
fn string_step(course: &Course) -> String {
    let strings = course.plan.frames.strings.iter().map(|it| it.height);
    let mut below = metres(0.0);
    let mut most = metres(0.0);
    for height in strings {
        if most < height - below {
            most = height - below;
        }
        below = height;
    }
    if most <= metres(0.0) {
        return String::new();
    }
    show_mark(most, course.file.course.units)
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    fn course(imperial: bool, change: impl Fn(String) -> String) -> Course {
        let text = change(Library::example(imperial).to_owned());
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        Course::plan(file, &library).expect("a plan")
    }

    /// By hand from the example's file: 1.05 m high, 0.36 m under the cope, 1 in 8 on both
    /// faces: 0.36 + 2 x 1.05 / 8 = 0.6225 m at the ground.
    #[test]
    fn figures_are_those_of_the_course_file() {
        let course = course(false, |text| text);
        for (figure, is) in [
            (Figure::Height, "1.05 m"),
            (Figure::TopWidth, "0.36 m"),
            (Figure::BaseWidth, "0.623 m"),
            (Figure::Batter, "1 in 8"),
            (Figure::ThroughHeight, "0.55 m"),
            (Figure::Students, "8"),
        ] {
            let figure_is = super::figure(&course, figure);
            assert_eq!(figure_is, whole(is), "{}", figure.word());
        }
    }

    #[test]
    fn both_examples_have_a_figure_for_every_name() {
        for imperial in [false, true] {
            let course = course(imperial, |text| text);
            for figure in Figure::ALL {
                assert!(
                    !super::figure(&course, figure).is_empty(),
                    "{}",
                    figure.word()
                );
            }
        }
    }
}
