//! Courses drawn at random, and how each is written as a course file.

use super::line::{DEEPEST, Line, Surveyed, ground, ground_text, laid, line};
use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use std::fmt::Write;

/// A wall with its stone and its frames. Lengths are in millimetres, as they are written.
#[derive(Debug, Clone)]
pub struct Wall {
    pub height: u32,
    pub top: u32,
    /// The n of 1 in n, left and right; none for a plumb face.
    pub batter: [Option<f64>; 2],
    pub cope: Option<u32>,
    pub cope_thickness: u32,
    pub line: Line,
    pub ground: Vec<Surveyed>,
    /// The top is level, or else it follows the ground.
    pub level_top: bool,
    /// The side of the bank, if the wall holds one.
    pub retained: Option<usize>,
    pub rows: Vec<u32>,
    pub through_spacing: u32,
    /// Width, thickness, projection.
    pub through: [u32; 3],
    /// Depth and outset.
    pub footing: Option<[u32; 2]>,
    pub raked: [bool; 2],
    pub stone: Stone,
    pub frames: Frames,
}

#[derive(Debug, Clone)]
pub struct Stone {
    pub density: u32,
    /// Voids, hearting, waste, in hundredths.
    pub shares: [u32; 3],
    /// One heap, or footing, face, hearting, throughs, copes, in kilograms.
    pub on_site: Result<u32, [u32; 5]>,
    pub load: u32,
}

#[derive(Debug, Clone)]
pub struct Frames {
    /// On straights and on arcs.
    pub spacing: [u32; 2],
    pub bar: &'static str,
    pub stock: Vec<u32>,
    /// The depth of the footing and a bit more, where it is not given.
    pub embedment: Option<u32>,
    pub projection: u32,
    pub set_size: u32,
    pub in_stock: u32,
}

pub fn wall() -> impl Strategy<Value = Wall> {
    let shape = (500..2000_u32, 250..800_u32, [batter(), batter()]);
    let cope = (option::of(100..400_u32), 50..200_u32);
    let place = (line(), ground(), any::<bool>());
    let throughs = (
        btree_set(100..480_u32, 0..4),
        600..2000_u32,
        [100..300_u32, 50..120, 0..80],
    );
    let footing = option::of([50..400_u32, 0..300]);
    let ends = (
        [any::<bool>(), any::<bool>()],
        option::weighted(0.2, 0..2_usize),
    );
    let rest = (footing, ends, stone(), frames());
    (shape, cope, place, throughs, rest)
        .prop_map(
            |(
                (height, top, batter),
                (cope, cope_thickness),
                (line, ground, level_top),
                (rows, through_spacing, through),
                (footing, (raked, retained), stone, frames),
            )| Wall {
                height,
                top,
                batter,
                cope,
                cope_thickness,
                line,
                ground,
                level_top,
                retained,
                rows: rows.into_iter().collect(),
                through_spacing,
                through,
                footing,
                raked,
                stone,
                frames,
            },
        )
        .prop_map(Wall::fitted)
        .prop_filter("throughs fill the wall", Wall::has_room_for_throughs)
}

impl Wall {
    /// The wall with a line that bends no tighter than its foot allows, and its ground under it.
    fn fitted(mut self) -> Self {
        let below_top = f64::from(self.height + DEEPEST);
        let lean = |n: Option<f64>| n.map_or(0.0, |n| below_top / n);
        let lean = self.batter.map(lean).into_iter().fold(0.0, f64::max) as u32;
        let outset = self.footing.map_or(0, |[_, outset]| outset);
        self.line = self.line.no_tighter_than(self.top / 2 + lean + outset + 5);
        self.ground = laid(self.ground, self.line.length());
        if self.line.ring {
            self.raked = [false; 2];
        }
        self
    }

    /// By a rough sum: the least section there can be, against the throughs of a metre.
    fn has_room_for_throughs(&self) -> bool {
        let [width, thickness, projection] = self.through.map(f64::from);
        let leans: f64 = self.batter.iter().flatten().map(|n| 1.0 / n).sum();
        let long = f64::from(self.top) + f64::from(self.height) * leans + 2.0 * projection;
        let throughs = self.rows.len() as f64 * long * width * thickness;
        let body = f64::from(self.top) * f64::from(self.height - DEEPEST);
        let solid = body * (1.0 - f64::from(self.stone.shares[0]) / 100.0);
        throughs < 0.6 * solid * f64::from(self.through_spacing.min(self.line.length()))
    }
}

fn batter() -> impl Strategy<Value = Option<f64>> {
    // Tenths, so that the file says exactly what the model reckons with.
    option::weighted(
        0.8,
        (30..200_u32).prop_map(|tenths| f64::from(tenths) / 10.0),
    )
}

fn stone() -> impl Strategy<Value = Stone> {
    let on_site = prop_oneof![
        (0..40_000_u32).prop_map(Ok),
        [0..3000_u32, 0..9000, 0..3000, 0..900, 0..3000].prop_map(Err),
    ];
    (
        1800..3000_u32,
        [0..45_u32, 0..60, 0..60],
        on_site,
        500..20_000_u32,
    )
        .prop_map(|(density, shares, on_site, load)| Stone {
            density,
            shares,
            on_site,
            load,
        })
}

