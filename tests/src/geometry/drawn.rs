//! Courses drawn at random, and how each is written as a course file.

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
    /// The stretches of the line.
    pub line: Vec<u32>,
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
    pub spacing: u32,
    pub bar: &'static str,
    pub stock: Vec<u32>,
    pub embedment: u32,
    pub projection: u32,
    pub set_size: u32,
    pub in_stock: u32,
}

pub fn wall() -> impl Strategy<Value = Wall> {
    let shape = (500..2000_u32, 250..800_u32, batter(), batter());
    let cope = (option::of(100..400_u32), 50..200_u32);
    let line = vec(2000..12_000_u32, 1..4);
    let throughs = (
        btree_set(100..480_u32, 0..4),
        600..2000_u32,
        [100..300_u32, 50..120, 0..80],
    );
    let footing = option::of([50..400_u32, 0..300]);
    let rest = (footing, [any::<bool>(), any::<bool>()], stone(), frames());
    (shape, cope, line, throughs, rest).prop_map(
        |(
            (height, top, left, right),
            (cope, cope_thickness),
            line,
            (rows, through_spacing, through),
            (footing, raked, stone, frames),
        )| Wall {
            height,
            top,
            batter: [left, right],
            cope,
            cope_thickness,
            line,
            rows: rows.into_iter().collect(),
            through_spacing,
            through,
            footing,
            raked,
            stone,
            frames,
        },
    )
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
        400..5000_u32,
        proptest::sample::select(bars),
        vec(800..4000_u32, 1..4),
        (100..900_u32, 0..300_u32, 1..5_u32, 0..12_u32),
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
        let mut text = String::from("[wall]\nkind = \"freestanding\"\n");
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
        let stretch = |&mm: &u32| format!("{{ straight = {} }}", q(mm));
        let stretches: Vec<String> = self.line.iter().map(stretch).collect();
        line(format!("line = [ {} ]", stretches.join(", ")));
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
        let [start, finish] = self.raked.map(|raked| if raked { "raked" } else { "head" });
        line(format!(
            "ends = {{ start = \"{start}\", finish = \"{finish}\" }}"
        ));
        line(self.stone.text());
        line(self.frames.text(q, list));
        text
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
        format!(
            "[frames]\nkind = \"bar\"\nin_stock = {}\nset_size = {}\nspacing_straight = {}\n\
             bar = \"{}\"\nstock_lengths = [ {} ]\nembedment = {}\nprojection = {}",
            self.in_stock,
            self.set_size,
            q(self.spacing),
            self.bar,
            list(&self.stock),
            q(self.embedment),
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
