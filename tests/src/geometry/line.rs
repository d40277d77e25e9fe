//! Lines of straights and arcs, rings, and the ground under them, drawn at random.

use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

/// One stretch of the line; lengths are in millimetres, as they are written.
#[derive(Debug, Clone, Copy)]
pub struct Stretch {
    pub length: u32,
    pub bend: Option<Bend>,
}

#[derive(Debug, Clone, Copy)]
pub struct Bend {
    /// Of the centre line.
    pub radius: u32,
    pub left: bool,
}

/// A line from station 0; a ring comes back to where it began.
#[derive(Debug, Clone)]
pub struct Line {
    pub stretches: Vec<Stretch>,
    pub ring: bool,
}

/// A station that was surveyed, its centre level, and the levels at the left and right face
/// where these were taken too. All are even, so that the ground half-way can be written.
#[derive(Debug, Clone, Copy)]
pub struct Surveyed {
    pub station: u32,
    pub level: i32,
    pub faces: [Option<i32>; 2],
}

/// How far ground rises or falls about its datum, and a face about its centre.
const UNEVEN: i32 = 150;
const ACROSS: i32 = 80;

/// No wall stands on ground deeper than this below its station 0, faces included.
pub const DEEPEST: u32 = (2 * UNEVEN + ACROSS) as u32;

/// A line before it is known how tight it may bend: its radii are what is to be added.
pub fn line() -> impl Strategy<Value = Line> {
    let straight = (2000..12_000_u32).prop_map(|length| Line {
        stretches: vec![Stretch { length, bend: None }],
        ring: false,
    });
    let ring = bend(8000).prop_map(|bend| Line {
        stretches: vec![Stretch {
            length: 0,
            bend: Some(bend),
        }],
        ring: true,
    });
    let stretch = (500..8000_u32, option::weighted(0.6, bend(200_000)));
    let stretch = stretch.prop_map(|(length, bend)| Stretch { length, bend });
    let several = vec(stretch, 1..6).prop_map(|stretches| Line {
        stretches,
        ring: false,
    });
    prop_oneof![1 => straight, 1 => ring, 4 => several]
}

/// Bends from as tight as can be, most of them tight: their spread is even in the logarithm.
fn bend(most: u32) -> impl Strategy<Value = Bend> {
    (0.0..f64::from(most).ln(), any::<bool>()).prop_map(|(log, left)| Bend {
        radius: log.exp() as u32,
        left,
    })
}

impl Line {
    /// The line with each radius so much larger; arcs stop short of a ring, a ring closes.
    /// A ring is taped to the centimetre, or to the millimetre where its radius is odd.
    pub fn no_tighter_than(mut self, least: u32) -> Self {
        for stretch in &mut self.stretches {
            let Some(bend) = &mut stretch.bend else {
                continue;
            };
            bend.radius += least;
            let round = std::f64::consts::TAU * f64::from(bend.radius);
            let to = if bend.radius % 2 == 0 { 10.0 } else { 1.0 };
            stretch.length = if self.ring {
                ((round / to).round() * to) as u32
            } else {
                stretch.length.min((round * 0.8) as u32)
            };
        }
        self
    }

    pub fn length(&self) -> u32 {
        self.stretches.iter().map(|stretch| stretch.length).sum()
    }

    /// The value of the key `line`.
    pub fn text(&self, q: impl Fn(u32) -> String) -> String {
        let stretch = |one: &Stretch| match one.bend {
            None => format!("{{ straight = {} }}", q(one.length)),
            Some(bend) => format!(
                "{{ arc = {}, radius = {}, turn = \"{}\" }}",
                q(one.length),
                q(bend.radius),
                if bend.left { "left" } else { "right" }
            ),
        };
        let all: Vec<String> = self.stretches.iter().map(stretch).collect();
        format!("[ {} ]", all.join(", "))
    }
}

/// Ground before its line is known: stations are in thousandths of the line, some of them
/// beyond its end.
pub fn ground() -> impl Strategy<Value = Vec<Surveyed>> {
    let even = |most: i32| (-most / 2..=most / 2).prop_map(|half| 2 * half);
    let face = move || option::of(even(ACROSS));
    let station = (0..1200_u32, even(UNEVEN), [face(), face()]);
    let datum = prop_oneof![Just(0), even(40_000)];
    (datum, vec(station, 0..7)).prop_map(|(datum, stations)| {
        let surveyed = stations
            .into_iter()
            .map(|(station, level, faces)| Surveyed {
                station,
                level: datum + level,
                faces: faces.map(|face| face.map(|off| datum + level + off)),
            });
        surveyed.collect()
    })
}

/// The ground laid along a line of this length: stations in order, each once.
pub fn laid(mut ground: Vec<Surveyed>, length: u32) -> Vec<Surveyed> {
    for surveyed in &mut ground {
        surveyed.station = surveyed.station * length / 2000 * 2;
    }
    ground.sort_by_key(|surveyed| surveyed.station);
    ground.dedup_by_key(|surveyed| surveyed.station);
    ground
}

/// The value of the key `ground`.
pub fn ground_text(ground: &[Surveyed], q: impl Fn(i32) -> String) -> String {
    let one = |surveyed: &Surveyed| {
        let [left, right] = [(0, "left"), (1, "right")].map(|(side, name)| {
            surveyed.faces[side].map_or(String::new(), |level| format!(", {name} = {}", q(level)))
        });
        let (station, level) = (q(surveyed.station as i32), q(surveyed.level));
        format!("{{ station = {station}, level = {level}{left}{right} }}")
    };
    let all: Vec<String> = ground.iter().map(one).collect();
    format!("[ {} ]", all.join(", "))
}