fn frames() -> impl Strategy<Value = Frames> {
    let bars = vec!["No. 4", "No. 5", "No. 6", "12 mm", "16 mm", "20 mm"];
    (
        [400..5000_u32, 400..2500],
        proptest::sample::select(bars),
        vec(800..4000_u32, 1..4),
        (option::of(100..900_u32), 0..300_u32, 1..5_u32, 0..12_u32),
    )
        .prop_map(
            |(spacing, bar, stock, (embedment, projection, set_size, in_stock))| Frames {
                spacing,
                bar,
                stock,
                embedment,
                projection,
                set_size,
                in_stock,
            },
        )
}

impl Wall {
    /// The tables `wall`, `stone` and `frames` of a course file, each length written by
    /// `write`.
    pub fn text(&self, write: impl Fn(u32) -> String) -> String {
        let mut text = self.kind_text();
        let mut line = |words: String| writeln!(text, "{words}").expect("a text takes words");
        let q = |mm: u32| format!("\"{}\"", write(mm).replace('"', "\\\""));
        let list = |all: &[u32]| all.iter().map(|&mm| q(mm)).collect::<Vec<_>>().join(", ");
        line(format!(
            "height = {}\ntop_width = {}",
            q(self.height),
            q(self.top)
        ));
        let [left, right] = self.batter.map(face);
        line(format!("batter = {{ left = {left}, right = {right} }}"));
        if let Some(cope) = self.cope {
            line(format!("cope_height = {}", q(cope)));
        }
        line(format!("cope_thickness = {}", q(self.cope_thickness)));
        line(format!("line = {}", self.line.text(q)));
        if !self.ground.is_empty() {
            let signed = |mm: i32| {
                let sign = if mm < 0 { "-" } else { "" };
                q(mm.unsigned_abs()).replacen('"', &format!("\"{sign}"), 1)
            };
            line(format!("ground = {}", ground_text(&self.ground, signed)));
        }
        if !self.level_top {
            line("top = \"follows ground\"".to_owned());
        }
        line(format!("through_rows = [ {} ]", list(&self.rows)));
        line(format!("through_spacing = {}", q(self.through_spacing)));
        let [width, thickness, projection] = self.through.map(q);
        line(format!(
            "through_size = {{ width = {width}, thickness = {thickness}, projection = {projection} }}"
        ));
        if let Some([depth, outset]) = self.footing {
            line(format!(
                "footing = {{ depth = {}, outset = {} }}",
                q(depth),
                q(outset)
            ));
        }
        if !self.line.ring {
            let [start, finish] = self.raked.map(|raked| if raked { "raked" } else { "head" });
            line(format!(
                "ends = {{ start = \"{start}\", finish = \"{finish}\" }}"
            ));
        }
        line(self.stone.text());
        line(self.frames.text(q, list));
        text
    }
}

impl Wall {
    fn kind_text(&self) -> String {
        let kind = match self.retained {
            None => "kind = \"freestanding\"",
            Some(0) => "kind = \"retaining\"\nretained = \"left\"",
            Some(_) => "kind = \"retaining\"\nretained = \"right\"",
        };
        format!("[wall]\n{kind}\n")
    }
}

fn face(batter: Option<f64>) -> String {
    batter.map_or("\"plumb\"".to_owned(), |n| n.to_string())
}

impl Stone {
    fn text(&self) -> String {
        let [voids, hearting, waste] = self.shares.map(|share| f64::from(share) / 100.0);
        let on_site = match self.on_site {
            Ok(heap) => format!("\"{heap} kg\""),
            Err([footing, face, hearting, throughs, copes]) => format!(
                "{{ footing = \"{footing} kg\", face = \"{face} kg\", hearting = \"{hearting} kg\", \
                 throughs = \"{throughs} kg\", copes = \"{copes} kg\" }}"
            ),
        };
        format!(
            "[stone]\ndensity = \"{} kg/m3\"\nvoids = {voids}\nhearting_share = {hearting}\n\
             waste = {waste}\non_site = {on_site}\nload = \"{} kg\"",
            self.density, self.load
        )
    }
}

impl Frames {
    fn text(&self, q: impl Fn(u32) -> String, list: impl Fn(&[u32]) -> String) -> String {
        let [straight, curve] = self.spacing.map(&q);
        let embedment = self
            .embedment
            .map_or(String::new(), |deep| format!("\nembedment = {}", q(deep)));
        format!(
            "[frames]\nkind = \"bar\"\nin_stock = {}\nset_size = {}\nspacing_straight = {straight}\n\
             spacing_curve = {curve}\nbar = \"{}\"\nstock_lengths = [ {} ]{embedment}\nprojection = {}",
            self.in_stock,
            self.set_size,
            self.bar,
            list(&self.stock),
            q(self.projection)
        )
    }
}

/// `1234 mm`.
pub fn millimetres(mm: u32) -> String {
    format!("{mm} mm")
}

/// A course that builds `wall` in two days with eight people; `units` is how it is shown.
pub fn course(units: &str, wall: &str) -> String {
    format!(
        "format = 1\ntitle = \"Drawn at random\"\nunits = \"{units}\"\n\
         [venue]\nlatitude = 54.2\nlongitude = -2.4\ntime_zone = \"Europe/London\"\n\
         [[day]]\ndate = 2027-04-24\nstart = 09:00:00\nfinish = 17:00:00\n\
         [[day]]\ndate = 2027-04-25\nstart = 09:00:00\nfinish = 17:00:00\n\
         [group]\nnovices = 6\nimprovers = 2\n{wall}"
    )
}
